import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { describe, expect, test } from "vitest";
import { run } from "../../src/cli/main.ts";
import { casesOf } from "../support/laws.ts";
import { call, callWith, ownFolder, smallScenario, writeJson } from "./callCli.ts";

const folder = ownFolder();
const stationText = readFileSync(
  join(import.meta.dirname, "../../shared/scenarios/invented-station.csv"),
  "utf8",
);
writeFileSync(join(folder, "station.csv"), stationText);

/** Small and invented, each its own soil; `over` is laid over it. */
function field(name: string, over: object = {}) {
  const share = `${30 + ((name.length * 7) % 40)} %`;
  const soil = { ...smallScenario.soil, startingWater: { share } };
  return { ...smallScenario, name, soil, ensemble: { years: 3 }, ...over };
}
const lines = (...values: readonly unknown[]): string =>
  `${values.map((one) => (typeof one === "string" ? one : JSON.stringify(one))).join("\n")}\n`;
// oxlint-disable-next-line typescript/no-explicit-any
const read = (out: string): any[] =>
  out.split("\n").flatMap((line) => (line === "" ? [] : [JSON.parse(line)]));

const several = [
  field("north"),
  field("south forty", { weather: { record: "station.csv" } }),
  field("a", { crop: { name: "sunflower" } }),
  field("south forty b", { weather: { record: "station.csv", annualRain: "12..14 in" } }),
  field("in a rotation", { rotation: ["winter wheat", "grain sorghum", "fallow"], ensemble: { years: 16 } }),
];

describe("a line's answer is that of compare", () => {
  test("to the letter, whatever lines stood before it", async () => {
    const { code, out, err } = await callWith(folder, lines(...several, several[1], several[0]), "batch");
    expect([code, err]).toEqual([0, ""]);
    const alone = [];
    for (const one of [...several, several[1], several[0]]) {
      const called = await call(folder, "compare", writeJson(folder, "one.json", one), "--json");
      expect(called.code).toBe(0);
      alone.push(JSON.stringify(JSON.parse(called.out)));
    }
    expect(out.trimEnd().split("\n")).toEqual(alone);
  });

  test("from a file, a list of files, a pipe: the same; a line may end in CR LF, the last in nothing", async () => {
    const two = several.slice(0, 2);
    const [a, b] = two.map((one, i) => writeJson(folder, `listed-${i}.json`, one));
    writeFileSync(join(folder, "two.ndjson"), lines(...two));
    const { out } = await call(folder, "batch", "two.ndjson");
    expect(read(out).map(({ scenario }) => scenario)).toEqual(["north", "south forty"]);
    expect((await callWith(folder, `${a}\n${b}\n`, "batch", "--list")).out).toBe(out);
    expect(
      (
        await callWith(
          folder,
          lines(...two)
            .replaceAll("\n", "\r\n")
            .trimEnd(),
          "batch",
        )
      ).out,
    ).toBe(out);
    expect((await callWith(folder, lines(...two), "batch", "-", "--json")).out).toBe(out);
  });

  test("flags stand in for fields of every line", async () => {
    const { out } = await callWith(folder, lines(...several.slice(0, 2)), "batch", "--years", "2");
    expect(read(out).map(({ method }) => method.runs)).toEqual([2, 2]);
  });
});

