import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import type { AnswerAtRain } from "../../src/answer/comparison/comparison.ts";
import { emptyEnsemble, annualRain, runInto, type Ensemble } from "../../src/answer/runs/ensemble.ts";
import { readyRun } from "../../src/answer/runs/readyRun.ts";
import type { Preparation } from "../../src/answer/runs/prepare.ts";
import { spreadOf } from "../../src/statistics/quantiles.ts";
import { atOtherTotals, fanTotals } from "../../src/answer/runs/rainFan.ts";
import { makeRunBuffers, type ReadyCase } from "../../src/answer/runs/run.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { fanSpan } from "./fanSpan.ts";
import type { RainFan } from "./protocol.ts";

/** Runs behind each point at first: enough for the fan's shape. Then all, so that it passes through the answer's own points. */
const firstRuns = 60;

/** A fan that opens from the user's totals outward. */
export interface OpeningFan {
  /** One run of every case at one total; true when there is more to show than before. */
  readonly step: () => boolean;
  /** There is a point at every total. */
  readonly isOpen: () => boolean;
  /** And behind each of them are all runs. */
  readonly isWhole: () => boolean;
  /** As far as it is open. */
  readonly shown: (units: Units) => RainFan;
}

export function openFan(preparation: Preparation): OpeningFan {
  const asked = preparation.rainTotalsMm.filter((total) => total !== null);
  const span = fanSpan(asked.length > 0 ? asked : rainAsItCame(preparation));
  const totals = fanTotals(span.fromMm, span.toMm, span.stepMm, asked);
  const all = preparation.yearByRun.length;
  const buffers = makeRunBuffers("sums");
  const ready: ReadyCase[][] = [];
  let runs = Math.min(firstRuns, all);
  let done: Ensemble[] = [];
  /** With all runs; shown together once there is one at every total, for points of few and of many make no line. */
  let finer: Ensemble[] = [];
  let open: { readonly ensemble: Ensemble; readonly run: number } | null = null;

  function step(): boolean {
    if (isWhole()) return false;
    const rough = !isOpen();
    const place = rough ? done.length : finer.length;
    open ??= {
      ensemble: emptyEnsemble(atOtherTotals(preparation, [totals[place]!], rough ? runs : all)),
      run: 0,
    };
    const { ensemble, run } = open;
    ready[run] ??= readyRun(preparation, run);
    runInto(ensemble, run, 0, ready[run]!, buffers);
    open = run + 1 < ensemble.runs ? { ensemble, run: run + 1 } : null;
    if (open !== null) return false;
    (rough ? done : finer).push(ensemble);
    if (!rough && finer.length === totals.length) [done, finer, runs] = [finer, [], all];
    return rough || isWhole();
  }

  const isOpen = (): boolean => done.length === totals.length;
  const isWhole = (): boolean => isOpen() && runs === all;
  return {
    step,
    isOpen,
    isWhole,
    shown: (units) => ({
      points: done
        .flatMap((ensemble) => comparisonOf(ensemble, units, "without evidence").byRainTotal)
        .filter((at): at is AnswerAtRain & { rainTotalMm: number } => at.rainTotalMm !== null)
        .sort((a, b) => a.rainTotalMm - b.rainTotalMm),
      fromMm: span.fromMm,
      toMm: span.toMm,
      runs,
      over: preparation.scenario.weather.rainTotalOver,
      whole: isWhole(),
      units,
    }),
  };
}

/** What eight years of ten brought, as the answer has it; empty where no whole years are there. */
function rainAsItCame(preparation: Preparation): number[] {
  const annualMm = annualRain(preparation, 0);
  if (annualMm === null) return [];
  const { p10, p90 } = spreadOf(annualMm);
  return [p10, p90];
}
