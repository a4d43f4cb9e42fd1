import type { Ensemble, EnsembleAtRain } from "../runs/ensemble.ts";
import { middleOf } from "../runs/middleTotal.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import type { SoilSamples } from "../../scenario/resolve/evidence/soilSamples.ts";
import {
  answerCounts,
  type CountsAnswer,
  type CountsDifference,
} from "../../evidence/counts/countsAnswer.ts";
import { levelsAnswer, type LevelsAnswer, type Season } from "./levelsAnswer.ts";
import { seasonMeasured } from "./seasonMeasured.ts";
import { digAnswer, type DigAnswer } from "../dig/digAnswer.ts";
import { probedWater, type ProbedWater } from "../../evidence/samples/moistDepth.ts";
import { reconcile, type Reach, type Reconciliation } from "../../evidence/reconcile.ts";
import { soilSampled, type SoilSampled } from "../../evidence/samples/soilSampled.ts";
import { answerStrips, type StripsAnswer } from "../../evidence/strips.ts";

/** Everything measured in the field, beside what the model makes of it. Water and depth in mm, yields in kg/ha. */
export interface EvidenceAnswer {
  /** Null where the scenario has no `evidence`; cores and probes stand with the soil. */
  readonly confidence: number;
  readonly dig: DigAnswer | null;
  /** Cases whose soil was cored, probed or pushed; a case with the same samples as the first is not told again. */
  readonly samples: readonly SampledCase[];
  readonly counts: CountsAnswer | null;
  readonly strips: StripsAnswer | null;
  readonly reconciliations: readonly Reconciled[];
  /** What was counted, harvested and modeled of each case; one for each year that was measured in. */
  readonly levels: readonly LevelsAnswer[];
}

export interface SampledCase {
  readonly case: string;
  readonly cores: SoilSampled | null;
  readonly probe: ProbedWater | null;
  readonly penetrometer: SoilSamples["log"];
}

/** A measured difference in yield between two cases, beside what water explains of it at the middle total. */
export interface Reconciled extends Reconciliation {
  readonly by: "strips" | "counts";
  readonly from: string;
  readonly to: string;
  readonly rowPosition: string | null;
  /** Calendar year of harvest, as told; null where it is not. */
  readonly year: number | null;
  /** Whether water is that of this year's season; else of all seasons. */
  readonly isOfYear: boolean;
  /** Whether the interval also holds that kernel weight is not known: then it is wider than that of the spots alone. */
  readonly withKernelWeight: boolean;
}

/** Of intervals of soil cores where the scenario states no confidence. */
const usualConfidence = 0.95;

/** What was measured, boiled down; null where nothing was. */
export function evidenceAnswer(ensemble: Ensemble): EvidenceAnswer | null {
  const { scenario, digFit } = ensemble.preparation;
  const { evidence, cases } = scenario;
  const confidence = evidence?.confidence ?? usualConfidence;
  const samples = sampledCases(scenario, confidence);
  if (evidence === null && samples.length === 0) return null;
  const names = cases.map(({ name }) => name);
  const dig = evidence?.dig ?? null;
  const counts = evidence?.counts == null ? null : answerCounts(evidence.counts);
  const strips = evidence?.strips == null ? null : answerStrips(evidence.strips);
  return {
    confidence,
    dig: dig === null ? null : digAnswer(dig, digFit(), names),
    samples,
    counts,
    strips,
    ...besideModel(ensemble, counts, strips, confidence),
  };
}

function sampledCases({ cases }: Scenario, confidence: number): SampledCase[] {
  const told = new Set<string>();
  return cases.flatMap(({ name, layers, samples, startingWater }): SampledCase[] => {
    const key = JSON.stringify([samples, startingWater]);
    if (told.has(key)) return [];
    told.add(key);
    const hasCores = samples.coresByLayer.some((cores) => cores.length > 0);
    const probe =
      startingWater.kind === "moist depth"
        ? probedWater(layers, startingWater.moistDepthMm, startingWater.shareBelow)
        : null;
    if (!hasCores && probe === null && samples.log === null) return [];
    return [
      {
        case: name,
        cores: hasCores ? soilSampled(layers, samples.coresByLayer, confidence) : null,
        probe,
        penetrometer: samples.log,
      },
    ];
  });
}