describe("a line that is wrong is one line in its place, and the rest goes on", () => {
  test("with its number and its name", async () => {
    const input = lines(field("a"), "[1]", field("no soil", { soil: {} }), "", "{bad", '"text"', field("b"));
    const { code, out, err } = await callWith(folder, input, "batch");
    expect(code).toBe(1);
    expect(err).toBe("rootfront: 4 of 6 lines have no answer; what is wrong stands in their place\n");
    const answers = read(out);
    expect(answers.map(({ format }) => format)).toEqual([
      "rootfront-comparison/1",
      ...Array<string>(4).fill("rootfront-batch-error/1"),
      "rootfront-comparison/1",
    ]);
    expect(answers.slice(1, 5).map(({ line, name, problems }) => [line, name, problems[0].field])).toEqual([
      [2, null, "line 2"],
      [3, "no soil", "soil"],
      [5, null, "line 5, column 2"],
      [6, null, "line 6"],
    ]);
  });

  test("10 MB in one line, and bytes that are no text", async () => {
    const long = lines(field("a", { notes: "x".repeat(10 * 2 ** 20) }), field("b"));
    const { code, out } = await callWith(folder, long, "batch", "--only", "scenario");
    expect(code).toBe(1);
    const [first, second] = read(out);
    expect(first.problems).toEqual([
      {
        field: "line 1",
        expected: "at most 4 MB",
        found: "10 MB",
        mend: "put long tables into files of their own",
      },
    ]);
    expect(second).toEqual({ scenario: "b" });
    const bytes = Buffer.concat([Buffer.from([0xff, 0xfe, 0x0a]), Buffer.from(lines(field("b")))]);
    const [wrong, right] = read((await callWith(folder, bytes, "batch")).out);
    expect([wrong.problems[0].expected, right.scenario]).toEqual(["text in UTF-8", "b"]);
  });

  test("a weather file that is missing for one line of a thousand", async () => {
    const weather = (record: string) => ({ weather: { record }, ensemble: { years: 1 } });
    const length = casesOf({ whole: 1000, usually: 250 });
    const many = Array.from({ length }, (_, i) =>
      field(`field ${i % 10}`, weather(i === 217 ? "gone.csv" : "station.csv")),
    );
    const { code, out } = await callWith(folder, lines(...many), "batch", "--only", "scenario");
    const answers = read(out);
    expect([code, answers.length]).toEqual([1, length]);
    expect(answers.flatMap((one, i) => ("problems" in one ? [[i, one.line, one.name]] : []))).toEqual([
      [217, 218, "field 7"],
    ]);
    expect(answers[217].problems).toEqual([
      {
        field: "weather.record",
        expected: "a file",
        found: 'no such file at "gone.csv"',
        mend: "check the path",
      },
    ]);
  }, 240_000);

  test("a file of the list that is gone, a weather record from standard input", async () => {
    const input = `gone.json\n${writeJson(folder, "piped.json", field("piped", { weather: { record: "-" } }))}\n`;
    const [gone, piped] = read((await callWith(folder, input, "batch", "--list")).out);
    expect([gone.name, gone.problems[0].found]).toEqual(["gone.json", "no such file"]);
    expect(piped.problems[0].found).toContain("standard input was read before");
  });

  test("no line at all gives nothing, and says so", async () => {
    for (const input of ["", "\n\n  \n"])
      expect(await callWith(folder, input, "batch")).toEqual({
        code: 0,
        out: "",
        err: "rootfront: no line came in; batch reads a scenario a line\n",
      });
  });

  test("two lines of one name are two answers", async () => {
    const twice = [field("same"), field("same", { crop: { name: "sunflower" } })];
    const { out } = await callWith(folder, lines(...twice), "batch");
    const [one, other] = read(out);
    expect([one.scenario, other.scenario]).toEqual(["same", "same"]);
    expect(one.cases).not.toEqual(other.cases);
  });
});

