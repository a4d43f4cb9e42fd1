import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../../../src/answer/comparison/compare.ts";
import { runEnsemble } from "../../../../src/answer/runs/ensemble.ts";
import { resolveScenario } from "../../../../src/scenario/resolve/resolve.ts";
import type { Json, JsonGroup } from "../../../../web/state/json.ts";
import { setAt } from "../../../../web/state/path.ts";
import { makeEngine, type Engine } from "../../../../web/worker/engine.ts";
import { makeSecondWorker } from "../../../../web/worker/secondWorker.ts";
import type { ToSecondWorker } from "../../../../web/worker/secondWorkerProtocol.ts";
import { makePause } from "../../../../web/worker/pause.ts";
import type { FromEngine } from "../../../../web/worker/protocol.ts";

const demo = JSON.parse(
  readFileSync(new URL("../../../../shared/scenarios/sorghum-over-plough-pan.json", import.meta.url), "utf8"),
) as JsonGroup;
const years = 16;
/** With its dig, which is fitted. */
const dug: Json = { ...demo, ensemble: { years, seed: 3 } };
const { evidence: _, ...undug } = demo;
const scenario: Json = { ...undug, ensemble: { years, seed: 3 } };
const shown = { run: null, totalIndex: null };

function open(): {
  engine: Engine;
  heard: FromEngine[];
  until: (kind: FromEngine["kind"], id: number, whole?: boolean) => Promise<FromEngine>;
} {
  const heard: FromEngine[] = [];
  const waiting: (() => void)[] = [];
  const engine = makeEngine((message) => {
    heard.push(message);
    for (const look of waiting) look();
  }, makePause());
  const until = (kind: FromEngine["kind"], id: number, whole = false): Promise<FromEngine> =>
    new Promise((resolve) => {
      const look = () => {
        const found = heard.find(
          (one) =>
            one.kind === kind &&
            one.id === id &&
            (!whole || (one.kind === "answer" && one.answer.whole) || (one.kind === "fan" && one.fan.whole)),
        );
        if (found !== undefined) resolve(found);
      };
      waiting.push(look);
      look();
    });
  return { engine, heard, until };
}

/** Never changed by the tests: worked out once for each scenario. */
const ensembles = new Map<Json, ReturnType<typeof runEnsemble>>();

async function commandLine(of: Json, units: "us" | "metric" = "us") {
  const ensemble =
    ensembles.get(of) ?? runEnsemble(await resolveScenario(of, { fileName: "x", readText: () => "" }));
  ensembles.set(of, ensemble);
  return comparisonOf(ensemble, units);
}

