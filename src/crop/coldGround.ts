import type { DailyWeather } from "../weather/records/record.ts";
import { meanOfLastWeek } from "./dormancy.ts";

/**
 * Ground in frosty weather gives off little, wet or dry: it is frozen, frosted or under patchy snow much of the time. The limit
 * holds for evaporation and transpiration together.
 * Source: [Allen et al. 1998, FAO-56] ch. 11, p. 209 (read): coefficient about 0.25 with frosts over soil that is not frozen
 * (Wright 1993). Taking it as an upper limit, and for frosts a week whose nights are below 0 C in the mean, is ours.
 */
const coldKcMax = 0.25;

/** Whether the nights of the last week brought frost. Never without temperatures. */
export function hasFrosts(weather: DailyWeather, index: number): boolean {
  return weather.hasTemperature && meanOfLastWeek(weather.tMinC, index) < 0;
}

/** Kcmax in frosty weather: never above what it would be otherwise, never below Kcb + 0.05 (FAO-56 eq. 72). */
export function coldUpperCoefficient(kcMax: number, kcb: number): number {
  return Math.min(kcMax, Math.max(coldKcMax, kcb + 0.05));
}
