import type { YearsInARow } from "../../src/answer/chain/answerOf.ts";
import { middleRun } from "../../src/answer/runs/chosenRun.ts";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import { middleTotalIndex } from "../../src/answer/runs/middleTotal.ts";
import type { Ensemble } from "../../src/answer/runs/ensemble.ts";
import { shownYield } from "../../src/answer/comparison/yieldUnits.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { fieldSentences, fieldTypeset } from "../../src/report/sentences/field/fieldSentences.ts";
import { differencesTold, type DifferenceTold } from "../../src/report/sentences/firstLine.ts";
import { methodLines } from "../../src/report/sentences/methodText.ts";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { typeset } from "../../src/report/tables/typeset.ts";
import { runsAtRain } from "./shown/runsAtRain.ts";
import { yearsShown } from "./shown/years.ts";
import type { Answer, Traces } from "./protocol.ts";

/**
 * The answer as the page shows it, from the totals that are done; `ensemble` may hold the middle one only, or the first runs.
 *
 * @param years of a scenario with a rotation, once they are all run: the answer is of them
 */
export function answerShown(
  ensemble: Ensemble,
  traces: Traces,
  units: Units,
  stage: Answer["stage"],
  years: YearsInARow | null = null,
): Answer {
  const { scenario } = ensemble.preparation;
  const whole = stage === "whole";
  const { comparison, inARow } =
    years === null
      ? {
          comparison: comparisonOf(ensemble, units, whole ? "with evidence" : "without evidence"),
          inARow: null,
        }
      : yearsShown(years, units);
  const shown = shownIn(units);
  const { factor } = shownYield(scenario.yieldLine.unit, units);
  return {
    comparison,
    told: differencesTold(comparison, shown).map(toldTypeset),
    field: fieldTypeset(fieldSentences(comparison, scenario, units)),
    method: paragraphs(methodLines(comparison, shown)).map(typeset),
    units,
    stage,
    whole,
    awaitsYears: scenario.rotation !== null && years === null,
    inARow,
    byRun: {
      runs: ensemble.runs,
      years: Int32Array.from(ensemble.preparation.yearByRun, ({ year }) => year),
      typicalRun: middleRun(ensemble),
      byRainTotal: ensemble.byRainTotal.map((at) => runsAtRain(at, factor)),
      traces,
    },
  };
}

function toldTypeset({ range, sentence, odds, besides, otherTotals }: DifferenceTold): DifferenceTold {
  const set = (text: string | null) => (text === null ? null : typeset(text));
  return {
    range: set(range),
    sentence: typeset(sentence),
    odds: set(odds),
    besides: besides.map(typeset),
    otherTotals: set(otherTotals),
  };
}

/** The ensemble with its middle total alone. */
export function atMiddleTotal(ensemble: Ensemble): Ensemble {
  const middle =
    ensemble.byRainTotal[middleTotalIndex(ensemble.byRainTotal.map(({ rainTotalMm }) => rainTotalMm))]!;
  return { ...ensemble, byRainTotal: [middle] };
}

/** A list broken into lines for a terminal, as paragraphs again. */
function paragraphs(lines: readonly string[]): string[] {
  return lines
    .join("\n")
    .split(/^- /m)
    .slice(1)
    .map((item) =>
      item
        .split("\n")
        .map((line) => line.trim())
        .join(" ")
        .trim(),
    );
}
