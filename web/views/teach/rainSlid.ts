import { inUnits, shownAs } from "../../../src/quantity/sayQuantity.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import type { Comparison } from "../../../src/answer/comparison/comparison.ts";
import type { ResolvedScenario } from "../../worker/protocol.ts";

/** Rain as a slider has it, in the unit on show. */
export interface RainSlid {
  readonly path: "weather.annualRain" | "weather.seasonRain";
  readonly over: "year" | "season";
  readonly value: number;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Years as they were: moving the slider scales them. */
  readonly isAsItCame: boolean;
  /** Whether the total can be taken away again. */
  readonly canBeAsItCame: boolean;
  /** More totals than one are asked for; moving the slider leaves one. */
  readonly totals: number;
}

/** A dry year to a wet one, and likewise a season, mm. */
const span = { year: [203.2, 508], season: [50.8, 406.4] } as const;
/** A slider reaches at least so far beyond the field's own rain. Ours. */
const beyond = 0.25;

type Told = Pick<Comparison, "rainTotalMm" | "annualRainMm" | "cases">;

/** The field's own rain, least and most, mm: the totals asked for, or what the years brought. */
export function ownRain(
  { weather }: Pick<ResolvedScenario, "weather">,
  told: Told,
): readonly [number, number] {
  const { rainTotalOver: over, rainTotalsMm } = weather;
  if (rainTotalsMm.length > 0) return [Math.min(...rainTotalsMm), Math.max(...rainTotalsMm)];
  const { annualRainMm, cases } = told;
  if (over === "year" && annualRainMm !== null) return [annualRainMm.p10, annualRainMm.p90];
  return [cases[0]!.seasonRainMm, cases[0]!.seasonRainMm];
}

/** @param ownMm the field's rain as it was before anything was slid: the scale must not move under the finger */
export function rainSlid(
  { weather, ...scenario }: Pick<ResolvedScenario, "weather"> & { readonly pattern: boolean },
  { rainTotalMm, annualRainMm, cases }: Told,
  ownMm: readonly [least: number, most: number],
  units: Units,
): RainSlid {
  const { rainTotalOver: over, rainTotalsMm } = weather;
  const usualMm = over === "year" ? annualRainMm?.p50 : undefined;
  const mm = rainTotalMm ?? usualMm ?? cases[0]!.seasonRainMm;
  const step = units === "us" ? 0.1 : 5;
  const toStep = (value: number) => Number((Math.round(value / step) * step).toFixed(1));
  const [leastMm, mostMm] = span[over];
  const [ownLeastMm, ownMostMm] = ownMm;
  return {
    path: over === "year" ? "weather.annualRain" : "weather.seasonRain",
    over,
    value: toStep(inUnits(mm, "rain", units)),
    from: toStep(inUnits(Math.min(leastMm, (1 - beyond) * ownLeastMm, mm), "rain", units)),
    to: toStep(inUnits(Math.max(mostMm, (1 + beyond) * ownMostMm, mm), "rain", units)),
    step,
    isAsItCame: rainTotalsMm.length === 0,
    canBeAsItCame: !scenario.pattern,
    totals: rainTotalsMm.length,
  };
}

/** `13.2 in`, `335 mm` */
export function sayRain(value: number, units: Units): string {
  const { unit } = shownAs("rain", units);
  return `${units === "us" ? value.toFixed(1) : value.toFixed(0)} ${unit}`;
}