describe("the engine", () => {
  test("answers as the command line does: a season first, then the middle total, then all, then the fan", async () => {
    const { engine, heard, until } = open();
    engine.onMessage({ kind: "compute", id: 1, scenario: dug, units: "us", shown });
    const whole = await until("answer", 1, true);
    if (whole.kind !== "answer") throw new Error("no answer");
    expect(whole.answer.comparison).toEqual(await commandLine(dug));
    expect(whole.answer.told[0]!.sentence).toMatch(/^At 13 in of rain/);
    const fan = await until("fan", 1, true);
    if (fan.kind !== "fan") throw new Error("no fan");
    expect(fan.fan.points.map(({ rainTotalMm }) => Math.round(rainTotalMm / 25.4))).toEqual([
      8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20,
    ]);
    // As many runs as the ensemble has: at 13 in the two are one.
    expect(fan.fan.points[5]!.differences).toEqual(whole.answer.comparison.differences);
    const kinds = heard.map(({ kind }) => kind).filter((kind) => kind !== "progress");
    expect(kinds.slice(0, 3)).toEqual(["resolved", "season", "answer"]);
  });

  test("with a second worker the answer is the same to the last digit, and the second worker did part of it", async () => {
    const { engine, until } = open();
    let helped = 0;
    const secondWorker = makeSecondWorker((message) => {
      helped += message.runs.to - message.runs.from;
      engine.onSecondWorker(structuredClone(message));
    }, makePause());
    engine.getHelp(secondWorker);
    engine.onMessage({ kind: "compute", id: 1, scenario: dug, units: "us", shown });
    const whole = await until("answer", 1, true);
    if (whole.kind !== "answer") throw new Error("no answer");
    expect(whole.answer.comparison).toEqual(await commandLine(dug));
    const { traces } = whole.answer.byRun;
    expect(traces.cases.every(({ count }) => count.every((points) => points > 5))).toBe(true);
    expect(helped).toBeGreaterThan(0);
  });

  test("the second worker is told when the season is drawn, and is handed the generated years once", async () => {
    const { engine, until } = open();
    const told: ToSecondWorker[] = [];
    engine.getHelp((message) => told.push(message));
    const helps = () => told.flatMap((one) => (one.kind === "help" ? [one] : []));
    engine.onMessage({ kind: "compute", id: 1, scenario, units: "us", shown });
    await until("season", 1);
    expect(helps()).toEqual([]);
    engine.onMessage({ kind: "drawn", id: 1 });
    await until("answer", 1, true);
    expect(helps().map(({ generated }) => generated === null)).toEqual([false, true, true]); // a total each
    engine.onMessage({
      kind: "compute",
      id: 2,
      scenario: setAt(scenario, "name", "again"),
      units: "us",
      shown,
    });
    await until("season", 2);
    engine.onMessage({ kind: "drawn", id: 1 }); // of an older question: not waited for
    expect(helps()).toHaveLength(3);
    await until("answer", 2, true);
    expect(helps().every(({ id, generated }) => id === 1 || generated === null)).toBe(true);
  });

  test("the first of all with many runs comes from the first twenty-five, and is taken over by all of them", async () => {
    const { engine, heard, until } = open();
    const many = setAt(setAt(dug, "ensemble.years", 50), "weather.annualRain", "13 in");
    engine.onMessage({ kind: "compute", id: 1, scenario: many, units: "us", shown });
    const whole = await until("answer", 1, true);
    if (whole.kind !== "answer") throw new Error("no answer");
    expect(whole.answer.comparison).toEqual(await commandLine(many));
    const first = heard.find((one) => one.kind === "answer");
    if (first?.kind !== "answer") throw new Error("no first answer");
    expect([first.answer.stage, first.answer.byRun.runs]).toEqual(["first runs", 25]);
    engine.onMessage({ kind: "compute", id: 2, scenario: setAt(many, "name", "again"), units: "us", shown });
    await until("answer", 2, true);
    expect(heard.flatMap((one) => (one.kind === "answer" && one.id === 2 ? [one.answer.stage] : []))).toEqual(
      ["all totals", "whole"],
    );
  });

  test("newer work ends older", async () => {
    const { engine, heard, until } = open();
    engine.onMessage({
      kind: "compute",
      id: 1,
      scenario: setAt(scenario, "ensemble.years", 600),
      units: "us",
      shown,
    });
    await until("season", 1);
    engine.onMessage({ kind: "compute", id: 2, scenario, units: "us", shown });
    await until("answer", 2, true);
    const stages = heard.flatMap((one) => (one.kind === "answer" && one.id === 1 ? [one.answer.stage] : []));
    expect(stages).toEqual(["first runs"]);
  });

  test("a wrong scenario is refused with the places of what is wrong, and the last good one goes on", async () => {
    const { engine, until } = open();
    engine.onMessage({
      kind: "compute",
      id: 1,
      scenario: setAt(scenario, "ensemble.years", 60),
      units: "us",
      shown,
    });
    await until("season", 1);
    engine.onMessage({
      kind: "compute",
      id: 2,
      scenario: setAt(scenario, "soil.layers[1].bulkDensity", "1.62 in"),
      units: "us",
      shown,
    });
    const refused = await until("refused", 2);
    if (refused.kind !== "refused") throw new Error("not refused");
    expect(refused.problems[0]!.field).toBe("soil.layers[1].bulkDensity");
    expect(await until("answer", 1, true)).toBeDefined();
  });

  test("other units come without running again", async () => {
    const { engine, heard, until } = open();
    engine.onMessage({ kind: "compute", id: 1, scenario: dug, units: "us", shown });
    await until("fan", 1, true);
    heard.length = 0;
    engine.onMessage({ kind: "units", id: 1, units: "metric" });
    const told = await until("answer", 1, true);
    if (told.kind !== "answer") throw new Error("no answer");
    expect(told.answer.comparison).toEqual(await commandLine(dug, "metric"));
    expect(heard.map(({ kind }) => kind)).toEqual(["season", "answer", "fan"]);
  });

  test("a season asked for is that of its run, and one that is not there is the middle one", async () => {
    const { engine, heard, until } = open();
    engine.onMessage({ kind: "compute", id: 1, scenario, units: "us", shown });
    await until("answer", 1, true);
    heard.length = 0;
    engine.onMessage({ kind: "season", id: 1, shown: { run: 5, totalIndex: 2 } });
    engine.onMessage({ kind: "season", id: 1, shown: { run: 999, totalIndex: null } });
    const runs = heard.flatMap((one) =>
      one.kind === "season" ? [[one.season.run, one.season.totalIndex]] : [],
    );
    expect(runs[0]).toEqual([5, 2]);
    expect(runs[1]![0]).toBeLessThan(years);
  });

  test("texts wait for the whole answer", async () => {
    const { engine, until } = open();
    engine.onMessage({ kind: "compute", id: 1, scenario, units: "us", shown });
    engine.onMessage({ kind: "text", id: 7, what: "json", shown, units: "us" });
    const kept = await until("text", 7);
    if (kept.kind !== "text") throw new Error("no text");
    expect(JSON.parse(kept.text.text).byRainTotal).toHaveLength(3);
    expect(kept.text.fileName).toMatch(/^grain-sorghum.*-answer\.json$/);
  });

  test("a file that the scenario names and nobody gave is asked for by name", async () => {
    const { engine, until } = open();
    const recorded = setAt(scenario, "weather", { record: "mine/station.csv" });
    engine.onMessage({ kind: "compute", id: 1, scenario: recorded, units: "us", shown });
    const refused = await until("refused", 1);
    if (refused.kind !== "refused") throw new Error("not refused");
    expect(refused.problems[0]).toMatchObject({
      field: "weather.record",
      mend: "drop station.csv on the page, or choose it in Inputs",
    });
  });
});
