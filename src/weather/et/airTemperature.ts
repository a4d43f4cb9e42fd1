import { dayOfYear, yearOf } from "../../quantity/calendar.ts";
import { checkMonthlyAir, overDays, yearCourse } from "../generate/normals.ts";
import type { MonthlyAir, WeatherRecord } from "../records/record.ts";

/** Temperatures of every day of a record. */
export interface Air {
  readonly tMaxC: Float64Array;
  readonly tMinC: Float64Array;
  /** Mean of the two; FAO-56 eq. 9. */
  readonly tMeanC: Float64Array;
  readonly fromNormals: boolean;
}

/** The record's own temperatures, else the smooth course of the normals, the same every year; null where there is neither. */
export function airOf(record: WeatherRecord, normals: MonthlyAir | null): Air | null {
  const { tMaxC, tMinC, firstDay, days } = record;
  if (tMaxC && tMinC) return { tMaxC, tMinC, tMeanC: meanOf(tMaxC, tMinC), fromNormals: false };
  if (!normals) return null;
  checkMonthlyAir(normals);
  const over = (monthly: readonly number[]) =>
    overDays(yearCourse(monthly), yearOf(firstDay), dayOfYear(firstDay), days);
  const [high, low] = [over(normals.tMaxC), over(normals.tMinC)];
  return { tMaxC: high, tMinC: low, tMeanC: meanOf(high, low), fromNormals: true };
}

function meanOf(tMaxC: Float64Array, tMinC: Float64Array): Float64Array {
  const means = new Float64Array(tMaxC.length);
  for (let day = 0; day < means.length; day++) means[day] = (tMaxC[day]! + tMinC[day]!) / 2;
  return means;
}

export function temperaturesInWords(air: Air): string {
  return air.fromNormals ? "the monthly normals' temperatures" : "daily temperatures";
}
