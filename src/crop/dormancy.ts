import type { DailyWeather } from "../weather/records/record.ts";

/** Days of which the mean decides, so that one warm afternoon in January wakes nothing. Ours. */
const daysLookedBack = 7;

/**
 * Whether a winter crop sleeps today: the mean temperature of the last seven days (of fewer where the record begins)
 * is below its threshold. Never without temperatures, nor where the threshold is null.
 * Source: FAO-56 ch. 11 gives a low coefficient for dormant cover; about 5 C is common practice, the seven days are ours.
 */
export function isAsleep(weather: DailyWeather, index: number, dormantBelowC: number | null): boolean {
  if (dormantBelowC === null || !weather.hasTemperature) return false;
  return meanOfLastWeek(weather.tMeanC, index) < dormantBelowC;
}

/** Mean of a day and the six before it, of fewer where the record begins. */
export function meanOfLastWeek(valueByDay: Float64Array, index: number): number {
  const from = Math.max(0, index - daysLookedBack + 1);
  let sum = 0;
  for (let i = from; i <= index; i++) sum += valueByDay[i]!;
  return sum / (index - from + 1);
}
