import { describe, expect, test } from "vitest";
import { newAnswerCache } from "../../../src/answer/runs/answerCache.ts";
import { prepare } from "../../../src/answer/runs/prepare.ts";
import { readyRun } from "../../../src/answer/runs/readyRun.ts";
import { runAtRain } from "../../../src/answer/runs/ensemble.ts";
import { digAnswer } from "../../../src/answer/dig/digAnswer.ts";
import { middleDepth, type Dig } from "../../../src/evidence/dig/dig.ts";
import { fitFrom, reachOf, type DigFit } from "../../../src/answer/dig/digFit.ts";
import { responseTo, type FitGround } from "../../../src/answer/dig/digResponse.ts";
import { hinderBy } from "../../../src/evidence/dig/hinderBy.ts";
import { stream } from "../../../src/randomness.ts";
import type { Scenario } from "../../../src/scenario/scenario.ts";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import { someRecord, someScenario } from "../answer/someScenario.ts";

const [asDug] = someScenario().cases;
const twice: Scenario["cases"] = [asDug, { ...asDug, name: "the same again" }];
const pan = { kind: "passage", layer: "pan" } as const;

function scenarioOf(years = 24): Scenario {
  const base = someScenario();
  return {
    ...base,
    cases: twice,
    weather: { ...base.weather, source: { kind: "record", record: someRecord(6), normals: null } },
    ensemble: { ...base.ensemble, years },
  };
}

function digOf(depthsByCase: readonly (readonly number[])[], more: Partial<Dig> = {}): Dig {
  return {
    groups: depthsByCase.map((depthsMm, caseIndex) => ({
      field: `evidence.rootDepths[${caseIndex}].date`,
      caseIndex,
      day: dayNumber(1994, 7, 25),
      rowPosition: null,
      depthsMm,
    })),
    paired: false,
    confidence: 0.95,
    fitted: pan,
    drives: true,
    ...more,
  };
}

function fittedIn(ground: FitGround, dig: Dig): DigFit {
  return fitFrom(responseTo(dig, ground)!, dig, ground.scenario, ground.drawsByRun.length);
}

function groundOf(scenario: Scenario) {
  const { weatherYears, yearByRun, drawsByRun } = prepare(scenario);
  return {
    scenario,
    weather: weatherYears.weather,
    middleWeather: weatherYears.weather,
    yearByRun,
    drawsByRun,
  };
}

/** The weather of the record is the same for every seed. */
const cache = newAnswerCache();
const july = dayNumber(1994, 7, 25);
const august = dayNumber(1994, 8, 20);

/** Depth of the model's own front on the day of the dig, in a soil drawn anew. */
function trueDepth(scenario: Scenario, seed: number, passage: number): number {
  return trueDepths(scenario, seed, passage, [july])[0]!;
}

/** The same on several days; roots stop at `stopMm`, where that is given. */
function trueDepths(
  scenario: Scenario,
  seed: number,
  passage: number,
  days: readonly number[],
  stopMm: number | null = null,
): number[] {
  const other = prepare({ ...scenario, ensemble: { ...scenario.ensemble, seed, years: 6 } }, cache);
  const run = other.yearByRun.findIndex(({ year }) => year === 1994);
  const ready = readyRun(other, run);
  ready.forEach(({ slices, plan }) => hinderBy(slices, plan.layers, pan, passage, 0));
  const [first] = runAtRain(
    other,
    ready.map((one) => ({ ...one, stopMm })),
    0,
  );
  const sowing = dayNumber(1994, asDug.crop.sowing.month, asDug.crop.sowing.day);
  return days.map((day) => first!.ledger.frontMm[first!.course.sowingDay + day - sowing]!);
}

/** The first case dug on two days. */
function dugTwice(days: readonly number[], depths: readonly (readonly number[])[]): Dig {
  const once = digOf([[400]]);
  const [group] = once.groups;
  return { ...once, groups: days.map((day, g) => ({ ...group!, day, depthsMm: depths[g]! })) };
}

