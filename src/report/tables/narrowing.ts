import { reachOf, type Layout } from "../../statistics/howMany.ts";

/** What more of the same would do for an interval, by the spread as now seen. */
export interface Narrowed {
  /** How many: plants, spots of each case, pairs. */
  readonly n: number;
  /** How far the interval would reach to either side, in the unit of the spread. */
  readonly reach: number;
}

/** As many as there are now, twice as many, and four times. */
const times = [1, 2, 4] as const;

/**
 * @param now how many there are, at least two; of the case that has fewest where they are not in pairs
 * @param reachNow of the interval as it stands
 */
export function narrowing(layout: Layout, now: number, reachNow: number, confidence: number): Narrowed[] {
  return times.map((by) => ({
    n: now * by,
    reach: by === 1 ? reachNow : reachOf(layout, now * by, confidence),
  }));
}