function besideModel(
  ensemble: Ensemble,
  counts: CountsAnswer | null,
  strips: StripsAnswer | null,
  confidence: number,
): Pick<EvidenceAnswer, "reconciliations" | "levels"> {
  const { evidence } = ensemble.preparation.scenario;
  const seasonOf = (year: number | null): Season => {
    const own = year === null ? null : seasonMeasured(ensemble, year);
    return { year, isOfYear: own !== null, at: own ?? middleOf(ensemble.byRainTotal) };
  };
  const stripsYear = evidence?.strips?.year ?? null;
  const countsYear = evidence?.counts?.year ?? null;
  const ofCounts = seasonOf(countsYear ?? stripsYear);
  const ofStrips = stripsYear === null || stripsYear === countsYear ? ofCounts : seasonOf(stripsYear);
  const written = evidence?.strips ?? null;
  return {
    reconciliations: reconciliationsOf(ensemble, counts, strips, { ofCounts, ofStrips }, confidence),
    levels:
      counts === null && written === null
        ? []
        : ofCounts.year === ofStrips.year
          ? [levelsAnswer(counts, written, ofCounts, confidence)]
          : [
              levelsAnswer(counts, null, ofCounts, confidence),
              levelsAnswer(null, written, ofStrips, confidence),
            ],
  };
}

function reconciliationsOf(
  ensemble: Ensemble,
  counts: CountsAnswer | null,
  strips: StripsAnswer | null,
  seasons: { readonly ofCounts: Season; readonly ofStrips: Season },
  confidence: number,
): Reconciled[] {
  const { scenario } = ensemble.preparation;
  const names = scenario.cases.map(({ name }) => name);
  const explained = ({ cases }: EnsembleAtRain, from: number, to: number) => {
    const first = cases[from]!.yieldKgPerHaByRun;
    return cases[to]!.yieldKgPerHaByRun.map((value, run) => value - first[run]!);
  };
  const found: Reconciled[] = [];
  const note = (
    by: Reconciled["by"],
    from: number,
    to: number,
    rowPosition: string | null,
    measured: Reach,
    withKernelWeight = false,
  ) => {
    const { year, isOfYear, at } = by === "counts" ? seasons.ofCounts : seasons.ofStrips;
    return found.push({
      by,
      from: names[from]!,
      to: names[to]!,
      rowPosition,
      year,
      isOfYear,
      withKernelWeight,
      ...reconcile(measured, explained(at, from, to), confidence),
    });
  };
  const written = scenario.evidence?.strips ?? null;
  if (written !== null && strips !== null && strips.difference.value !== null) {
    const { value, interval } = strips.difference;
    note("strips", ...written.caseIndexes, null, {
      middle: value,
      low: interval?.low ?? null,
      high: interval?.high ?? null,
    });
  }
  for (const one of counts?.differences ?? []) {
    const measured = reachOfCounts(one);
    if (measured !== null)
      note(
        "counts",
        one.againstIndex,
        one.caseIndex,
        one.rowPosition,
        measured,
        measured.low !== null && one.byWeight !== null,
      );
  }
  return found;
}

/** Spots and kernel weight are unsure each for itself: half widths add as squares. */
function reachOfCounts({ difference, byWeight }: CountsDifference): Reach | null {
  const { value, interval } = difference;
  if (value === null) return null;
  if (interval === null) return { middle: value, low: null, high: null };
  const [below, above] =
    byWeight === null ? [0, 0] : [value - byWeight.lowKgPerHa, byWeight.highKgPerHa - value];
  return {
    middle: value,
    low: value - Math.hypot(value - interval.low, below),
    high: value + Math.hypot(interval.high - value, above),
  };
}
