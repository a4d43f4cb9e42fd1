import { dayInYear, yearOf, type MonthDay } from "../../quantity/calendar.ts";
import type { RotationEntry } from "../../scenario/scenario.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import { capacityBetweenMm, storedBetweenMm } from "../runs/threeNumbers.ts";
import { yieldOfRun } from "../runs/yieldOfRun.ts";
import { asDug } from "../runs/readyRun.ts";
import {
  drawnUptake,
  readySoil,
  runCases,
  type CaseAfterRun,
  type ReadyCase,
  type ReadySoil,
  type RunBuffers,
} from "../runs/run.ts";
import { groundUnder, leftBy, waterInto, type Carried } from "./carried.ts";
import type { CalendarLink } from "./chainCalendar.ts";
import { linksOf, settlingYears } from "./chainYears.ts";
import type { ChainPreparation } from "./prepareChains.ts";
import { seasonRow, type SeasonRow } from "./rows.ts";

/** What one link came to, in every case. */
export interface LinkRuns {
  readonly chain: number;
  readonly phase: number;
  /** Of harvest. */
  readonly year: number;
  /** Years since the cases began to differ, 1 the field's first harvest then; 0 and less is warm-up, of the first case alone. */
  readonly sinceChange: number;
  readonly entry: number;
  /** Each case with the water that its own roots left. */
  readonly own: readonly SeasonRow[];
  readonly ownPairs: readonly LinkPair[];
  /** Each case with the water that the first case's roots left, or that is stated; null in years of path only. */
  readonly firstYear: readonly SeasonRow[] | null;
  readonly firstYearPairs: readonly LinkPair[];
  /** By case: water at sowing less water on the first morning, by slice; null in the warm-up. */
  readonly gainMmBySlice: readonly Float64Array[] | null;
}

/** A later case against the first, while both soils are there. */
export interface LinkPair {
  readonly ruleOfThumbMm: number;
  readonly storedInExtraDepthMm: number;
}

/** The soils of a chain by case, cut and filled once. */
export function soilsOfChain(
  { scenario, preparation, drawsByChain }: ChainPreparation,
  chain: number,
): SoilOfChain[] {
  return scenario.cases.map((plan, c) => {
    const soil = readySoil(plan, drawsByChain[chain]!, scenario.ensemble.deepBelowMm);
    return { ...soil, ...asDug(preparation, c, chain, soil.slices) };
  });
}

/** What stops the roots of one crop stops those of the others. */
export type SoilOfChain = ReadySoil & Pick<ReadyCase, "stopMm">;

/** A link just run, day by day as far as the buffers keep days: to be read before the next one. */
export interface LinkJustRun {
  readonly link: CalendarLink;
  readonly sinceChange: number;
  /** Each case with the water that its own roots left; in the warm-up the first case alone. */
  readonly own: readonly CaseAfterRun[];
}

/**
 * Runs one chain of one phase, link after link: the warm-up under the first case's roots, then every case with its own water. From
 * the change on, each later case also runs from the water that the first case left: its first year.
 */
export function* chainInLinks(
  prepared: ChainPreparation,
  chain: number,
  phase: number,
  soils: readonly SoilOfChain[],
  weather: DailyWeather,
  buffers: RunBuffers,
): Generator<LinkJustRun, LinkRuns[], void> {
  const { rotation, chains, calendarByPhase } = prepared;
  const { entries, startsAsStated, startsOn } = rotation;
  const years = chains[chain]!;
  const links: LinkRuns[] = [];
  const toRun = linksOf(calendarByPhase[phase]!, years);
  const firstChanged = toRun.find(({ year }) => year >= years.from)?.year ?? Infinity;
  const atStart = soils.map(({ startWaterMm }) => ({
    waterMmBySlice: startWaterMm,
    strawTPerHa: 0,
    snowMm: 0,
  }));
  let carried: Carried[] = [atStart[0]!];
  for (const link of toRun) {
    const entry = entries[link.entry]!;
    const sinceChange = link.year - firstChanged + 1;
    const asFirst = (c: number): Carried =>
      c === 0
        ? carried[0]!
        : {
            ...carried[0]!,
            waterMmBySlice: waterInto(carried[0]!.waterMmBySlice, soils[0]!.slices, soils[c]!.slices),
          };
    if (sinceChange >= 1 && carried.length === 1)
      carried = startsAsStated && links.length === 0 ? atStart : soils.map((_, c) => asFirst(c));
    const isCounted = isFirstYearRun(sinceChange);
    const isFromStated = startsAsStated && entry.isAsked;
    const isFirst = startsAsStated && links.length === 0;
    const begun = isFirst ? beginningOn(link, startsOn, weather) : link;
    const own = carried.map((one, c) => readyLink(prepared, entry, begun, c, c, one, soils[c]!));
    const later = soils.slice(1).map((_, p) => p + 1);
    // In the first year itself every case starts alike already.
    const asFirstCase =
      isCounted && sinceChange > 1 && !isFromStated
        ? later.map((c) => readyLink(prepared, entry, link, c, 0, asFirst(c), soils[c]!))
        : [];
    const slope = slopeOf(prepared, chain, link.entry, sinceChange);
    const look = (after: readonly CaseAfterRun[], starts: readonly Carried[]) =>
      after.map((one, i) =>
        seasonRow(
          one,
          starts[i]?.snowMm ?? 0,
          weather,
          yieldOfRun(entry.yieldLine, slope, one.totals, one.ordinaryEvaporationMm),
        ),
      );
    const after = runCases([...own, ...asFirstCase], weather, buffers);
    const afterOwn = after.slice(0, own.length);
    yield { link, sinceChange, own: afterOwn };
    const afterFirst = [after[0]!, ...after.slice(own.length)];
    const ownRows = look(afterOwn, carried);
    const ownPairs = pairsOf(afterOwn);
    let firstYear =
      asFirstCase.length > 0
        ? look(
            afterFirst,
            afterFirst.map(() => carried[0]!),
          )
        : null;
    let firstYearPairs = asFirstCase.length > 0 ? pairsOf(afterFirst) : [];
    const gainMmBySlice = sinceChange < 1 ? null : afterOwn.map(gainOf);
    const next = afterOwn.map(leftBy);
    if (isCounted && firstYear === null && !isFromStated) [firstYear, firstYearPairs] = [ownRows, ownPairs];
    if (isCounted && isFromStated) {
      const measured = beginningOn(link, startsOn, weather);
      const ready = atStart.map((one, c) => readyLink(prepared, entry, measured, c, 0, one, soils[c]!));
      const fromStated = runCases(ready, weather, buffers);
      firstYear = look(fromStated, atStart);
      firstYearPairs = pairsOf(fromStated);
    }
    links.push({
      chain,
      phase,
      year: link.year,
      sinceChange,
      entry: link.entry,
      own: ownRows,
      ownPairs,
      firstYear,
      firstYearPairs,
      gainMmBySlice,
    });
    carried = next;
  }
  return links;
}

