import { describe, expect, test } from "vitest";
import { answerOf } from "../../src/answer/chain/answerOf.ts";
import { chainAnswerOf } from "../../src/answer/chain/boilChains.ts";
import type { ChainDifference } from "../../src/answer/chain/chainAnswer.ts";
import type { SeasonRow } from "../../src/answer/chain/rows.ts";
import { readyLink, runChain, soilsOfChain, type LinkRuns } from "../../src/answer/chain/chain.ts";
import { prepareChains, type ChainPreparation } from "../../src/answer/chain/prepareChains.ts";
import { runChains } from "../../src/answer/chain/runChains.ts";
import { leftBy } from "../../src/answer/chain/carried.ts";
import { makeRunBuffers, runCases } from "../../src/answer/runs/run.ts";
import { strawLeftBy } from "../../src/crop/strawAfterHarvest.ts";
import { coverOfMass } from "../../src/season/residue/mulch.ts";
import { resolved } from "../support/demos.ts";

/** Laws of years in a row. Invented fields: silt loam, rain as the pattern has it. */

interface Field {
  readonly rotation?: unknown;
  readonly crop?: string;
  readonly rain?: string;
  readonly texture?: string;
  readonly bottom?: string;
  readonly cases?: readonly Record<string, unknown>[];
  readonly chain?: Record<string, unknown>;
  readonly years?: number;
  readonly start?: Record<string, unknown>;
}

const written = ({
  rotation = "every year",
  crop = "grain sorghum",
  rain = "16 in",
  texture = "silt loam",
  bottom = "72 in",
  cases = [{ name: "as now" }, { name: "the same" }],
  chain,
  years = 24,
  start,
}: Field) => ({
  format: "rootfront-scenario/1",
  name: "Invented",
  site: { latitude: "38.5 N", elevation: "3300 ft" },
  soil: {
    layers: [{ name: "soil", bottom, texture }],
    ...(start === undefined ? {} : { startingWater: start }),
  },
  weather: { pattern: "summer-peak", annualRain: rain },
  crop: { name: crop },
  rotation,
  ...(chain === undefined ? {} : { chain }),
  cases,
  ensemble: { years },
});

async function prepared(field: Field): Promise<ChainPreparation> {
  const scenario = await resolved(written(field));
  return prepareChains(scenario, scenario.rotation!);
}

const rotations = [
  ["every year", "grain sorghum"],
  ["wheat-fallow", "winter wheat"],
  ["wheat-corn-fallow", "corn"],
  ["wheat-sunflower-fallow", "sunflower"],
] as const;

describe.each(rotations)("%s, asked about %s", (rotation, crop) => {
  test("two equal cases differ by 0 in every year, first year and after", async () => {
    const links = runChains(await prepared({ rotation, crop })).flatMap((at) => at.links);
    const counted = links.filter(({ sinceChange }) => sinceChange >= 1);
    expect(counted.length).toBeGreaterThan(20);
    for (const { own, firstYear } of counted) {
      expect(own[1]!.totals).toEqual(own[0]!.totals);
      expect(own[1]!.yieldKgPerHa).toBe(own[0]!.yieldKgPerHa);
      expect(firstYear?.[1]?.totals).toEqual(firstYear?.[0]?.totals);
    }
  });

  test("water is neither made nor lost from harvest to harvest, and all that is left is carried on", async () => {
    const links = runChains(await prepared({ rotation, crop, rain: "22 in" })).flatMap((at) => at.links);
    let sum = 0;
    for (const { own } of links)
      for (const row of own) {
        expect(Math.abs(row.residualMm)).toBeLessThan(1e-9);
        sum += row.residualMm;
      }
    expect(Math.abs(sum)).toBeLessThan(1e-9);
  });

  test("every year of every phase has its harvest or its fallow, each after the one before", async () => {
    const { calendarByPhase, rotation: plan } = await prepared({ rotation, crop });
    const [first, last] = [calendarByPhase[0]!.links[2]!.year, calendarByPhase[0]!.lastYear];
    for (let year = first; year <= last; year++) {
      const entries = calendarByPhase.flatMap(({ links }) => links.filter((one) => one.year === year));
      const grown = plan.entries.flatMap((entry, e) => (entry === null ? [] : [e]));
      expect(entries.map(({ entry }) => entry).toSorted((a, b) => a - b)).toEqual(grown);
    }
    for (const { links } of calendarByPhase)
      links.slice(1).forEach((link, i) => {
        expect(link.firstIndexByCase[0]).toBe(links[i]!.maturityIndexByCase[0]! + 1);
        expect(link.sowingIndexByCase[0]).toBeGreaterThanOrEqual(link.firstIndexByCase[0]!);
      });
  });
});