function withNoise(depthsMm: readonly number[], seed: number): number[][] {
  const noise = stream(seed, "noise of the test");
  return depthsMm.map((depth) =>
    Array.from({ length: 8 }, () => Math.max(30, depth * (1 + 0.12 * noise.normal()))),
  );
}

describe("a dig made by the model itself, with noise", () => {
  const scenario = scenarioOf();
  const ground = groundOf(scenario);
  // One plant at each of these depths: the grid is fine over all that lies around them.
  const response = responseTo(
    digOf([
      [200, 1200],
      [200, 1200],
    ]),
    ground,
  )!;

  test.each([0.06, 0.1, 0.3, 0.6])(
    "gives the true passage %d back within its interval in at least 90 of 100",
    (passage) => {
      let held = 0;
      for (let seed = 100; seed < 200; seed++) {
        const [depths] = withNoise([trueDepth(scenario, seed, passage)], seed);
        const fit = fitFrom(response, digOf([depths!, [400]]), withSeed(seed), 24);
        const { low, high } = fit.cases[0]!;
        if (passage >= low && passage <= high) held += 1;
      }
      expect(held).toBeGreaterThanOrEqual(90);
    },
  );

  const responseOn = (days: readonly number[]) =>
    responseTo(
      dugTwice(
        days,
        days.map(() => [200, 1200]),
      ),
      ground,
    )!;
  const inPanMm = 185;

  test.each([0.06, 0.3])(
    "gives the true passage %d back from two dates too, and hardly ever takes the roots for stopped",
    (passage) => {
      const days = [july, august];
      const answered = responseOn(days);
      let held = 0;
      let stopped = 0;
      for (let seed = 100; seed < 200; seed++) {
        const depths = withNoise(trueDepths(scenario, seed, passage, days), seed);
        const fit = fitFrom(answered, dugTwice(days, depths), withSeed(seed), 24);
        const { low, high, told } = fit.cases[0]!;
        if (passage >= low && passage <= high) held += 1;
        if (told.reading === "stopped") stopped += 1;
      }
      expect(held).toBeGreaterThanOrEqual(90);
      expect(stopped).toBeLessThanOrEqual(5);
    },
  );

  test("gives the depth back at which roots stopped, from two dates; they decide for it, and seldom against it", () => {
    // Seven weeks apart: a front that crept to that depth in a month would be through the pan by then.
    const days = [dayNumber(1994, 7, 1), august];
    const answered = responseOn(days);
    let held = 0;
    const told = { stopped: 0, either: 0, slowed: 0 };
    for (let seed = 100; seed < 200; seed++) {
      const depths = withNoise(trueDepths(scenario, seed, 0.4, days, inPanMm), seed);
      const fit = fitFrom(answered, dugTwice(days, depths), withSeed(seed), 24);
      const { stop, told: one } = fit.cases[0]!;
      told[one.reading] += 1;
      if (inPanMm >= stop.low && inPanMm <= stop.high) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(90);
    expect(told.slowed).toBeLessThanOrEqual(5);
    // The others stay a range of both.
    expect(told.stopped).toBeGreaterThanOrEqual(60);
  });

  test("from one date gives that depth back, and leaves open whether the roots stopped", () => {
    let held = 0;
    for (let seed = 100; seed < 200; seed++) {
      const [only] = withNoise(trueDepths(scenario, seed, 0.4, [july], inPanMm), seed);
      const fit = fitFrom(response, digOf([only!, [400]]), withSeed(seed), 24);
      const { stop, told } = fit.cases[0]!;
      if (inPanMm >= stop.low && inPanMm <= stop.high) held += 1;
      expect(told).toEqual({ reading: "either", by: "their depth", stoppedShare: null });
    }
    expect(held).toBeGreaterThanOrEqual(90);
  });

  function withSeed(seed: number): Scenario {
    return { ...scenario, ensemble: { ...scenario.ensemble, seed } };
  }

  test("with no noise, in the soil as it is, the fitted value is the true one", () => {
    const exact = {
      ...scenario,
      ensemble: {
        ...scenario.ensemble,
        availableCapacitySd: 0,
        deepWaterSd: 0,
        densityReading: "usual" as const,
      },
    };
    const depth = trueDepth(exact, 3, 0.28);
    const fit = fittedIn(groundOf(exact), digOf([[depth, depth + 4, depth - 4]]));
    expect(fit.cases[0]!.value).toBeCloseTo(0.28, 2);
    expect(fit.cases[0]!.groups[0]!.frontMm).toBeCloseTo(depth, 6);
  });
});

describe("plants of a case whose rooting depth is stated", () => {
  const base = scenarioOf(12);
  const stated = (depthMm: number): Scenario => ({
    ...base,
    cases: [{ ...asDug, rooting: { kind: "absolute", depthMm } }],
  });
  const depth = trueDepth(base, 3, 0.3);
  const dig = digOf([[depth - 10, depth, depth + 10]]);
  const grown = fittedIn(groundOf({ ...base, cases: [asDug] }), dig).cases[0]!;

  test("tell of the layer what those of grown roots do, where that depth is far below them", () => {
    expect(fittedIn(groundOf(stated(2500)), dig).cases[0]!.value).toBe(grown.value);
  });
  test("found at that depth, meet it, and leave open how easy the way is", () => {
    const fit = fittedIn(groundOf(stated(depth)), dig).cases[0]!;
    expect(reachOf(fit)).toBe("meets");
    // Where the front stops, the first value of the grid that takes it there stands for it.
    expect(fit.value).toBeGreaterThanOrEqual(grown.value - 0.005);
    expect(fit.value).toBeLessThan(grown.high);
    expect(grown.high).toBeLessThan(1);
    expect(fit.high).toBe(1);
  });
  test("found below that depth, are met by no passage, and count as through an open layer", () => {
    const fit = fittedIn(groundOf(stated(depth - 100)), dig);
    expect(reachOf(fit.cases[0]!)).toBe("no passage is open enough");
    expect(fit.servedBy).toEqual([0]);
    expect(fit.cases[0]!.value).toBe(1);
  });
  test("are none of those told against the first case's roots", () => {
    const relative = { ...asDug, rooting: { kind: "relative", extraMm: 50 } } as const;
    const ground = groundOf({ ...base, cases: [asDug, relative] });
    expect(fittedIn(ground, digOf([[depth], [depth]])).cases[1]).toBeNull();
  });
});

describe("what a dig can and cannot tell", () => {
  const scenario = scenarioOf();
  const ground = groundOf(scenario);
  const fitOf = (dig: Dig) => fittedIn(ground, dig);

  test("deeper roots mean an easier layer, and the interval narrows with more plants", () => {
    const few = [360, 400, 440];
    const many = [...few, ...few, ...few, ...few, ...few];
    const [shallow, deep] = fitOf(digOf([few, few.map((mm) => mm + 150)])).cases;
    expect(deep!.value).toBeGreaterThan(shallow!.value);
    const [narrow] = fitOf(digOf([many, many])).cases;
    expect(narrow!.high - narrow!.low).toBeLessThan(shallow!.high - shallow!.low);
  });

  test("roots deeper than any passage explains, and shallower than a shut layer lets them, are told", () => {
    const [tooDeep, tooShallow] = fitOf(
      digOf([
        [1900, 1950, 2000],
        [60, 70, 80],
      ]),
    ).cases;
    expect(tooDeep).toMatchObject({ tooDeepShare: 1, tooShallowShare: 0, value: 1 });
    expect(tooShallow).toMatchObject({ tooDeepShare: 0, tooShallowShare: 1, value: 0 });
    expect(tooDeep!.openMm).toBeLessThan(1900);
    expect(tooShallow!.shutMm).toBeGreaterThan(80);
  });

  test("one plant, or plants all equal, say so and take 20 % of the depth", () => {
    expect(middleDepth({ depthsMm: [400] })).toEqual({
      depthMm: 400,
      errorMm: 80,
      freedom: Infinity,
      assumed: "one plant",
    });
    expect(middleDepth({ depthsMm: [400, 400] })).toMatchObject({ assumed: "all equal" });
    const [one] = fitOf(digOf([[400]])).cases;
    expect(one!.low).toBeLessThan(one!.value);
    expect(one!.high).toBeGreaterThan(one!.value);
  });

  test("plants dug before sowing are refused by name", () => {
    const early = digOf([[400]]);
    const group = { ...early.groups[0]!, day: dayNumber(1994, 4, 1) };
    expect(() => fitOf({ ...early, groups: [group] })).toThrow(/evidence\.rootDepths\[0\]\.date/);
  });

  test("a fit that decides changes the roots; one that does not leaves every byte", () => {
    const dig = digOf([
      [300, 310, 320],
      [600, 620, 640],
    ]);
    const evidence = { confidence: 0.95, dig, counts: null, strips: null };
    const depth = (one: Scenario) => {
      const preparation = prepare(one);
      return runAtRain(preparation, readyRun(preparation, 0), 0).map(({ totals }) => totals.finalRootDepthMm);
    };
    const [shallow, deep] = depth({ ...scenario, evidence });
    expect(deep!).toBeGreaterThan(shallow! + 50);
    expect(depth({ ...scenario, evidence: { ...evidence, dig: { ...dig, drives: false } } })).toEqual(
      depth(scenario),
    );
  });

  test("a case that was not dug shares the draws of the same layer; another layer keeps its density", () => {
    const loosened = asDug.layers.map((layer) =>
      layer.name === "pan" ? { ...layer, bulkDensityKgPerM3: layer.bulkDensityKgPerM3 - 150 } : layer,
    );
    const three = {
      ...scenario,
      cases: [...twice, { ...asDug, name: "loosened", layers: loosened }],
    } as Scenario;
    const dig = digOf([[300, 310, 320]]);
    const evidence = { confidence: 0.95, dig, counts: null, strips: null };
    const preparation = prepare({ ...three, evidence });
    expect(preparation.digFit()!.servedBy).toEqual([0, 0, null]);
    const passages = readyRun(preparation, 0).map(({ slices }) => slices.passage);
    const undug = readyRun(prepare(three), 0).map(({ slices }) => slices.passage);
    expect(passages[0]).not.toEqual(undug[0]);
    expect(passages[1]).toEqual(passages[0]);
    expect(passages[2]).toEqual(undug[2]);

    const deeper = [1900, 1950, 2000];
    const unmet = { ...evidence, dig: digOf([deeper, [300, 310, 320]]) };
    // What no passage meets counts as open; a case that was not dug takes what is met.
    expect(prepare({ ...three, evidence: unmet }).digFit()!.servedBy).toEqual([0, 1, null]);
    const [open] = readyRun(prepare({ ...three, evidence: unmet }), 0);
    expect([...open!.slices.passage].every((passage) => passage > 0.99)).toBe(true);

    const said = digAnswer(dig, preparation.digFit(), ["as dug", "the same again", "loosened"]).fit!.undug;
    expect(said).toEqual([
      { case: "the same again", as: "as dug" },
      { case: "loosened", as: null },
    ]);
  });

  test("two dates of one case are fitted together, between what each alone would say", () => {
    const one = digOf([[300, 320, 340]]);
    const later = { ...one.groups[0]!, day: dayNumber(1994, 8, 20), depthsMm: [900, 950, 1000] };
    const alone = fitOf(one).cases[0]!.value;
    const other = fitOf({ ...one, groups: [later] }).cases[0]!.value;
    const both = fitOf({ ...one, groups: [one.groups[0]!, later] }).cases[0]!.value;
    expect(both).toBeGreaterThanOrEqual(Math.min(alone, other) - 0.001);
    expect(both).toBeLessThanOrEqual(Math.max(alone, other) + 0.001);
  });
});