/** The same in one go. */
export function runChain(...asked: Parameters<typeof chainInLinks>): LinkRuns[] {
  const links = chainInLinks(...asked);
  for (;;) {
    const next = links.next();
    if (next.done === true) return next.value;
  }
}

/**
 * A link that begins on the day on which its water was measured, where that day lies between harvest and sowing; else it begins
 * the day after the harvest. Straw is taken as it was left.
 */
function beginningOn(
  link: CalendarLink,
  startsOn: MonthDay | null,
  { firstDay }: DailyWeather,
): CalendarLink {
  if (startsOn === null) return link;
  const lastBefore = (sowing: number) => {
    const year = yearOf(firstDay + sowing);
    const day = dayInYear(year, startsOn) - firstDay;
    return day <= sowing ? day : dayInYear(year - 1, startsOn) - firstDay;
  };
  return {
    ...link,
    firstIndexByCase: link.firstIndexByCase.map((first, c) =>
      Math.max(first, lastBefore(link.sowingIndexByCase[c]!)),
    ),
  };
}

/** The first year itself, and every second of the years that count for those after it: enough of them, at half the work. Ours. */
function isFirstYearRun(sinceChange: number): boolean {
  return sinceChange === 1 || (sinceChange > settlingYears && (sinceChange - settlingYears) % 2 === 1);
}

/** A case before its link, with what was carried to it. `begins`: whose harvest it begins at. */
export function readyLink(
  prepared: ChainPreparation,
  entry: RotationEntry,
  link: CalendarLink,
  c: number,
  begins: number,
  { waterMmBySlice, strawTPerHa, snowMm }: Carried,
  { slices, uptake, stopMm }: SoilOfChain,
): ReadyCase {
  const { rotation } = prepared;
  const plan = entry.cases[c]!;
  const firstIndex = link.firstIndexByCase[begins]!;
  const sowingIndex = Math.max(link.sowingIndexByCase[c]!, firstIndex);
  const fresh = rotation.entries[link.entryBefore]!.strawTPerHa;
  const ground =
    entry.strawFollowsByCase[c] === true ? groundUnder(plan.ground, strawTPerHa + fresh) : plan.ground;
  const deepUptake = uptake.halvingMm / prepared.scenario.cases[c]!.uptake.halvingMm;
  return {
    plan: { ...plan, ground },
    slices,
    stopMm: stopMm ?? null,
    startWaterMm: waterMmBySlice,
    startSnowMm: snowMm,
    uptake: drawnUptake(plan.uptake, deepUptake),
    course: prepared.courseOf(link.entry, c, firstIndex, sowingIndex),
    firstIndex,
    fullStandCourse: c > 0 ? null : prepared.fullStandCourseOf(link.entry, firstIndex, sowingIndex),
  };
}

function slopeOf(
  { slopesByEntry, yearsBefore }: ChainPreparation,
  chain: number,
  entry: number,
  year: number,
): number {
  const slopes = slopesByEntry[entry]!;
  return slopes[yearsBefore[chain]! + Math.max(0, year - 1)]!;
}

function pairsOf([first, ...later]: readonly CaseAfterRun[]): LinkPair[] {
  return later.map((one) => {
    const from = first!.totals.finalRootDepthMm;
    const to = one.totals.finalRootDepthMm;
    // The extra depth is soil of the case whose roots are in it.
    const { slices, waterAtSowingMmBySlice } = to >= from ? one : first!;
    return {
      ruleOfThumbMm: capacityBetweenMm(slices, from, to),
      storedInExtraDepthMm: storedBetweenMm(slices, waterAtSowingMmBySlice, from, to),
    };
  });
}

function gainOf({ slices, startWaterMm, waterAtSowingMmBySlice }: CaseAfterRun): Float64Array {
  // A plain loop: `Float64Array.from` with a function took a fiftieth of the answer here.
  const gainMm = new Float64Array(slices.count);
  for (let j = 0; j < gainMm.length; j++) gainMm[j] = waterAtSowingMmBySlice[j]! - startWaterMm[j]!;
  return gainMm;
}