/** Water by slice that each link of a chain began with and left, of the first case. */
function watched(prepared: ChainPreparation, start: "fieldCapacityMm" | "wiltingPointMm"): LinkRuns[] {
  const soils = soilsOfChain(prepared, 0).map((soil) => ({
    ...soil,
    startWaterMm: soil.slices[start].slice(),
  }));
  const weather = prepared.preparation.weatherYears.weatherByTotal[0]!;
  return runChain(prepared, 0, 0, soils, weather, makeRunBuffers());
}

test("a link begins with the very water that the link before left, to the last bit", async () => {
  const p = await prepared({ rain: "18 in" });
  const soils = soilsOfChain(p, 0);
  const weather = p.preparation.weatherYears.weatherByTotal[0]!;
  const left: number[] = [];
  const begun: number[] = [];
  for (const { own } of runChain(p, 0, 0, soils, weather, makeRunBuffers())) {
    begun.push(own[0]!.waterAtFirstMm);
    left.push(own[0]!.waterLeftMm);
  }
  expect(begun.length).toBeGreaterThan(10);
  expect(begun.slice(1)).toEqual(left.slice(0, -1));
});

test.each([
  // What is grown, rain, years after which a full and an empty start give the same crop water within 0.1 mm.
  ["every year", "grain sorghum", "silt loam", "72 in", "24 in", 1],
  ["every year", "corn", "sandy loam", "60 in", "14 in", 1],
  ["wheat-fallow", "winter wheat", "silt loam", "72 in", "14 in", 2],
  ["wheat-fallow", "winter wheat", "silt loam", "72 in", "18 in", 1],
  ["wheat-corn-fallow", "winter wheat", "silt loam", "72 in", "18 in", 2],
] as const)(
  "%s, asked about %s, on %s to %s at %s: the start is forgotten after %i years",
  async (rotation, crop, texture, bottom, rain, years) => {
    const p = await prepared({
      rotation,
      crop,
      texture,
      bottom,
      rain,
      years: 24,
      chain: { warmUp: 0, length: 20 },
    });
    const [full, empty] = [watched(p, "fieldCapacityMm"), watched(p, "wiltingPointMm")];
    const later = full.flatMap(({ sinceChange, own }, i) =>
      sinceChange > years
        ? [Math.abs(own[0]!.totals.transpirationMm - empty[i]!.own[0]!.totals.transpirationMm)]
        : [],
    );
    expect(later.length).toBeGreaterThan(5);
    expect(Math.max(...later)).toBeLessThan(0.1);
  },
);

test("the first year of the path is the first year: all cases begin with the same water", async () => {
  const cases = [{ name: "stopped", rootingDepth: "12 in" }, { name: "as they grow" }];
  const links = runChains(await prepared({ cases })).flatMap((at) => at.links);
  const first = links.filter(({ sinceChange }) => sinceChange === 1);
  expect(first.length).toBeGreaterThan(1);
  for (const { own, firstYear } of first) {
    expect(own[1]!.storedAtFirstMm).toBe(own[0]!.storedAtFirstMm);
    expect(firstYear).toBe(own);
  }
});

test("what roots that were stopped had left is taken once: later years bring less than the first", async () => {
  const cases = [{ name: "stopped", rootingDepth: "12 in" }, { name: "as they grow" }];
  const { chain } = answerOf(await resolved(written({ cases, years: 96 })), "metric");
  const { firstYear, yearAfterYear } = chain!.byCrop[0]!.differences[0]!;
  expect(yearAfterYear.extraWaterUsedMm.mean).toBeLessThan(0.6 * firstYear.extraWaterUsedMm.mean);
});

test("more rain in the climate brings stopped roots' loosening more, year after year", async () => {
  const cases = [{ name: "stopped", rootingDepth: "12 in" }, { name: "as they grow" }];
  const { chain } = answerOf(await resolved(written({ cases, rain: "12..20 in", years: 96 })), "metric");
  const means = chain!.byRainTotal.map(
    ({ byCrop }) => byCrop[0]!.differences[0]!.yearAfterYear.extraWaterUsedMm.mean,
  );
  expect(means.length).toBe(3);
  expect(means[1]!).toBeGreaterThan(means[0]!);
  expect(means[2]!).toBeGreaterThan(means[1]!);
});

