import type { Reconciled } from "../../../answer/comparison/evidenceAnswer.ts";
import { capital } from "../sentence.ts";
import type { MeasuredYield } from "./measuredYield.ts";
import { percent } from "../../tables/formatters.ts";

/** What else may lie behind a difference in yield: to be looked at, not claimed. */
const lookAt = "stand, nutrients, lodging, pests and disease";

/** A measured difference beside the one that water explains, in two or three sentences. */
export function reconcileSaid(one: Reconciled, confidence: number, said: MeasuredYield): string {
  const { measured, explained, rowPosition, by, withKernelWeight } = one;
  const where = rowPosition === null ? "" : ` (${rowPosition})`;
  const range =
    measured.low === null || measured.high === null
      ? ", with no interval"
      : ` (${percent(confidence)} interval${withKernelWeight ? " of spots and kernel weight together" : ""} ${said.moreRange(measured.low, measured.high)})`;
  const water = `Water explains ${said.more(explained.middle)} (${percent(confidence)} of ${one.isOfYear ? `the draws of the season of ${one.year}` : "the seasons"} lie from ${said.moreRange(explained.low, explained.high)})`;
  return `By ${by} "${one.to}"${where} yields ${said.more(measured.middle)} than "${one.from}"${range}. ${water}: ${verdictSaid(one)}`;
}

/** What would make water's range narrower. */
function narrowerSaid({ year, isOfYear }: Reconciled): string {
  if (isOfYear) return "Measure the water at sowing to narrow it.";
  return year === null
    ? "Tell the year, with a station record that holds it, and measure the water at sowing to narrow it."
    : `A station record that holds the season of ${year}, and water measured at sowing, would narrow it.`;
}

/** The same for the first side of a report: no intervals. */
export function plainReconciled(one: Reconciled, said: MeasuredYield): string {
  const { measured, explained, rowPosition, by, from, to } = one;
  const where = rowPosition === null ? "" : ` (${rowPosition})`;
  return `By ${by} "${to}"${where} yields ${said.more(measured.middle)} than "${from}"; water explains ${said.more(explained.middle)}: ${plainVerdict(one)}.`;
}

function plainVerdict({ verdict, share }: Reconciled): string {
  switch (verdict) {
    case "nothing sure to explain":
      return "what was measured could be chance";
    case "all":
      return "all of it can be water";
    case "too wide to tell":
      return "water could be all of it, but so loosely that nothing measured could speak against it";
    case "part":
      return `part of it can be water, about ${percent(share!)}; for the rest look at ${lookAt}`;
    case "little":
      return `little of it can be water, about ${percent(share!)}; look at ${lookAt}`;
    case "none":
      return `none of it is water; look at ${lookAt}`;
  }
}

/** The verdict alone, as a sentence. */
export function reconcileVerdict(one: Reconciled): string {
  return capital(verdictSaid(one));
}

/** Water should not bring what was not measured: where it would, the model is to be looked at as well. */
function beyondSaid({ measured: { low, high }, explained: { middle } }: Reconciled): string {
  if (low === null || high === null || (middle >= low && middle <= high)) return "";
  const side = middle > high ? "more" : "less";
  return ` But the model promises ${side} than was measured: a typical year lies outside the measured interval. Check that the cases are as the field is (roots, density, cover, water at sowing), the rain of that season, and what else was short there: ${lookAt}.`;
}

function verdictSaid(one: Reconciled): string {
  const { verdict, share, measured } = one;
  const unsure = measured.low === null ? " As the measurement has no interval, take this loosely." : "";
  switch (verdict) {
    case "nothing sure to explain":
      return `the measurement can't be told from no difference, so there is nothing sure to explain.${beyondSaid(one)}`;
    case "all":
      return `all of the measured difference can be water.${unsure}${beyondSaid(one)}`;
    case "too wide to tell":
      return `it could be all of the measured difference, but water's own range holds half of it and twice of it as well, so nothing measured could speak against that. ${narrowerSaid(one)}${unsure}${beyondSaid(one)}`;
    case "part":
      return `part of it can be water, about ${percent(share!)} in a typical year. For the rest look at ${lookAt}.${unsure}`;
    case "little":
      return `little of it can be water, about ${percent(share!)} in a typical year. Look at ${lookAt}.${unsure}`;
    case "none":
      return `water would have made it go the other way, so none of it is water. Look at ${lookAt}.${unsure}`;
  }
}

/**
 * Counts and strips of the same two cases whose ranges do not overlap: a sentence for each such pair. Counts of one place in the
 * row stand for that place only and are no contradiction to strips.
 */
export function contradictionsSaid(
  reconciliations: readonly Reconciled[],
  confidence: number,
  said: MeasuredYield,
): string[] {
  const of = (by: Reconciled["by"]) =>
    reconciliations.filter((one) => one.by === by && one.rowPosition === null);
  return of("strips").flatMap((strips) =>
    of("counts").flatMap((counts) => {
      const { from, to } = strips;
      const isSame = counts.from === from && counts.to === to;
      const isTurned = counts.from === to && counts.to === from;
      const byStrips = rangeOf(strips, false);
      const byCounts = rangeOf(counts, isTurned);
      if (!(isSame || isTurned) || byStrips === null || byCounts === null) return [];
      if (byStrips.low <= byCounts.high && byCounts.low <= byStrips.high) return [];
      const range = ({ low, high }: { low: number; high: number }) => said.moreRange(low, high);
      return [
        `Counts and strips contradict each other: against "${from}", "${to}" yields ${range(byStrips)} by strips and ${range(byCounts)} by counts (${percent(confidence)} intervals), and these ranges do not overlap. Check where the spots lay in the strips, the length of row and the row width, what a kernel weighs, the width of the strips and the unit of their yields.`,
      ];
    }),
  );
}

function rangeOf(
  { measured: { low, high } }: Reconciled,
  isTurned: boolean,
): { readonly low: number; readonly high: number } | null {
  if (low === null || high === null) return null;
  return isTurned ? { low: -high, high: -low } : { low, high };
}
