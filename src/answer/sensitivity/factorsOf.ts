import jstat from "jstat";
import { triangleAt } from "../../randomness.ts";
import { quantile } from "../../statistics/quantiles.ts";
import { cutSlices, passageOf, asResolved } from "../../soil/layers/slices.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import { sayBoth } from "../../quantity/sayQuantity.ts";
import {
  swingShares,
  type Factor,
  type FactorName,
  type FactorRange,
  type LeftOut,
  type RangeKind,
} from "./factors.ts";
import type { SensitivityGround } from "./ground.ts";
import { statedExtraMm } from "./setting.ts";

/** Half as much in one case of ten, half as much again in one of ten. Ours: nothing published says how sure a stated depth is. */
const extraDepthSd = 0.5 / 1.2815515655446004;

/** What two people who look at the same ground differ by, share of it. Ours. */
const coverEitherWay = 0.1;

/** What counts of plants differ by from place to place, share of the stand. Ours. */
const standEitherWay = 0.1;

/** The factors of a scenario, and those it does not have, with the reason. */
export function factorsOf(ground: SensitivityGround): {
  readonly factors: readonly Factor[];
  readonly leftOut: readonly LeftOut[];
} {
  const found = [
    startOf,
    capacityOf,
    denseLayerOf,
    extraDepthOf,
    uptakeOf,
    rainOf,
    residueOf,
    standOf,
    slopeOf,
    priceOf,
  ].map((of) => of(ground));
  return {
    factors: found.flatMap((one) => ("set" in one ? [one] : [])),
    leftOut: found.flatMap((one) => ("set" in one ? [] : [one])),
  };
}

type Found = Factor | LeftOut;

const without = (name: FactorName, why: string): LeftOut => ({ name, why });
const normal = (share: number) => jstat.normal.inv(share, 0, 1);
const between = (low: number, high: number, share: number) => low + (high - low) * share;

/** A factor that one value moves, the same for every pair. */
function oneValue(
  name: FactorName,
  range: string,
  kind: RangeKind,
  shown: (share: number) => number,
  set: Factor["set"],
  movesSeasons = true,
): Factor {
  const ends: FactorRange = { kind, low: shown(swingShares.low), high: shown(swingShares.high) };
  return { name, range, columns: 1, movesSeasons, set, rangeOfPair: () => ends };
}

function startOf({ preparation }: SensitivityGround): Found {
  const name = "water at the start";
  const { deepWaterSd: sd, deepBelowMm } = preparation.scenario.ensemble;
  if (sd === 0) return without(name, "ensemble.deepWaterSpread is 0");
  const shift = (share: number) => sd * normal(share);
  return oneValue(
    name,
    `available water below ${sayBoth(deepBelowMm, "depth")} when the run begins, share of what the soil can hold: ensemble.deepWaterSpread`,
    "share added",
    shift,
    (setting, [share]) => ({ ...setting, deepShift: shift(share!) }),
  );
}

function capacityOf({ preparation }: SensitivityGround): Found {
  const name = "available water";
  const { cases, ensemble } = preparation.scenario;
  if (cases.every(({ layers }) => layers.every(({ availableWaterSd }) => availableWaterSd === 0)))
    return without(name, "ensemble.availableCapacitySpread is 0");
  const first = cases[0].layers;
  return oneValue(
    name,
    `what the soil can hold between wilting point and field capacity, mean of the first case's layers: ${ensemble.availableCapacitySd === null ? "each layer's own spread, by how its limits are known" : "ensemble.availableCapacitySpread"}`,
    "share",
    (share) => meanCapacity(first, normal(share)),
    (setting, [share]) => ({ ...setting, capacity: normal(share!) }),
  );
}

/** Volume of available water in the whole column, share of the soil's. */
function meanCapacity(layers: readonly SoilLayer[], capacity: number): number {
  const { count, fieldCapacityMm, wiltingPointMm } = cutSlices(layers, Infinity, { ...asResolved, capacity });
  let mm = 0;
  for (let i = 0; i < count; i++) mm += fieldCapacityMm[i]! - wiltingPointMm[i]!;
  return mm / layers.at(-1)!.bottomMm;
}