test("water stated at the start is what every first year begins with", async () => {
  const p = await prepared({
    start: { share: "80 %" },
    cases: [{ name: "now" }, { name: "+2", rootingDepth: "+2 in" }],
  });
  const first = runChains(p)
    .flatMap((at) => at.links)
    .filter(({ firstYear }) => firstYear !== null);
  const stored = new Set(first.map(({ chain, firstYear }) => `${chain} ${firstYear![0]!.storedAtFirstMm}`));
  expect(stored.size).toBe(p.chains.length);
});

test("a link begins with the straw of the crop before it, and with what older straw and snow were carried to it", async () => {
  const p = await prepared({ rotation: "wheat-corn-fallow", crop: "corn" });
  const [soil] = soilsOfChain(p, 0);
  const link = p.calendarByPhase[0]!.links.find(({ entry }) => p.rotation.entries[entry]!.crop === "corn")!;
  const entry = p.rotation.entries[link.entry]!;
  const ready = (strawTPerHa: number, snowMm: number) =>
    readyLink(p, entry, link, 0, 0, { waterMmBySlice: soil!.startWaterMm, strawTPerHa, snowMm }, soil!);
  const ofWheat = strawLeftBy("winter wheat").tPerHa;
  expect(ready(0, 0).plan.ground.residueCoverFallow).toBe(coverOfMass(ofWheat));
  const later = ready(1.5, 7);
  expect(later.plan.ground.residueCoverFallow).toBe(coverOfMass(ofWheat + 1.5));
  expect(later.startSnowMm).toBe(7);

  const [after] = runCases([later], p.preparation.weatherYears.weatherByTotal[0]!, makeRunBuffers());
  expect(after!.left.residueTPerHa).toBeGreaterThan(0);
  const carried = leftBy({ ...after!, left: { ...after!.left, snowMm: 3 } });
  expect(carried).toEqual({
    waterMmBySlice: after!.waterAtEndMmBySlice.slice(0, after!.slices.count),
    strawTPerHa: after!.left.residueTPerHa,
    snowMm: 3,
  });
});

test("a soil is a soil: one draw for all years of a chain, another for the next; the slope is its year's", async () => {
  const p = await prepared({ cases: [{ name: "as now" }], years: 40 });
  const water = (chain: number) => [...soilsOfChain(p, chain)[0]!.slices.fieldCapacityMm];
  expect(water(0)).toEqual(water(0));
  expect(water(1)).not.toEqual(water(0));

  const weather = p.preparation.weatherYears.weatherByTotal[0]!;
  const yields = (of: ChainPreparation) =>
    runChain(of, 1, 0, soilsOfChain(of, 1), weather, makeRunBuffers()).map(
      ({ sinceChange, own }) => [sinceChange, own[0]!.yieldKgPerHa] as const,
    );
  const third = p.yearsBefore[1]! + 2;
  const steeper = p.slopesByEntry.map((slopes) => slopes.map((one, i) => (i === third ? 1.1 * one : one)));
  const before = yields(p);
  const changed = yields({ ...p, slopesByEntry: steeper }).filter(([, kg], i) => kg !== before[i]![1]);
  expect(changed.map(([year]) => year)).toEqual([3]);
});

test("in later first years every case begins with the water that the first case left", async () => {
  const cases = [{ name: "stopped", rootingDepth: "12 in" }, { name: "as they grow" }];
  const links = runChains(await prepared({ cases })).flatMap((at) => at.links);
  const later = links.filter(({ sinceChange, firstYear }) => sinceChange > 1 && firstYear !== null);
  expect(later.length).toBeGreaterThan(5);
  for (const { own, firstYear } of later) {
    expect(firstYear![1]!.waterAtFirstMm).toBe(own[0]!.waterAtFirstMm);
    expect(own[1]!.waterAtFirstMm).toBeLessThan(own[0]!.waterAtFirstMm);
  }
});

