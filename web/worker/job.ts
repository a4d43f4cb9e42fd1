import type { YearsInARow } from "../../src/answer/chain/answerOf.ts";
import { newAnswerCache, type AnswerCache } from "../../src/answer/runs/answerCache.ts";
import { middleTotalIndex } from "../../src/answer/runs/middleTotal.ts";
import { emptyEnsemble, runAtRain, runInto, type Ensemble } from "../../src/answer/runs/ensemble.ts";
import { readyRun } from "../../src/answer/runs/readyRun.ts";
import type { Preparation } from "../../src/answer/runs/prepare.ts";
import { makeRunBuffers, type RunBuffers, type ReadyCase } from "../../src/answer/runs/run.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { answerShown, atMiddleTotal } from "./answerShown.ts";
import type { FromSecondWorker } from "./secondWorkerProtocol.ts";
import { unpackRuns } from "./packedRuns.ts";
import type { Answer, SeasonShown, ShownRun, Traces } from "./protocol.ts";
import { openFan, type OpeningFan } from "./rainFan.ts";
import { seasonShown } from "./seasonShown.ts";
import { openYears, type YearsJob } from "./shown/years.ts";
import { emptyTraces, trace } from "./traces.ts";

/** A scenario that can be run, and how far its answer has come; it can be gone on with at any time. */
export interface Job {
  readonly id: number;
  readonly preparation: Preparation;
  readonly ensemble: Ensemble;
  readonly traces: Traces;
  /** Indexes of the totals in the order they are run: the middle one first. */
  readonly order: readonly number[];
  readonly fan: OpeningFan;
  readonly buffers: RunBuffers;
  readonly seasonBuffers: RunBuffers;
  readonly ready: ReadyCase[][];
  units: Units;
  shown: ShownRun;
  /** Where in the order of the totals the work is; their number once all is done. */
  place: number;
  /** At this place: runs below `next` are done, and from `until` on, which a second worker did. */
  next: number;
  until: number;
  /** Whether the answer has been told with what was measured in the field. */
  isMeasured: boolean;
  /** Of a scenario with a rotation: its years in a row, run after all else; else null. */
  readonly years: YearsJob | null;
  /** The run shown when none is chosen; before there is an answer, that of the answer before. */
  typicalRun: number;
}

export function startJob(
  id: number,
  preparation: Preparation,
  units: Units,
  shown: ShownRun,
  typicalRunBefore: number,
  seasonBuffers: RunBuffers = makeRunBuffers(),
  yearsCache: AnswerCache = newAnswerCache(),
): Job {
  const { rainTotalsMm, yearByRun, scenario } = preparation;
  const middle = middleTotalIndex(rainTotalsMm);
  return {
    id,
    preparation,
    ensemble: emptyEnsemble(preparation),
    traces: emptyTraces(preparation),
    order: [middle, ...rainTotalsMm.map((_, t) => t).filter((t) => t !== middle)],
    fan: openFan(preparation),
    buffers: makeRunBuffers("sums"),
    seasonBuffers,
    ready: [],
    units,
    shown,
    place: 0,
    next: 0,
    until: yearByRun.length,
    isMeasured: false,
    years: scenario.rotation === null ? null : openYears(scenario, scenario.rotation, yearsCache),
    typicalRun: Math.min(typicalRunBefore, yearByRun.length - 1),
  };
}

export function allRuns({ ensemble, order }: Job): number {
  return ensemble.runs * order.length;
}

export function runsDone({ ensemble, place, next, until }: Job): number {
  return place * ensemble.runs + next + (ensemble.runs - until);
}

/** How much of the answer there is. */
export function stageOf({ place, order }: Job): "none" | "middle" | "whole" {
  if (place === 0) return "none";
  return place === order.length ? "whole" : "middle";
}

/** Runs one run of every case at one place in the order of the totals and writes it down. */
export function runAt(job: Job, place: number, run: number): void {
  const { ensemble, preparation, traces, order, buffers, ready } = job;
  ready[run] ??= readyRun(preparation, run);
  const after = runInto(ensemble, run, order[place]!, ready[run]!, buffers);
  if (place === 0) trace(traces, run, after);
}

/** The next run that nobody has done at this place; true when the place is done with it. */
export function runNext(job: Job): boolean {
  if (job.next < job.until) {
    runAt(job, job.place, job.next);
    job.next += 1;
  }
  if (job.next < job.until) return false;
  job.place += 1;
  job.next = 0;
  job.until = job.ensemble.runs;
  return true;
}

/** Takes in what a second worker did. It comes from the last run downward, without a gap. */
export function takeFromSecondWorker(job: Job, { id, place, runs }: FromSecondWorker): void {
  if (id !== job.id || place !== job.place || runs.to !== job.until) return;
  unpackRuns(runs, job.ensemble, place === 0 ? job.traces : null);
  job.until = Math.max(runs.from, job.next);
}

/**
 * The answer so far; its typical run is the one shown from now on when none is chosen.
 *
 * @param measured whether what was measured in the field is to be in it, which takes its time
 */
export function answerOf(job: Job, measured: boolean): Answer {
  const isMiddle = stageOf(job) === "middle";
  const years = job.years?.found() ?? null;
  const isWhole = job.years === null ? measured || !hasEvidence(job) : years !== null;
  const stage = isMiddle ? "middle total" : isWhole ? "whole" : "all totals";
  const ensemble = isMiddle ? atMiddleTotal(job.ensemble) : job.ensemble;
  const answer = answerShown(ensemble, job.traces, job.units, stage, isMiddle ? null : years);
  job.typicalRun = answer.byRun.typicalRun;
  return answer;
}

/** Whether there is more to work out when all runs are done. */
export function hasEvidence({ preparation }: Job): boolean {
  return preparation.scenario.evidence !== null;
}

/** What the command line would answer from: seasons by themselves, or years in a row; null while it is not all run. */
export function answeredBy(job: Job): Ensemble | YearsInARow | null {
  if (stageOf(job) !== "whole") return null;
  return job.years === null ? job.ensemble : job.years.found();
}

export function seasonOf(job: Job): SeasonShown {
  const { preparation, shown, seasonBuffers, units } = job;
  const run = chosenRunOf(job, shown);
  const totalIndex = chosenTotalOf(job, shown);
  const after = runAtRain(preparation, readyRun(preparation, run), totalIndex, seasonBuffers);
  return seasonShown(preparation, after, run, totalIndex, units);
}

/** A run that is not there, as after asking for fewer years, is the typical one. */
export function chosenRunOf({ preparation, typicalRun }: Job, { run }: ShownRun): number {
  return run !== null && run < preparation.yearByRun.length ? run : typicalRun;
}

export function chosenTotalOf({ preparation, order }: Job, { totalIndex }: ShownRun): number {
  return totalIndex !== null && totalIndex < preparation.rainTotalsMm.length ? totalIndex : order[0]!;
}
