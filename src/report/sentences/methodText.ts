import type { Comparison, ComparisonMethod, YieldSpread } from "../../answer/comparison/comparison.ts";
import { mmPerInch } from "../../quantity/constants.ts";
import { fixed, percent, type Formatters } from "../tables/formatters.ts";
import { bullets } from "../../wrap.ts";
import { referenceEtSaid, sentence } from "./sentence.ts";

/** How the answer came about, for a terminal. */
export function methodLines(comparison: Comparison, shown: Formatters): string[] {
  return bullets(methodParagraphs(comparison, shown));
}

/**
 * How the answer came about, a paragraph a subject.
 * @param hasSources whether the yield line's source and the words for medians belong in; a report has lists of its own
 */
export function methodParagraphs(
  {
    method,
    cases,
  }: {
    readonly method: ComparisonMethod;
    readonly cases: readonly { readonly yield: Pick<YieldSpread, "unit"> }[];
  },
  shown: Formatters,
  hasSources = true,
): string[] {
  const note = method.yieldLine.storedInchNote;
  return [
    "One column of soil, one day a step: snow and melt, runoff by curve number, infiltration and drainage, evaporation, root front, uptake. Every day's balance is closed. Frozen ground sheds part of the melt, and residue rots.",
    `Rain: ${sentence(method.rain)}`,
    `${referenceEtSaid(method.referenceEt)} Water uptake: ${sentence(method.uptake)} Evaporation: ${sentence(method.evaporation)}`,
    drawsSaid(method),
    ...(method.runs === 1 || !hasSources
      ? []
      : [
          "A typical year is the median of the runs, each number by itself: half of the runs gave more, half less. Years in a row are told by their mean.",
        ]),
    yieldLineSaid(method.yieldLine, cases[0]!.yield.unit, shown, hasSources),
    ...(note === null ? [] : [note]),
  ];
}

function drawsSaid(method: ComparisonMethod): string {
  const again =
    method.sowingYears < method.runs
      ? ` over ${method.sowingYears} sowing ${method.sowingYears === 1 ? "year" : "years"}, gone through again with other draws`
      : "";
  return (
    `${method.runs === 1 ? "One run" : `${method.runs} runs`}${again}, seed ${method.seed}. Every case and every rainfall total meets the same years and draws: ` +
    `yield slope, available water capacity (sd ${method.availableCapacitySpread}; field capacity moves), deep starting water ` +
    `(sd ${percent(method.deepWaterSd)} of capacity), density reading (${method.densityReading}), roots that find cracks in a dense layer, how fast uptake falls with depth (by a factor of ${fixed(1 + method.deepUptakeSpread, 1)} either way).`
  );
}

function yieldLineSaid(
  line: ComparisonMethod["yieldLine"],
  unit: string,
  shown: Formatters,
  hasSources: boolean,
): string {
  const { low, middle, high } = line.slopeKgPerHaPerMm;
  const mm = shown.system === "us" ? mmPerInch : 1;
  const slope = (kgPerHaPerMm: number) =>
    fixed((kgPerHaPerMm * mm) / line.kgPerHaPerUnit, unit === "lb/ac" ? 0 : 1);
  const cap =
    line.capKgPerHa === null ? "" : `, at most ${fixed(line.capKgPerHa / line.kgPerHaPerUnit, 0)} ${unit}`;
  const { seasons, region, floweringLoss, capSource } = line;
  return [
    `Yield = slope x (water use - ${shown.water(line.thresholdMm)} ${shown.length}), slope ${slope(low)} to ${slope(high)}, ` +
      `most likely ${slope(middle)} ${unit} per ${shown.length}${cap}, never below 0. Water use is what the case transpires and, for every case alike, what the ground under a full stand of the first evaporates.`,
    ...(seasons === null
      ? []
      : [
          `Water beyond the season's rain and ${shown.water(seasons.ordinaryDrawMm)} ${shown.length} from the soil is worth ${slope(seasons.dry.low)} to ${slope(seasons.dry.high)} in a dry season (${shown.water(seasons.dryRainMm)} ${shown.length} of rain or less) and ${slope(seasons.wet.low)} to ${slope(seasons.wet.high)} in a wet one (${shown.water(seasons.wetRainMm)} or more), as the season's own rain picks.`,
        ]),
    ...(floweringLoss === null
      ? []
      : [
          `Short of half of its demand around flowering the crop loses up to ${percent(floweringLoss.before)} before, ${percent(floweringLoss.at)} at and ${percent(floweringLoss.after)} after it (${floweringLoss.source}; the form is ours).`,
        ]),
    ...(region === null ? [] : [`For: ${region}.`]),
    ...(hasSources ? [`Source: ${sentence(line.source)}`] : []),
    ...(capSource === null ? [] : [`Cap: ${sentence(capSource)}`]),
  ].join(" ");
}
