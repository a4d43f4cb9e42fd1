import { deepestSoil, hardestReading } from "../../../soil/layers/soilLimits.ts";

/** Limits and defaults that fields, flags and page tell alike. Plain values: command line and page read them without the fields. */

export interface Within {
  readonly from: number;
  readonly to: number;
  /** The lower end itself is too small. */
  readonly above?: boolean;
  /** The range as people read it: `0.5 to 2.2 g/cm^3`. Where both systems are said, each round, `from` and `to` let both through. */
  readonly says: string;
}

/** Whole numbers, both ends among them. */
export type WholeWithin = readonly [from: number, to: number];

export function sayWhole([from, to]: WholeWithin): string {
  return `${from} to ${to}`;
}

/** Weather years run for each rainfall total: no answer has more runs. */
export const yearsWithin = [1, 5000] as const;
export const usualYears = 200;

/** 32 bits. */
export const seedWithin = [0, 4_294_967_295] as const;
export const usualSeed = 1;

/** Of a list that says nothing else. */
export const mostInList = 200;
/** As many as any list of ours holds. */
export const mostRainTotals = mostInList;

/** Basal crop coefficients. */
export const kcbWithin: Within = { from: 0, to: 1.5, says: "0 to 1.5" };

/** Curve numbers, as far as the handbook's table of wetness goes. */
export const curveNumberWithin: Within = { from: 30, to: 100, says: "30 to 100" };

/** The largest depth or height, mm and as it is said, round in both systems. */
interface Most {
  readonly mm: number;
  readonly us: string;
  readonly metric: string;
}

/** Deepest roots; no crop is taller either. Ours. */
const deepestRoots: Most = { mm: 6096, us: "20 ft", metric: "6000 mm" };
export const deepestRootsMm = deepestRoots.mm;

const both = ({ us, metric }: Most) => `${us} (${metric})`;
const upTo = (most: Most): Within => ({ from: 0, to: most.mm, says: `0 to ${both(most)}` });
const aboveZero = (most: Most): Within => ({
  from: 0,
  to: most.mm,
  above: true,
  says: `more than 0 and at most ${both(most)}`,
});

export const deepestRootsSaid = both(deepestRoots);
export const rootDepthWithin = upTo(deepestRoots);
export const rootDepthAboveZero = aboveZero(deepestRoots);

/** From a least depth or height that is said in both systems: "2 in", 50. */
export function rootDepthFrom(us: string, mm: number): Within {
  const { mm: to, ...said } = deepestRoots;
  return { from: mm, to, says: `${us} to ${said.us} (${mm} to ${said.metric})` };
}

export const deepestSoilSaid = both(deepestSoil);
export const soilDepthWithin = upTo(deepestSoil);
export const soilDepthAboveZero = aboveZero(deepestSoil);

/** Penetrometer readings. */
export const resistanceWithin: Within = {
  from: 0,
  to: hardestReading.MPa,
  says: `0 to ${hardestReading.us} (${hardestReading.metric})`,
};

/** Other years are slips of the pen. */
export const harvestYears = [1800, 2200] as const;
