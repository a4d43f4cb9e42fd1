import { mmPerInch } from "../../src/quantity/constants.ts";
import { comparisonOf } from "../../src/answer/compare.ts";
import type { AnswerAtRain } from "../../src/answer/comparison.ts";
import {
  emptyEnsemble,
  readyRun,
  runInto,
  type Ensemble,
  type Preparation,
} from "../../src/answer/ensemble.ts";
import { atOtherTotals, fanTotals } from "../../src/answer/rainFan.ts";
import { makeDesk, type ReadyCase } from "../../src/answer/run.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import type { RainFan } from "./protocol.ts";

/** The fan's span: 8 to 20 in, an inch a step. */
const span = { fromMm: 8 * mmPerInch, toMm: 20 * mmPerInch, stepMm: mmPerInch } as const;
/** Runs behind each point: enough for the fan's shape, and said beside it. */
const mostRuns = 60;

/** A fan that opens from the user's totals outward. */
export interface OpeningFan {
  /** One run of every case at one total; true when that total is done with it. */
  readonly step: () => boolean;
  readonly isWhole: () => boolean;
  /** As far as it is open. */
  readonly shown: (units: Units) => RainFan;
}

export function openFan(preparation: Preparation): OpeningFan {
  const asked = preparation.rainTotalsMm.filter((total) => total !== null);
  const waiting = fanTotals(span.fromMm, span.toMm, span.stepMm, asked);
  const all = waiting.length;
  const runs = Math.min(mostRuns, preparation.yearByRun.length);
  const desk = makeDesk("sums");
  const ready: ReadyCase[][] = [];
  const done: Ensemble[] = [];
  let open: { readonly ensemble: Ensemble; readonly run: number } | null = null;

  function step(): boolean {
    if (open === null) {
      const total = waiting.shift();
      if (total === undefined) return false;
      open = { ensemble: emptyEnsemble(atOtherTotals(preparation, [total], runs)), run: 0 };
    }
    const { ensemble, run } = open;
    ready[run] ??= readyRun(preparation, run);
    runInto(ensemble, run, 0, ready[run]!, desk);
    open = run + 1 < runs ? { ensemble, run: run + 1 } : null;
    if (open !== null) return false;
    done.push(ensemble);
    return true;
  }

  const isWhole = (): boolean => done.length === all;
  return {
    step,
    isWhole,
    shown: (units) => ({
      points: done
        .flatMap((ensemble) => comparisonOf(ensemble, units, "without evidence").byRainTotal)
        .filter((at): at is AnswerAtRain & { rainTotalMm: number } => at.rainTotalMm !== null)
        .sort((a, b) => a.rainTotalMm - b.rainTotalMm),
      runs,
      over: preparation.scenario.weather.rainTotalOver,
      whole: isWhole(),
      units,
    }),
  };
}
