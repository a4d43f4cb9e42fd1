import { yearOf } from "../../quantity/calendar.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import type { LongGap } from "../../weather/records/record.ts";
import { yieldOfRun } from "../runs/yieldOfRun.ts";
import { prepare } from "../runs/prepare.ts";
import { readyRun } from "../runs/readyRun.ts";
import { runAtRain } from "../runs/ensemble.ts";
import { makeRunBuffers } from "../runs/run.ts";
import { prepareChains } from "./prepareChains.ts";
import { seasonRow, type SeasonRow } from "./rows.ts";
import { runChains, type ChainLink } from "./runChains.ts";

/** One season of one case beside the first case's. */
export interface SeasonOfCase {
  readonly rainTotalMm: number | null;
  /** With a rotation: the chain, which year of the rotation it begins with, both from 1, and the years since the change. */
  readonly chain: number | null;
  readonly beginsWith: number | null;
  readonly sinceChange: number | null;
  /** Without one: the run, from 1. */
  readonly run: number | null;
  readonly case: string;
  readonly row: SeasonRow;
  readonly ofFirst: SeasonRow;
}

export interface Seasons {
  readonly seasons: readonly SeasonOfCase[];
  /** What was left out because the record has no weather there: years of sowing, and the gaps. */
  readonly leftOut: {
    readonly count: number;
    readonly years: readonly number[];
    readonly gaps: readonly string[];
  };
}

/** Every season of a scenario, with its rotation year after year, each case with its own water. */
export function seasonsOf(scenario: Scenario, onProgress?: (done: number, total: number) => void): Seasons {
  const { source } = scenario.weather;
  const gaps = source.kind === "record" ? (source.record.longGaps ?? []) : [];
  const all =
    scenario.rotation === null ? ofRuns(scenario, onProgress) : ofChains(scenario, gaps, onProgress);
  const inGap = all.filter(({ isIn }) => isIn(gaps));
  const left = new Set(inGap);
  return {
    seasons: all.flatMap((one) => (left.has(one) ? [] : one.seasons)),
    leftOut: {
      count: inGap.length,
      years: [...new Set(inGap.map(({ seasons }) => yearOf(seasons[0]!.row.sowingDay)))].sort(
        (a, b) => a - b,
      ),
      gaps: gaps.map(({ said }) => said),
    },
  };
}

/** The cases of one run or link. */
interface Together {
  readonly seasons: readonly SeasonOfCase[];
  readonly isIn: (gaps: readonly LongGap[]) => boolean;
}

function touches(rows: readonly SeasonRow[], gaps: readonly LongGap[]): boolean {
  return gaps.some(({ firstDay, days }) =>
    rows.some((row) => row.firstDay < firstDay + days && row.harvestDay >= firstDay),
  );
}

function ofRuns(scenario: Scenario, onProgress?: (done: number, total: number) => void): Together[] {
  const preparation = prepare(scenario);
  const { rainTotalsMm, yearByRun, drawsByRun, weatherYears } = preparation;
  const buffers = makeRunBuffers("sums");
  const found: Together[][] = rainTotalsMm.map(() => []);
  yearByRun.forEach((_, run) => {
    const ready = readyRun(preparation, run);
    rainTotalsMm.forEach((rainTotalMm, t) => {
      const rows = runAtRain(preparation, ready, t, buffers).map((after) =>
        seasonRow(
          after,
          0,
          weatherYears.weatherByTotal[t]!,
          yieldOfRun(scenario.yieldLine, drawsByRun[run]!.slope, after.totals, after.ordinaryEvaporationMm),
        ),
      );
      const seasons = rows.map((row, c) => ({
        rainTotalMm,
        chain: null,
        beginsWith: null,
        sinceChange: null,
        run: run + 1,
        case: scenario.cases[c]!.name,
        row,
        ofFirst: rows[0]!,
      }));
      found[t]!.push({ seasons, isIn: (gaps) => touches(rows, gaps) });
      onProgress?.(run * rainTotalsMm.length + t + 1, yearByRun.length * rainTotalsMm.length);
    });
  });
  return found.flat();
}

/** In a chain that ran through a gap, no later year is known either: its water is not. */
function ofChains(
  scenario: Scenario,
  allGaps: readonly LongGap[],
  onProgress?: (done: number, total: number) => void,
): Together[] {
  const prepared = prepareChains(scenario, scenario.rotation!);
  return runChains(prepared, onProgress).flatMap(({ rainTotalMm, links }) => {
    const lost = new Set<string>();
    return links.flatMap((link) => {
      const place = `${link.chain} ${link.phase}`;
      if (touches(link.own, allGaps)) lost.add(place);
      if (link.sinceChange < 1) return [];
      const isLost = lost.has(place);
      return [{ seasons: seasonsOfLink(link, rainTotalMm, scenario), isIn: () => isLost }];
    });
  });
}

function seasonsOfLink(link: ChainLink, rainTotalMm: number | null, { cases }: Scenario): SeasonOfCase[] {
  return link.own.map((row, c) => ({
    rainTotalMm,
    chain: link.chain + 1,
    beginsWith: link.phase + 1,
    sinceChange: link.sinceChange,
    run: null,
    case: cases[c]!.name,
    row,
    ofFirst: link.own[0]!,
  }));
}