/** Uniform between the two readings, as in the runs of a comparison. */
const eitherSide = (share: number) => 2 * share - 1;

function denseLayerOf({ preparation }: SensitivityGround): Found {
  const name = "dense layer";
  const { cases, ensemble, evidence } = preparation.scenario;
  const ranges = ensemble.densityReading === "range";
  const fixed = { range: 0, strict: -1, usual: 0, lenient: 1 }[ensemble.densityReading];
  const lenience = (share: number) => (ranges ? eitherSide(share) : fixed);
  const paceAt = (layer: SoilLayer, share: number) => passageOf(layer, lenience(share), eitherSide(share));
  const layers = cases.flatMap((one) => one.layers).filter((layer) => paceAt(layer, 0) < paceAt(layer, 1));
  const fit = evidence?.dig?.drives === true ? preparation.digFit() : null;
  const place = fit?.servedBy.find((one) => one !== null) ?? null;
  const draws = place === null ? null : (fit?.cases[place]?.draws ?? null);
  if (draws !== null) {
    // A fit may hold more draws than there are runs.
    const order = preparation.drawsByRun.map((_, run) => run).sort((a, b) => draws[a]! - draws[b]! || a - b);
    const runAt = (share: number) => order[Math.min(order.length - 1, Math.floor(share * order.length))]!;
    const ends: FactorRange = {
      kind: "share",
      low: draws[runAt(swingShares.low)]!,
      high: draws[runAt(swingShares.high)]!,
    };
    return {
      name,
      range: "what the plants dug say of it, and how the others are read",
      columns: 3,
      movesSeasons: true,
      set: (setting, [reading, open, dug]) => ({
        ...setting,
        lenience: lenience(reading!),
        openness: eitherSide(open!),
        fitRun: runAt(dug!),
      }),
      rangeOfPair: () => ends,
    };
  }
  const [densest] = layers.sort((a, b) => paceAt(a, 0.5) - paceAt(b, 0.5));
  if (densest === undefined) return without(name, "no layer holds roots back");
  const { low, high } = swingShares;
  return {
    name,
    range: `share of the open pace that roots keep in "${densest.name}": ${ranges ? "from a strict to a lenient reading of density or penetrometer, and " : ""}from few to many cracks`,
    columns: 2,
    movesSeasons: true,
    set: (setting, [reading, open]) => ({
      ...setting,
      lenience: lenience(reading!),
      openness: eitherSide(open!),
    }),
    rangeOfPair: () => ({ kind: "share", low: paceAt(densest, low), high: paceAt(densest, high) }),
  };
}

function extraDepthOf({ preparation }: SensitivityGround): Found {
  const name = "extra depth";
  const [first, ...later] = preparation.scenario.cases;
  const statedMm = later.map((plan) => statedExtraMm(plan, first));
  if (statedMm.every((mm) => mm === null || mm === 0))
    return without(name, "no case states by how much its roots go deeper than the first's");
  const times = (share: number) => 1 + extraDepthSd * normal(share);
  return {
    name,
    range: "by how much the roots go deeper: half as much to half as much again (ours)",
    columns: 1,
    movesSeasons: true,
    set: (setting, [share]) => ({ ...setting, extraDepthTimes: times(share!) }),
    rangeOfPair: (pair) => {
      const mm = statedMm[pair] ?? null;
      if (mm === null || mm === 0) return null;
      return { kind: "extra depth", low: mm * times(swingShares.low), high: mm * times(swingShares.high) };
    },
  };
}

function uptakeOf({ preparation }: SensitivityGround): Found {
  const name = "uptake at depth";
  const { ensemble, cases } = preparation.scenario;
  if (ensemble.deepUptakeSpread === 0) return without(name, "ensemble.deepUptakeSpread is 0");
  if (cases.every(({ uptake }) => uptake.rule === "root-zone average"))
    return without(name, "uptake from the root zone's average does not ask for it");
  const { halvingMm } = cases[0].uptake;
  const times = (share: number) => (1 + ensemble.deepUptakeSpread) ** eitherSide(share);
  return oneValue(
    name,
    "depth over which what roots can take in a day falls to half: ensemble.deepUptakeSpread",
    "depth",
    (share) => halvingMm * times(share),
    (setting, [share]) => ({ ...setting, deepUptake: times(share!) }),
  );
}

