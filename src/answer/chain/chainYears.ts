import type { CalendarLink, ChainCalendar } from "./chainCalendar.ts";

/** Which years each chain runs. */
export interface ChainYears {
  /** First year of the warm-up; the change, from which years are counted; the last year. */
  readonly warmUpFrom: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Years from the change on that count as path only: after them each case has lived with its own roots. Ours: of what roots that
 * were stopped had left, nearly all is used up by then.
 */
export const settlingYears = 4;

/** Each case has lived with its own roots for some years. */
export function isSettled({ sinceChange }: { readonly sinceChange: number }): boolean {
  return sinceChange > settlingYears;
}

/** Years of a chain after its path: enough that the answer of later years does not wait for the path alone. Ours. */
export const yearsOfChain = (pathYears: number): number => pathYears + settlingYears;

/**
 * Parts a stretch of years into chains, each with a soil of its own draws, so that the spread of soils is met; where the years
 * are fewer than asked, they are gone through again with other draws. The warm-up of a chain runs on the years before it.
 *
 * @param years to be run after the changes, all chains together
 * @returns none where the weather is too short for a single answer
 */
export function chainYears(
  calendars: readonly ChainCalendar[],
  years: number,
  warmUpYears: number,
  pathYears: number,
): ChainYears[] {
  const first = Math.max(...calendars.map(({ links }) => links[0]?.year ?? Infinity));
  const last = Math.min(...calendars.map(({ lastYear }) => lastYear));
  const held = last - first + 1;
  const needed = settlingYears + 2 * calendars.length;
  if (!(held >= needed)) return [];
  // A short record keeps two thirds of its years for the answer.
  const warmUp = Math.min(warmUpYears, Math.floor(held / 3), held - needed);
  // Every crop of every phase is harvested once after the settling at least.
  const length = Math.max(yearsOfChain(pathYears), needed);
  const onePass: ChainYears[] = [];
  for (let from = first + warmUp; from <= last; from += length) {
    // A rest too short to have settled goes with the chain before it.
    const end = last - (from + length - 1) < needed ? last : from + length - 1;
    onePass.push({ warmUpFrom: from - warmUp, from, to: end });
    if (end === last) break;
  }
  const chains: ChainYears[] = [];
  for (let done = 0, i = 0; done < years; i++) {
    const one = onePass[i % onePass.length]!;
    const to = Math.min(one.to, Math.max(one.from + needed - 1, one.from + (years - done) - 1));
    chains.push({ ...one, to: Math.min(to, one.to) });
    done += to - one.from + 1;
  }
  return chains;
}

/** The links of a calendar that a chain runs. */
export function linksOf({ links }: ChainCalendar, { warmUpFrom, to }: ChainYears): CalendarLink[] {
  return links.filter(({ year }) => year >= warmUpFrom && year <= to);
}
