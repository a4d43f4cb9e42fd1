import { middleTotalIndex } from "../../src/answer/comparison/middleTotal.ts";
import {
  emptyEnsemble,
  readyRun,
  runAtRain,
  runInto,
  type Ensemble,
  type Preparation,
} from "../../src/answer/runs/ensemble.ts";
import { makeDesk, type Desk, type ReadyCase } from "../../src/answer/runs/run.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { answerShown, atMiddleTotal } from "./answerShown.ts";
import type { FromHelper } from "./secondWorkerProtocol.ts";
import { unpackRuns } from "./packedRuns.ts";
import type { Answer, SeasonShown, ShownRun, Traces } from "./protocol.ts";
import { openFan, type OpeningFan } from "./rainFan.ts";
import { seasonShown } from "./seasonShown.ts";
import { emptyTraces, trace } from "./traces.ts";

/** A scenario that can be run, and how far its answer has come; it can be gone on with at any time. */
export interface GoodWork {
  readonly id: number;
  readonly preparation: Preparation;
  readonly ensemble: Ensemble;
  readonly traces: Traces;
  /** Indexes of the totals in the order they are run: the middle one first. */
  readonly order: readonly number[];
  readonly fan: OpeningFan;
  readonly desk: Desk;
  readonly seasonDesk: Desk;
  readonly ready: ReadyCase[][];
  units: Units;
  shown: ShownRun;
  /** Where in the order of the totals the work is; their number once all is done. */
  place: number;
  /** At this place: runs below `next` are done, and from `until` on, which a helper did. */
  next: number;
  until: number;
  /** Whether the answer has been told with what was measured in the field. */
  isMeasured: boolean;
  /** The run shown when none is chosen; before there is an answer, that of the answer before. */
  typicalRun: number;
}

export function startWork(
  id: number,
  preparation: Preparation,
  units: Units,
  shown: ShownRun,
  typicalRunBefore: number,
  seasonDesk: Desk = makeDesk(),
): GoodWork {
  const { rainTotalsMm, yearByRun } = preparation;
  const middle = middleTotalIndex(rainTotalsMm);
  return {
    id,
    preparation,
    ensemble: emptyEnsemble(preparation),
    traces: emptyTraces(preparation),
    order: [middle, ...rainTotalsMm.map((_, t) => t).filter((t) => t !== middle)],
    fan: openFan(preparation),
    desk: makeDesk("sums"),
    seasonDesk,
    ready: [],
    units,
    shown,
    place: 0,
    next: 0,
    until: yearByRun.length,
    isMeasured: false,
    typicalRun: Math.min(typicalRunBefore, yearByRun.length - 1),
  };
}

export function allRuns({ ensemble, order }: GoodWork): number {
  return ensemble.runs * order.length;
}

export function runsDone({ ensemble, place, next, until }: GoodWork): number {
  return place * ensemble.runs + next + (ensemble.runs - until);
}

/** How much of the answer there is. */
export function stageOf({ place, order }: GoodWork): "none" | "middle" | "whole" {
  if (place === 0) return "none";
  return place === order.length ? "whole" : "middle";
}

/** Runs one run of every case at one place in the order of the totals and writes it down. */
export function runAt(work: GoodWork, place: number, run: number): void {
  const { ensemble, preparation, traces, order, desk, ready } = work;
  ready[run] ??= readyRun(preparation, run);
  const after = runInto(ensemble, run, order[place]!, ready[run]!, desk);
  if (place === 0) trace(traces, run, after);
}

/** The next run that nobody has done at this place; true when the place is done with it. */
export function runNext(work: GoodWork): boolean {
  if (work.next < work.until) {
    runAt(work, work.place, work.next);
    work.next += 1;
  }
  if (work.next < work.until) return false;
  work.place += 1;
  work.next = 0;
  work.until = work.ensemble.runs;
  return true;
}

/** Takes in what a helper did. It comes from the last run downward, without a gap. */
export function takeFromHelper(work: GoodWork, { id, place, runs }: FromHelper): void {
  if (id !== work.id || place !== work.place || runs.to !== work.until) return;
  unpackRuns(runs, work.ensemble, place === 0 ? work.traces : null);
  work.until = Math.max(runs.from, work.next);
}

/**
 * The answer so far; its typical run is the one shown from now on when none is chosen.
 *
 * @param measured whether what was measured in the field is to be in it, which takes its time
 */
export function answerOf(work: GoodWork, measured: boolean): Answer {
  const isMiddle = stageOf(work) === "middle";
  const stage = isMiddle ? "middle total" : measured || !hasEvidence(work) ? "whole" : "all totals";
  const ensemble = isMiddle ? atMiddleTotal(work.ensemble) : work.ensemble;
  const answer = answerShown(ensemble, work.traces, work.units, stage);
  work.typicalRun = answer.byRun.typicalRun;
  return answer;
}

/** Whether there is more to work out when all runs are done. */
export function hasEvidence({ preparation }: GoodWork): boolean {
  return preparation.scenario.evidence !== null;
}

export function seasonOf(work: GoodWork): SeasonShown {
  const { preparation, shown, seasonDesk, units } = work;
  const run = chosenRunOf(work, shown);
  const totalIndex = chosenTotalOf(work, shown);
  const after = runAtRain(preparation, readyRun(preparation, run), totalIndex, seasonDesk);
  return seasonShown(preparation, after, run, totalIndex, units);
}

/** A run that is not there, as after asking for fewer years, is the typical one. */
export function chosenRunOf({ preparation, typicalRun }: GoodWork, { run }: ShownRun): number {
  return run !== null && run < preparation.yearByRun.length ? run : typicalRun;
}

export function chosenTotalOf({ preparation, order }: GoodWork, { totalIndex }: ShownRun): number {
  return totalIndex !== null && totalIndex < preparation.rainTotalsMm.length ? totalIndex : order[0]!;
}