function rainOf({ rain, preparation }: SensitivityGround): Found {
  const name = "rain";
  if (rain.kind === "none") return without(name, rain.why);
  const { middleMm } = rain;
  const { rainTotalOver } = preparation.scenario.weather;
  const totalAt =
    rain.kind === "totals"
      ? (share: number) => between(rain.lowMm, rain.highMm, share)
      : (share: number) => quantile(rain.sortedMm, share);
  return oneValue(
    name,
    rain.kind === "totals"
      ? `rain of ${rainTotalOver === "season" ? "the season" : "the year"}: the totals asked, even between the least and the most`
      : "rain of the year: as it differs from year to year here, each year's days scaled to it",
    "rain",
    totalAt,
    (setting, [share]) => ({ ...setting, rainTimes: totalAt(share!) / middleMm }),
  );
}

function residueOf({ preparation }: SensitivityGround): Found {
  const name = "residue";
  const covers = preparation.scenario.cases.flatMap(({ ground, fallowDays }) =>
    [
      fallowDays > 0 || ground.residueCoverCrop === null ? ground.residueCoverFallow : 0,
      ground.residueCoverCrop ?? 0,
    ].filter((cover) => cover > 0),
  );
  const [cover] = covers;
  if (cover === undefined) return without(name, "no residue lies on the ground of any case");
  const added = (share: number) => between(-coverEitherWay, coverEitherWay, (share - 0.1) / 0.8);
  return oneValue(
    name,
    "ground under residue where there is some: 10 points less to 10 points more (ours)",
    "share",
    (share) => Math.min(1, Math.max(0, cover + added(share))),
    (setting, [share]) => ({ ...setting, coverAdded: added(share!) }),
  );
}

function standOf({ preparation }: SensitivityGround): Found {
  const name = "stand";
  const thin = preparation.scenario.cases.find(({ crop }) => crop.standShare < 1);
  if (thin === undefined) return without(name, "the stand of every case is full");
  const times = (share: number) => between(1 - standEitherWay, 1 + standEitherWay, (share - 0.1) / 0.8);
  // Each new stand is a new course of the crop: the range is walked in steps.
  const stepped = (share: number) => times((Math.floor(share * 20) + 0.5) / 20);
  return oneValue(
    name,
    `leaf area against a full stand where it is thin, here in "${thin.name}": a tenth less to a tenth more (ours)`,
    "share",
    (share) => Math.min(1, thin.crop.standShare * times(share)),
    (setting, [share]) => ({ ...setting, standTimes: stepped(share!) }),
  );
}

function slopeOf({ preparation }: SensitivityGround): Found {
  const name = "yield slope";
  const { low, middle, high } = preparation.scenario.yieldLine.slopeKgPerHaPerMm;
  if (low === high) return without(name, "the yield line has one slope");
  const slope = (share: number) => triangleAt(share, low, middle, high);
  return oneValue(
    name,
    "yield for each inch of water: the yield line's own range",
    "slope",
    slope,
    (setting, [share]) => ({ ...setting, slopeKgPerHaPerMm: slope(share!) }),
    false,
  );
}

function priceOf({ preparation }: SensitivityGround): Found {
  const name = "price";
  const { money } = preparation.scenario;
  if (money === null) return without(name, "no price is told");
  const { low, middle, high } = money.pricePerKg;
  if (low === high) return without(name, "one price is told; give money.priceRange");
  const price = (share: number) => triangleAt(share, low, middle, high);
  return oneValue(
    name,
    "price of the crop: money.priceRange",
    "price",
    price,
    (setting, [share]) => ({ ...setting, pricePerKg: price(share!) }),
    false,
  );
}
