import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { loadUnits, tryLatitude, tryMoney, tryQuantity, tryRainTotals } from "../../../src/quantity/index.ts";
import { splitNumber } from "../../../src/quantity/numberText.ts";
import { resolveScenario } from "../../../src/scenario/index.ts";
import { withChanges } from "./good-scenario.ts";

/**
 * No pattern sees a long text: a pattern that tries a text from each of its letters anew takes minutes over these, which is
 * what the test's own time limit is for.
 */
const letters = 100_000;
const hostile: readonly (readonly [string, string])[] = [
  ["digits", "1".repeat(letters)],
  ["digits and a line end", `${"1".repeat(letters)}\nx\ny`],
  ["a number and blanks", `1${" ".repeat(letters)}x`],
  ["blanks and line ends", `1 per${" ".repeat(letters)}\nx\ny`],
  ["ranges", "12 to ".repeat(letters / 6)],
  ["dashes", `1${"-".repeat(letters)}`],
  ["units", `1 ${"a/".repeat(letters / 2)}`],
  ["degrees", `1 GDD${" ".repeat(letters)}`],
  ["feet", `1${"'".repeat(letters)}`],
  ["money", `$${" ".repeat(letters)}\n1\n`],
];

const fields = [
  "name",
  "notes",
  "site.latitude",
  "site.elevation",
  "soil.layers[0].name",
  "soil.layers[0].texture",
  "soil.layers[0].thickness",
  "soil.layers[0].water",
  "soil.layers[1].bulkDensity",
  "soil.startingWater.share",
  "soil.hydrologicGroup",
  "weather.annualRain",
  "weather.annualRain[0]",
  "weather.pattern",
  "crop.name",
  "crop.sowing",
  "crop.population",
  "fallow.length",
  "cases[0].name",
  "cases[1].rootingDepth",
  "yield.slope",
  "yield.threshold",
  "yield.testWeight",
  "money.price",
  "evidence.rootDepths[0].date",
  "evidence.rootDepths[0].depths[0]",
  "evidence.counts[0].rowWidth",
  "evidence.counts[0].rowLength",
  "evidence.counts[0].kernelWeight",
  "rowPositions.rowWidth",
];

const dug = { case: "as it is", date: "2024-07-18", depths: ["24 in", "26 in"] };
const counted = { case: "as it is", rowWidth: "30 in", spots: [{ heads: 31 }] };

async function saidOf(field: string, text: string): Promise<string> {
  const base = withChanges({
    evidence: structuredClone({ rootDepths: [dug], counts: [counted] }),
    ...(field.endsWith("annualRain[0]") ? { "weather.annualRain": ["12 in"] } : {}),
    ...(field.startsWith("notes") ? { notes: "" } : {}),
  }) as Record<string, unknown>;
  const keys = field.split(/[.[\]]+/).filter((key) => key !== "");
  const last = keys.pop()!;
  let here = base;
  for (const key of keys) here = (here[key] ??= {}) as Record<string, unknown>;
  here[last] = text;
  return await resolveScenario(base, {
    fileName: "long.json",
    readText: () => {
      throw new Error("no file is named");
    },
  }).then(
    () => "nothing",
    (error: unknown) => {
      if (error instanceof InputError) return error.message;
      throw error;
    },
  );
}

describe.each(hostile)("a text of 100,000 letters: %s", (_, text) => {
  test.each(fields)("%s is refused in one short line", async (field) => {
    const lines = (await saidOf(field, text)).split("\n");
    const said = field === "weather.annualRain[0]" ? "weather.annualRain" : field;
    expect(lines.filter((line) => line.startsWith(`${said}: expected `))).toHaveLength(1);
    for (const line of lines) expect(line.length).toBeLessThan(700);
  });

  test("is no quantity, range, latitude or money, and the mend says why", async () => {
    await loadUnits();
    const mend = "shorten it to at most 200 letters";
    expect(tryRainTotals(text)).toMatchObject({ mend });
    expect(tryRainTotals([text])).toMatchObject({ mend });
    expect(tryQuantity(text, "rain")).toMatchObject({ mend });
    expect(tryLatitude(text)).toMatchObject({ mend });
    expect(tryMoney(text, "land")).toMatchObject({ mend });
    expect(splitNumber(text)).toBeNull();
  });
});

test("the message names the field, what is expected, and how to mend it", async () => {
  expect(await saidOf("weather.annualRain", "1".repeat(letters))).toBe(
    `weather.annualRain: expected rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"], found "${"1".repeat(57)}..."; shorten it to at most 200 letters`,
  );
  expect(await saidOf("soil.layers[0].thickness", "1".repeat(letters))).toBe(
    `soil.layers[0].thickness: expected a depth such as "14 in" or "350 mm", found "${"1".repeat(57)}..."; shorten it to at most 200 letters`,
  );
  expect(await saidOf("crop.sowing", "1".repeat(letters))).toBe(
    `crop.sowing: expected text of 1 to 120 letters, found "${"1".repeat(57)}..."; shorten it`,
  );
});

test("a file with more faults than anybody mends tells the first hundred and how many more there are", async () => {
  const keys = Object.fromEntries(Array.from({ length: 40_000 }, (_, k) => [`odd${k}`, 0]));
  const said = await resolveScenario(withChanges({ "soil.layers[1]": keys }), {
    fileName: "odd.json",
    readText: () => "",
  }).then(
    () => "nothing",
    (error: Error) => error.message,
  );
  const lines = said.split("\n");
  expect(lines).toHaveLength(101);
  expect(lines.at(-1)).toMatch(/^scenario: expected fewer faults than can be told, found \d+ more; mend/);
});

test("a list of rainfall totals without end is refused", async () => {
  const base = withChanges({ "weather.annualRain": Array.from({ length: 5000 }, () => "12 in") });
  await expect(resolveScenario(base, { fileName: "many.json", readText: () => "" })).rejects.toThrow(
    "weather.annualRain: expected at most 200 rainfall totals, found a list of 5000; take some out",
  );
});