describe("what is written", () => {
  test("--only picks fields, in each entry of a list, in the order asked", async () => {
    const only = "scenario,differences.extraWaterUsedMm.p50,differences.to,money.pairs";
    const [whole] = read((await callWith(folder, lines(field("a")), "batch")).out);
    const { out } = await callWith(folder, lines(field("a")), "batch", "--only", only);
    const [{ to, extraWaterUsedMm }] = whole.differences;
    expect(out).toBe(
      `${JSON.stringify({ scenario: "a", differences: [{ extraWaterUsedMm: { p50: extraWaterUsedMm.p50 }, to }], money: null })}\n`,
    );
  });

  test.each([
    [["--only", "scenaro"], 'rootfront: --only: no field "scenaro"; did you mean "scenario"?\n'],
    [["--csv", "--only", "yeld_p50"], 'rootfront: --only: no column "yeld_p50"; did you mean "yield_p50"?\n'],
    [["--csv", "--json"], "rootfront: --csv and --json are two ways of writing; give one\n"],
    [["--resume"], "rootfront: --resume goes on with a file: name it with --out\n"],
  ])("%j is refused", async (flags, err) => {
    expect(await callWith(folder, lines(field("a")), "batch", ...flags)).toEqual({ code: 2, out: "", err });
  });

  test("--csv has a row a line, total and case, in the units asked, and one for a wrong line", async () => {
    const input = lines(field("a"), field("wrong", { soil: {} }), field("b"));
    const only = ["--only", "line,scenario,rain_total,case,root_depth,error"];
    const [us, metric] = [
      (await callWith(folder, input, "batch", "--csv", ...only)).out,
      (await callWith(folder, input, "batch", "--csv", "--units", "metric", ...only)).out,
    ].map((text) => text.trimEnd().split("\n"));
    expect(us![0]).toBe("line,scenario,rain_total_in,case,root_depth_in,error");
    expect(us!.slice(1).map((row) => row.split(",")[0])).toEqual([..."1111112333333"]);
    expect(us![7]).toMatch(/^2,wrong,,,,"soil: expected either layers or horizons, /);
    const depth = (row: string | undefined) => Number(row!.split(",")[4]);
    expect(metric![0]).toBe("line,scenario,rain_total_mm,case,root_depth_mm,error");
    expect(depth(metric![1])).toBeCloseTo(depth(us![1]) * 25.4, 2);
  });
});

describe("a run that was cut off goes on", () => {
  const input = lines(
    ...["a", "b", "c", "d"].map((name) => field(name)),
    field("e", { soil: {} }),
    field("f"),
  );

  test.each([
    ["json", []],
    ["csv", ["--csv"]],
  ])("to the same bytes as one run, wherever it was cut: %s", async (kind, flags) => {
    const { out: whole } = await callWith(folder, input, "batch", ...flags);
    for (const at of [0, 1, 0.2, 0.5, 0.77, 1].map((cut, i) =>
      i === 1 ? 7 : Math.floor(cut * whole.length),
    )) {
      const file = `cut-${kind}-${at}.out`;
      writeFileSync(join(folder, file), whole.slice(0, at));
      const { out } = await callWith(folder, input, "batch", ...flags, "--out", file, "--resume");
      expect(out).toBe("");
      expect(readFileSync(join(folder, file), "utf8")).toBe(whole);
    }
  });

  test("a file that holds something is not written to unasked, nor that of another input", async () => {
    writeFileSync(join(folder, "there.out"), '{"scenario":"other"}\n');
    const begun = await callWith(folder, input, "batch", "--out", "there.out");
    expect([begun.code, begun.err]).toEqual([
      2,
      '--out: expected a file that does not exist yet, found "there.out", which holds something; go on with it by --resume, name another, or delete it first\n',
    ]);
    const gone = await callWith(folder, input, "batch", "--out", "there.out", "--resume");
    expect([gone.code, gone.err]).toEqual([
      2,
      '--resume: expected answers of this input in the file, line 1 of which is of "a", found "other" in its place; give the input it was begun with, or name another file\n',
    ]);
    const table = await callWith(folder, input, "batch", "--csv", "--out", "there.out", "--resume");
    expect(table.err).toContain("--resume: expected a table with the columns that are asked for");
    expect(readFileSync(join(folder, "there.out"), "utf8")).toBe('{"scenario":"other"}\n');
  });

  test("never over what it reads", async () => {
    writeFileSync(join(folder, "own.ndjson"), input);
    const { code } = await call(folder, "batch", "own.ndjson", "--out", "own.ndjson", "--resume");
    expect(code).toBe(2);
    expect(readFileSync(join(folder, "own.ndjson"), "utf8")).toBe(input);
  });
});

describe("memory and pace", () => {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const heapBytes = (): number => {
    collect();
    collect();
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    return heapUsed + arrayBuffers;
  };

  /** Feeds so many lines, never more than one ahead of the answers; the heap after the last. */
  async function heapAfter(count: number): Promise<{ heap: number; mostAhead: number }> {
    let given = 0;
    let written = 0;
    let mostAhead = 0;
    let heap = 0;
    const sink = { write: () => (written += 1) };
    await run(["batch", "--years", "1"], {
      stdout: sink,
      stderr: { write: () => 0 },
      cwd: folder,
      isTerminal: false,
      stdin: {
        whole: () => new Uint8Array(),
        pieces: async function* () {
          for (; given < count; given++) {
            mostAhead = Math.max(mostAhead, given - written);
            const weather = given % 3 === 0 ? { record: "station.csv" } : smallScenario.weather;
            // Each its own soil, latitude and weather file's share: nothing that is kept for one line is of use to all.
            const site = { ...smallScenario.site, latitude: `${35 + (given % 37) / 20} N` };
            yield Buffer.from(lines(field("x".repeat(given % 50), { site, weather })));
          }
          heap = heapBytes();
        },
      },
    });
    expect(written).toBe(count);
    return { heap, mostAhead };
  }

  test("ten times the lines take no more of it, and a line is asked for when the one before is written", async () => {
    // Until all that is kept is full: 37 latitudes are more than the weathers and records kept.
    const few = await heapAfter(50);
    const many = await heapAfter(500);
    expect(few.mostAhead).toBeLessThanOrEqual(1);
    expect(many.mostAhead).toBeLessThanOrEqual(1);
    // 450 lines more; an answer alone is 16 kB, which would make 7 MB.
    expect(many.heap - few.heap).toBeLessThan(4 * 2 ** 20);
  }, 240_000);

  test("a weather file is read once for all its lines", async () => {
    writeFileSync(join(folder, "once.csv"), stationText);
    let out = "";
    await run(["batch", "--only", "scenario"], {
      stdout: { write: (text) => (out += text) },
      stderr: { write: () => 0 },
      cwd: folder,
      isTerminal: false,
      stdin: {
        whole: () => new Uint8Array(),
        pieces: async function* () {
          for (const name of ["a", "bb", "ccc"]) {
            yield Buffer.from(lines(field(name, { weather: { record: "once.csv" } })));
            rmSync(join(folder, "once.csv"), { force: true });
          }
        },
      },
    });
    expect(read(out).map(({ scenario }) => scenario)).toEqual(["a", "bb", "ccc"]);
  });
});
