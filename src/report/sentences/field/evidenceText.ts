import type { EvidenceAnswer, SampledCase } from "../../../answer/comparison/evidenceAnswer.ts";
import type { Units } from "../../../quantity/kinds.ts";
import type { Scenario } from "../../../scenario/scenario.ts";
import { bullets, wrap } from "../../../wrap.ts";
import { countsLines } from "./countsText.ts";
import { digLines, digSentences } from "./digText.ts";
import { doubtLines } from "../firstLine.ts";
import { countsUnripe, disagreementsSaid, levelsLines } from "./levelsText.ts";
import { measuredYield } from "./measuredYield.ts";
import { contradictionsSaid, reconcileSaid } from "./reconcileText.ts";
import { shownIn, type Formatters } from "../../tables/formatters.ts";
import { coresLines, penetrometerLines, probeLines } from "./soilSamplesText.ts";
import { stripsLines } from "./stripsText.ts";

/** Everything measured in the field, part by part: what `evidence` prints. 80 columns. */
export function evidenceLines(answer: EvidenceAnswer, scenario: Scenario, units: Units): string[] {
  const shown = shownIn(units);
  return evidenceParts(answer, scenario, units, shown)
    .filter(({ lines }) => lines.length > 0)
    .flatMap(({ heading, lines }, p) => [...(p > 0 ? [""] : []), heading, "", ...lines]);
}

export interface EvidencePart {
  readonly heading: string;
  readonly lines: readonly string[];
}

function evidenceParts(
  { dig, samples, counts, strips, reconciliations, levels, confidence }: EvidenceAnswer,
  { cases, evidence, yieldLine }: Scenario,
  units: Units,
  shown: Formatters,
): EvidencePart[] {
  const names = cases.map(({ name }) => name);
  const { unit } = yieldLine;
  const said = measuredYield(unit, units);
  const wanted =
    evidence?.strips?.detectKgPerHa == null
      ? null
      : { kgPerHa: evidence.strips.detectKgPerHa, chance: evidence.strips.chance };
  return [
    { heading: "THE DIG", lines: dig === null ? [] : digLines(dig, shown) },
    {
      heading: "SOIL SAMPLES",
      lines: samples.flatMap((one) => samplesLines(one, samples.length > 1, confidence, shown)),
    },
    {
      heading: "COUNTS",
      lines:
        counts === null || evidence?.counts == null
          ? []
          : countsLines(evidence.counts, counts, names, unit, units, wanted),
    },
    {
      heading: "STRIPS",
      lines:
        strips === null || evidence?.strips == null
          ? []
          : stripsLines(evidence.strips, strips, names, unit, units),
    },
    {
      heading: "LEVELS",
      lines: levels.flatMap((one) => levelsLines(one, names, said, countsUnripe(evidence?.counts ?? null))),
    },
    {
      heading: "CAN IT BE WATER?",
      lines: bullets([
        ...reconciliations.map((one) => reconcileSaid(one, confidence, said)),
        ...contradictionsSaid(reconciliations, confidence, said),
      ]),
    },
  ];
}

function samplesLines(
  { case: name, cores, probe, penetrometer }: SampledCase,
  named: boolean,
  confidence: number,
  shown: Formatters,
): string[] {
  return [
    ...(named ? wrap(`"${name}"`) : []),
    ...(cores === null ? [] : coresLines(cores, confidence, shown)),
    ...(probe === null ? [] : probeLines(probe, shown)),
    ...(penetrometer === null ? [] : penetrometerLines(penetrometer.above, penetrometer.wetnessShare, shown)),
  ];
}

/** What a comparison says of it: a sentence or two each. */
export function evidenceSentences(
  { dig, reconciliations, levels, confidence }: EvidenceAnswer,
  { cases, evidence, yieldLine }: Scenario,
  units: Units,
): string[] {
  const said = measuredYield(yieldLine.unit, units);
  return [
    ...(dig === null ? [] : digSentences(dig, shownIn(units), "short")),
    ...levels.flatMap((one) =>
      disagreementsSaid(
        one,
        cases.map(({ name }) => name),
        said,
        countsUnripe(evidence?.counts ?? null),
      ),
    ),
    ...reconciliations.map((one) => reconcileSaid(one, confidence, said)),
    ...contradictionsSaid(reconciliations, confidence, said),
  ];
}

/**
 * The whole of what `evidence` prints.
 *
 * @param atTop what else the answer could be by the plants dug
 */
export function evidenceText(
  answer: EvidenceAnswer,
  scenario: Scenario,
  units: Units,
  cautions: readonly string[],
  doubts: readonly string[],
  atTop: readonly string[] = [],
): string {
  const { name, invented, notes } = scenario;
  const lines = [
    ...doubtLines({ doubts }).flatMap((line) => wrap(line)),
    ...wrap(`${name}${invented ? " (invented data)" : ""}`),
    "",
    ...(atTop.length > 0 ? [...atTop.flatMap((one) => wrap(one)), ""] : []),
    ...evidenceLines(answer, scenario, units),
    ...(notes.length > 0 ? ["", "Noticed", ...bullets(notes)] : []),
    "",
    "Cautions",
    ...bullets(cautions),
  ];
  return `${lines.join("\n")}\n`;
}
