import type { Scenario } from "../../../scenario/scenario.ts";
import { isSod } from "../../../crop/crop.ts";
import { maturityOf } from "../../../crop/crops.ts";
import type { Uncautioned } from "../comparison.ts";
import { named } from "./namedCases.ts";

/** From this share of unripe seasons on it is said. */
const tellingUnripeShare = 0.1;

export function unripeCaution({ byRainTotal }: Uncautioned, { cases }: Scenario): string[] {
  const share = Math.max(...byRainTotal.flatMap(({ cases }) => cases.map(({ unripeShare }) => unripeShare)));
  if (share < tellingUnripeShare) return [];
  // An early type has no earlier one.
  const mend = cases.every(({ crop }) => maturityOf(crop) === "early")
    ? "it is an early type already, so sow earlier, or grow a crop that takes less time here"
    : "sow earlier, or choose an earlier maturity or shorter stage lengths";
  return [
    `In ${Math.round(100 * share)} % of the seasons the crop ran out of time before it was ripe, and the yield is that of a crop that was: ${mend}.`,
  ];
}

export function thresholdCaution({ byRainTotal, method }: Uncautioned): string[] {
  const { thresholdMm } = method.yieldLine;
  const below = byRainTotal.some((at) => at.cases.some(({ waterUseMm }) => waterUseMm <= thresholdMm));
  return below
    ? [
        "In a typical year a case uses no more water than the yield line needs before the first grain: the yield there is zero, with or without some extra water.",
      ]
    : [];
}

/** At the line's cap more water gives no more yield: a difference of nothing there is the line's doing. */
export function capCaution({ byRainTotal, cases, method: { yieldLine } }: Uncautioned): string[] {
  const { capKgPerHa, kgPerHaPerUnit } = yieldLine;
  if (capKgPerHa === null) return [];
  const capped = cases.filter((_, c) =>
    byRainTotal.some((at) => at.cases[c]!.yield.p50 * kgPerHaPerUnit >= 0.999 * capKgPerHa),
  );
  if (capped.length === 0) return [];
  return [
    `In a typical year ${named(capped)} ${capped.length === 1 ? "is" : "are"} at the line's cap, ${sayCap(cases, capKgPerHa, kgPerHaPerUnit)}: more water adds no yield there.`,
  ];
}

/** Strips above the cap are beyond what the line can give. */
export function stripsCapCaution({ evidence, cases, method: { yieldLine } }: Uncautioned): string[] {
  const { capKgPerHa, kgPerHaPerUnit } = yieldLine;
  const means = evidence?.strips?.meansKgPerHa ?? null;
  if (capKgPerHa === null || means === null || Math.max(...means) <= capKgPerHa) return [];
  return [
    `The strips yielded more than the line's cap, ${sayCap(cases, capKgPerHa, kgPerHaPerUnit)}: the line cannot say what water was worth there; enter a higher cap (yield.cap) if this field does better.`,
  ];
}

function sayCap(cases: Uncautioned["cases"], capKgPerHa: number, kgPerHaPerUnit: number): string {
  return `${Math.round(capKgPerHa / kgPerHaPerUnit)} ${cases[0]!.yield.unit}`;
}

export function regionSaid({ method: { yieldLine } }: Uncautioned): string {
  return yieldLine.region === null ? "" : ` (for: ${yieldLine.region})`;
}

/** From this share of starved seasons on it is said. Ours. */
const tellingStarvedShare = 0.1;

/** A crop starved around flowering is outside what a line of whole seasons knows. */
export function starvedCaution({ byRainTotal, cases, method }: Uncautioned, scenario: Scenario): string[] {
  // Sod has no flowering that decides, and no grain.
  const shares = cases.map((_, c) =>
    isSod(scenario.cases[c]!.crop) ? 0 : Math.max(...byRainTotal.map((at) => at.cases[c]!.starvedShare)),
  );
  const starved = cases.filter((_, c) => shares[c]! >= tellingStarvedShare);
  if (starved.length === 0) return [];
  const most = Math.round(100 * Math.max(...shares));
  const taken =
    method.yieldLine.floweringLoss === null
      ? "no published loss stands in our sources for this crop, so none is taken off"
      : "a loss published for corn stressed around silking is taken off, its form between fed and starved is ours";
  return [
    `In up to ${most} % of the seasons the crop of ${named(starved)} met a quarter or less of its demand in the six weeks around flowering. Such a crop may set no grain, which a yield line does not know: ${taken}.`,
  ];
}

export function afterFloweringCaution({ differences }: Uncautioned): string[] {
  const late = differences.filter(
    ({ shareAfterFlowering, extraWaterUsedMm }) =>
      extraWaterUsedMm.p50 > 0 && (shareAfterFlowering ?? 0) >= 0.5,
  );
  return late.length === 0
    ? []
    : [
        `Half or more of the extra water of ${named(late.map(({ to }) => ({ name: to })))} was taken up after flowering, where an inch is worth more than the season's average that the yield line takes.`,
      ];
}
