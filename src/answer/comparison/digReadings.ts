import { isoDate } from "../../quantity/calendar.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { spreadOf } from "../../statistics/spread.ts";
import type { DigFit } from "../dig/digFit.ts";
import type { DigDoubt, DigReadings, ReadingAnswer, UndecidedCase } from "../dig/readings.ts";
import { moneyOf } from "../money/money.ts";
import { emptyEnsemble, runInto, type Ensemble, type EnsembleAtRain } from "../runs/ensemble.ts";
import { middleOf, middleTotalIndex } from "../runs/middleTotal.ts";
import { readyRun, type DigUse } from "../runs/readyRun.ts";
import { makeRunBuffers } from "../runs/run.ts";
import type { AnswerAtRain } from "./comparison.ts";

/**
 * What else the answer could be: with roots that the dig leaves undecided stopped where they were dug, and, where dig and model
 * contradict each other, with density instead of the dig or the dig instead of density. Each costs the runs of one rainfall
 * total, and is run only where it is told.
 *
 * @param boiled the answer of an ensemble at one total
 * @returns null where there is nothing to tell beside the answer
 */
export function digReadings(
  ensemble: Ensemble,
  boiled: (at: EnsembleAtRain) => AnswerAtRain,
): DigReadings | null {
  const { scenario, digFit } = ensemble.preparation;
  const dig = scenario.evidence?.dig ?? null;
  if (dig === null || scenario.cases.length < 2) return null;
  const fit = digFit();
  const given = boiled(middleOf(ensemble.byRainTotal));
  const undecided = dig.drives ? undecidedOf(scenario, fit, given) : [];
  const doubts = [...depthDoubts(scenario, given), ...(fit === null ? [] : densityDoubts(scenario, fit))];
  if (undecided.length === 0 && doubts.length === 0) return null;
  const others: DigUse[] = [
    ...(undecided.length > 0 ? ["stopped" as const] : []),
    ...(doubts.length === 0 || fit === null ? [] : [dig.drives ? ("not" as const) : ("fitted" as const)]),
  ];
  return {
    undecided,
    doubts,
    decides: dig.drives,
    answers: [
      readingAnswer("as decided", ensemble, given),
      ...others.map((use) => {
        const other = runAgain(ensemble, use);
        return readingAnswer(use, other, boiled(other.byRainTotal[0]!));
      }),
    ],
  };
}

/** The runs of the middle total once more, with another use of the dig. */
function runAgain({ preparation, runs }: Ensemble, use: DigUse): Ensemble {
  const again = emptyEnsemble(preparation);
  const middle = middleTotalIndex(preparation.rainTotalsMm);
  const buffers = makeRunBuffers("sums");
  for (let run = 0; run < runs; run++) runInto(again, run, middle, readyRun(preparation, run, use), buffers);
  return { ...again, byRainTotal: [again.byRainTotal[middle]!] };
}

function readingAnswer(use: DigUse, ensemble: Ensemble, { cases, differences }: AnswerAtRain): ReadingAnswer {
  const { money, rowPositions } = ensemble.preparation.scenario;
  const pairs = money === null ? null : moneyOf(ensemble, money, rowPositions).pairs;
  return {
    use,
    cases: cases.map(({ name, finalRootDepthMm }) => ({ name, finalRootDepthMm })),
    differences: differences.map(({ from, to, extraWaterUsedMm, extraYield }, p) => ({
      from,
      to,
      extraWaterUsedMm,
      extraYield,
      netPerHa: pairs?.[p]?.netPerHa ?? null,
    })),
  };
}

function undecidedOf(scenario: Scenario, fit: DigFit | null, given: AnswerAtRain): UndecidedCase[] {
  return (fit?.cases ?? []).flatMap((one, c) => {
    if (one === null || one.told.reading !== "either") return [];
    return [
      {
        case: scenario.cases[c]!.name,
        date: isoDate(Math.max(...one.groups.map(({ day }) => day))),
        dugMm: one.stop.depthMm,
        goingOnMm: given.cases[c]!.finalRootDepthMm,
        stoppedShare: one.told.stoppedShare,
      },
    ];
  });
}

/** A front is not told apart from a depth within this, mm. Ours: half an inch. */
const sameDepthMm = 12.7;

function depthDoubts({ evidence, cases }: Scenario, given: AnswerAtRain): DigDoubt[] {
  return cases.flatMap(({ name }, c): DigDoubt[] => {
    const means = (evidence?.dig?.groups ?? [])
      .filter(({ caseIndex }) => caseIndex === c)
      .map(({ depthsMm }) => spreadOf(depthsMm).mean ?? 0);
    const dugMm = Math.max(0, ...means);
    const frontMm = given.cases[c]!.finalRootDepthMm;
    if (dugMm <= frontMm + sameDepthMm) return [];
    return [{ kind: "deeper than the front when ripe", case: name, dugMm, frontMm }];
  });
}

function densityDoubts({ cases }: Scenario, fit: DigFit): DigDoubt[] {
  return fit.cases.flatMap((one, c): DigDoubt[] => {
    if (one === null || (one.otherwise >= one.low && one.otherwise <= one.high)) return [];
    const { otherwise: density, low, high } = one;
    return [{ kind: "density outside the dig", case: cases[c]!.name, density, low, high }];
  });
}
