import type { Comparison, ComparisonMethod } from "../answer/comparison.ts";
import { mmPerInch } from "../quantity/constants.ts";
import { fixed, percent, type Shown } from "./shownUnits.ts";
import { bullets } from "../wrap.ts";
import { referenceEtSaid, sentence } from "./sentence.ts";

/** How the answer came about, for a terminal. */
export function methodLines(comparison: Comparison, shown: Shown): string[] {
  return bullets(methodParagraphs(comparison, shown));
}

/** How the answer came about, a paragraph a subject. */
export function methodParagraphs({ method, cases }: Comparison, shown: Shown): string[] {
  const note = method.yieldLine.storedInchNote;
  return [
    "One column of soil, one day a step: snow and melt, runoff by curve number, infiltration and drainage, evaporation, root front, uptake. Every day's balance is closed.",
    `Rain: ${sentence(method.rain)}`,
    `${referenceEtSaid(method.referenceEt)} Water uptake: ${sentence(method.uptake)}`,
    drawsSaid(method),
    yieldLineSaid(method.yieldLine, cases[0]!.yield.unit, shown),
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
    `(sd ${percent(method.deepWaterSd)} of capacity), density reading (${method.densityReading}), roots that find cracks in a dense layer.`
  );
}

function yieldLineSaid(line: ComparisonMethod["yieldLine"], unit: string, shown: Shown): string {
  const { low, middle, high } = line.slopeKgPerHaPerMm;
  const mm = shown.system === "us" ? mmPerInch : 1;
  const slope = (kgPerHaPerMm: number) =>
    fixed((kgPerHaPerMm * mm) / line.kgPerHaPerUnit, unit === "lb/ac" ? 0 : 1);
  const cap =
    line.capKgPerHa === null ? "" : `, at most ${fixed(line.capKgPerHa / line.kgPerHaPerUnit, 0)} ${unit}`;
  return (
    `Yield = slope x (water use - ${shown.water(line.thresholdMm)} ${shown.length}), slope ${slope(low)} to ${slope(high)}, ` +
    `most likely ${slope(middle)} ${unit} per ${shown.length}${cap}, never below 0. What a case evaporates beyond the first grows nothing and is not counted. Source: ${sentence(line.source)}`
  );
}
