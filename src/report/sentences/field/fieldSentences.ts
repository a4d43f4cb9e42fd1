import type { Comparison } from "../../../answer/comparison/comparison.ts";
import type { SampledCase } from "../../../answer/comparison/evidenceAnswer.ts";
import type { Units } from "../../../quantity/kinds.ts";
import type { Scenario } from "../../../scenario/scenario.ts";
import { countsCautions, countsSentences } from "./countsText.ts";
import { readingsInMoney } from "./digReadingsText.ts";
import { digSentences } from "./digText.ts";
import { measuredYield } from "./measuredYield.ts";
import { pairSentences } from "./moneyText.ts";
import { contradictionsSaid, reconcileSaid } from "./reconcileText.ts";
import { rowsSentences } from "./rowPositionsText.ts";
import { shownIn, type Formatters } from "../../tables/formatters.ts";
import { coresSentences, penetrometerSaid, probeSaid } from "./soilSamplesText.ts";
import { stripsSentences } from "./stripsText.ts";
import { typeset } from "../../tables/typeset.ts";
import { yieldsShown, type YieldsShown } from "./yieldsShown.ts";

/** What is said of each kind of thing measured, a sentence or two each; empty where it was not measured. */
export interface FieldSentences {
  readonly dig: readonly string[];
  /** Cores, push probe and penetrometer, case by case. */
  readonly samples: readonly string[];
  readonly counts: readonly string[];
  readonly countsCautions: readonly string[];
  readonly strips: readonly string[];
  /** One for each of `evidence.reconciliations`. */
  readonly reconciliations: readonly string[];
  /** Of counts and strips of the same cases whose ranges do not overlap. */
  readonly contradictions: readonly string[];
  /** For the pictures of counts and strips; null where nothing was measured. */
  readonly yields: YieldsShown | null;
  readonly rows: readonly string[];
  /** A list for each of `money.pairs`. */
  readonly money: readonly (readonly string[])[];
}

export function fieldSentences(
  { evidence, fieldAverage, money, digReadings }: Comparison,
  scenario: Scenario,
  units: Units,
): FieldSentences {
  const shown = shownIn(units);
  const rowsAndMoney = {
    rows: fieldAverage === null ? [] : rowsSentences(fieldAverage, scenario.yieldLine.unit, shown),
    money: (money?.pairs ?? []).map((pair, d) => [
      ...pairSentences(money!, pair, scenario.yieldLine.unit, shown),
      ...readingsInMoney(digReadings, d, money!.currency, scenario.yieldLine.unit, shown),
    ]),
  };
  if (evidence === null)
    return {
      dig: [],
      samples: [],
      counts: [],
      countsCautions: [],
      strips: [],
      reconciliations: [],
      contradictions: [],
      yields: null,
      ...rowsAndMoney,
    };
  const { dig, samples, counts, strips, reconciliations, confidence } = evidence;
  const written = scenario.evidence;
  const names = scenario.cases.map(({ name }) => name);
  const { unit } = scenario.yieldLine;
  const said = measuredYield(unit, units);
  const wanted =
    written?.strips?.detectKgPerHa == null
      ? null
      : { kgPerHa: written.strips.detectKgPerHa, chance: written.strips.chance };
  return {
    dig: dig === null ? [] : digSentences(dig, shownIn(units), "how many more"),
    samples: samples.flatMap((one) => samplesSaid(one, samples.length > 1, confidence, shown)),
    counts:
      counts === null || written?.counts == null
        ? []
        : countsSentences(written.counts, counts, names, unit, units, wanted),
    countsCautions: counts === null || written?.counts == null ? [] : countsCautions(written.counts, counts),
    strips:
      strips === null || written?.strips == null
        ? []
        : stripsSentences(written.strips, strips, names, unit, units),
    reconciliations: reconciliations.map((one) => reconcileSaid(one, confidence, said)),
    contradictions: contradictionsSaid(reconciliations, confidence, said),
    yields: yieldsShown(evidence, scenario),
    ...rowsAndMoney,
  };
}

/** The same as a page sets it. */
export function fieldTypeset({ yields, money, ...said }: FieldSentences): FieldSentences {
  return {
    dig: said.dig.map(typeset),
    samples: said.samples.map(typeset),
    counts: said.counts.map(typeset),
    countsCautions: said.countsCautions.map(typeset),
    strips: said.strips.map(typeset),
    reconciliations: said.reconciliations.map(typeset),
    contradictions: said.contradictions.map(typeset),
    rows: said.rows.map(typeset),
    yields: yields === null ? null : { ...yields, verdicts: yields.verdicts.map(typeset) },
    money: money.map((sentences) => sentences.map(typeset)),
  };
}

function samplesSaid(
  { case: name, cores, probe, penetrometer }: SampledCase,
  isNamed: boolean,
  confidence: number,
  shown: Formatters,
): string[] {
  const said = [
    ...(cores === null ? [] : coresSentences(cores, confidence, shown)),
    ...(probe === null ? [] : [probeSaid(probe, shown)]),
    ...(penetrometer === null
      ? []
      : [penetrometerSaid(penetrometer.above, penetrometer.wetnessShare, shown)]),
  ];
  return isNamed ? said.map((one) => `"${name}": ${one}`) : said;
}
