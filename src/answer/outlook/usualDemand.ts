import type { CropCourse } from "../../crop/course.ts";
import type { DailyWeather } from "../../weather/records/record.ts";

/**
 * What a fully watered crop would transpire on each day after the last one known: Kcb x reference ET of the crop's own course,
 * in the middle of the other years; 0 in those in which it is ripe by then. FAO-56 eq. 69 without its evaporation.
 *
 * @returns mm, indexed by days after the last known one, 0 = the next
 */
export function usualDemand(
  years: readonly { readonly course: CropCourse; readonly weather: DailyWeather }[],
  firstIndex: number,
  lastDay: number,
): Float64Array {
  const longest = Math.max(0, ...years.map(({ course }) => course.maturityDay - lastDay));
  const demandMm = new Float64Array(longest);
  for (const { course, weather } of years)
    for (let day = lastDay + 1; day <= course.maturityDay; day++)
      demandMm[day - lastDay - 1]! +=
        (course.kcbByDay[day]! * weather.et0Mm[firstIndex + day]!) / years.length;
  return demandMm;
}

/**
 * Whole days for which so much water meets a demand.
 *
 * @returns null where it lasts until the crop is ripe
 * @example daysItLasts(10, Float64Array.of(4, 4, 4)) // 2
 */
export function daysItLasts(availableMm: number, demandMm: Float64Array): number | null {
  let left = availableMm;
  for (let day = 0; day < demandMm.length; day++) {
    left -= demandMm[day]!;
    if (left < 0) return day;
  }
  return null;
}