test.each([["the shallower case first", 0] as const, ["the deeper case first", 1] as const])(
  "a year is wetted where more than 1 mm came below the shallower roots, in the deeper case's soil: %s",
  async (_, shallow) => {
    const stopped = { name: "stopped", rootingDepth: "12 in" };
    const grown = { name: "as they grow" };
    const p = await prepared({ rain: "12 in", cases: shallow === 0 ? [stopped, grown] : [grown, stopped] });
    const soils = soilsOfChain(p, 0);
    const weather = p.preparation.weatherYears.weatherByTotal[0]!;
    const runs = runChain(p, 0, 0, soils, weather, makeRunBuffers());
    const links = runChains(p)[0]!.links.filter(({ chain, phase }) => chain === 0 && phase === 0);
    const { topMm, thicknessMm } = soils[1 - shallow]!.slices;
    const told = runs.flatMap(({ gainMmBySlice, own }, i) => {
      if (gainMmBySlice === null) return [];
      expect(own[shallow]!.totals.finalRootDepthMm).toBeCloseTo(304.8, 9);
      const gain = gainMmBySlice[1 - shallow]!;
      const below = gain.map(
        (mm, j) => mm * Math.min(1, Math.max(0, (topMm[j]! - 304.8) / thicknessMm[j]! + 1)),
      );
      expect(links[i]!.wetted).toEqual([below.reduce((sum, mm) => sum + mm, 0) > 1]);
      return links[i]!.wetted!;
    });
    expect(told.length).toBeGreaterThan(5);
  },
);

test("roots that went on with the water of a wet year have no wetted soil below them", async () => {
  const cases = [{ name: "as they grow" }, { name: "deeper", rootingDepth: "+2 in" }];
  const p = await prepared({ rain: "13 in", cases, years: 48 });
  const links = runChains(p)[0]!.links.filter(({ wetted }) => wetted !== null);
  const wetted = links.filter((link) => link.wetted![0]);
  const extraMm = ({ own: [a, b] }: (typeof links)[number]) =>
    b!.totals.transpirationMm - a!.totals.transpirationMm;
  const meanMm = links.reduce((sum, link) => sum + extraMm(link), 0) / links.length;
  // Two inches hold 8 mm or so: what wetted them in a third of the years would bring a millimeter a year.
  expect(meanMm).toBeLessThan(0.3);
  expect(wetted.length / links.length).toBeLessThan(0.1);
});

test("the answer is the mean of its years: the path by year, year after year from the fifth on", async () => {
  const cases = [{ name: "stopped", rootingDepth: "12 in" }, { name: "as they grow" }];
  const p = await prepared({ cases, years: 48 });
  const byRain = runChains(p);
  const [{ firstYear, yearAfterYear, path, wettedShare }] = chainAnswerOf(p, byRain, "metric").byCrop[0]!
    .differences as [ChainDifference];
  const counted = byRain[0]!.links.filter(({ sinceChange }) => sinceChange >= 1);
  const settled = counted.filter(({ sinceChange }) => sinceChange >= 5);
  const mean = (rows: readonly (readonly SeasonRow[])[]) =>
    rows.reduce((sum, [a, b]) => sum + b!.totals.transpirationMm - a!.totals.transpirationMm, 0) /
    rows.length;
  expect(yearAfterYear.extraWaterUsedMm.mean).toBeCloseTo(mean(settled.map(({ own }) => own)), 9);
  expect(firstYear.extraWaterUsedMm.mean).toBeCloseTo(
    mean(counted.flatMap((one) => (one.firstYear === null ? [] : [one.firstYear]))),
    9,
  );
  expect(wettedShare).toBe(settled.filter(({ wetted }) => wetted![0]).length / settled.length);
  expect(path.map(({ year }) => year)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(path[0]!.extraWaterUsedMm).toEqual(firstYear.extraWaterUsedMm);
  for (const { year, extraWaterUsedMm } of path.slice(1)) {
    const of = counted.filter(({ sinceChange }) => sinceChange === year).map(({ own }) => own);
    expect(extraWaterUsedMm.mean).toBeCloseTo(mean(of), 9);
  }
});

test.each([
  [0, "50 % of available"],
  [1, "what 1 year before left"],
  [6, "what 6 years before left"],
])("a warm-up of %i years tells the start as %s", async (warmUp, value) => {
  const { defaults } = await resolved(written({ chain: { warmUp } }));
  expect(defaults.find(({ field }) => field === "soil.startingWater")?.value).toBe(value);
});
