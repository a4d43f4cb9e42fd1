import generator from "../../../data-reference/rain-generator.json" with { type: "json" };
import table from "../../../data-reference/rain-patterns.json" with { type: "json" };
import { refuse } from "../../problem.ts";
import { daysInMonth } from "../../quantity/calendar.ts";
import type { MonthlyNormals, Site } from "../records/record.ts";

/** How the year's rain falls, where only its total is known. */
export type RainPattern = "summer-peak" | "winter-peak" | "even";

export const rainPatterns = Object.keys(
  table.patterns satisfies Record<RainPattern, unknown>,
) as readonly string[] as readonly [RainPattern, ...RainPattern[]];

/** The invented site the patterns' temperatures belong to. */
export const patternSite: Site = {
  latitudeDeg: table.site.latitudeDeg,
  elevationM: table.site.elevationM,
  setting: "inland",
};

/**
 * Monthly normals for a yearly total: shares of the rain by pattern, temperatures of an invented mid-latitude
 * dryland site. Wet days grow with a power of the total (0.58, the other side of the usual rain of a wet day in
 * rainChain.ts), so more rain is both more wet days and wetter ones. Everything here is a default of ours, marked so in data-reference.
 *
 * @param yearlyRainMm >= 0; mean of the years
 * @param latitudeDeg south of the equator the year is turned by six months
 */
export function normalsFromPattern(
  pattern: RainPattern,
  yearlyRainMm: number,
  latitudeDeg: number = patternSite.latitudeDeg,
): MonthlyNormals {
  if (!(yearlyRainMm >= 0 && Number.isFinite(yearlyRainMm)))
    refuse("weather.annualRain", "a yearly total of 0 or more", yearlyRainMm, 'give one such as "13 in"');
  const { rainPercent, wetDays } = table.patterns[pattern];
  const total = rainPercent.reduce((sum, share) => sum + share, 0);
  const wetter = (yearlyRainMm / table.yearlyRainMm) ** (1 - generator.rainPerWetDay.power);
  const turned = latitudeDeg < 0 ? sixMonthsOn : (values: readonly number[]) => values;
  return {
    rainMm: turned(rainPercent).map((share) => (yearlyRainMm * share) / total),
    wetDays: turned(wetDays).map((days, month) =>
      Math.min(0.9 * daysInMonth(2001, month + 1), days * wetter),
    ),
    tMaxC: turned(table.tMaxC),
    tMinC: turned(table.tMinC),
  };
}

function sixMonthsOn(values: readonly number[]): readonly number[] {
  return [...values.slice(6), ...values.slice(0, 6)];
}
