import { dayNumber } from "../../../src/quantity/calendar.ts";
import {
  emptyRecord,
  type DailyWeather,
  type MonthlyNormals,
  type Site,
  type WeatherRecord,
} from "../../../src/weather/records/record.ts";

/** An invented inland site on the plains. */
export const plains: Site = { latitudeDeg: 39, elevationM: 1100, setting: "inland" };

/** Invented normals: summer rain, cold winters. */
export const plainsNormals: MonthlyNormals = {
  rainMm: [7, 8, 20, 31, 49, 53, 58, 48, 27, 20, 12, 7],
  wetDays: [3, 3, 5, 6, 8, 7, 7, 6, 4, 4, 3, 3],
  tMaxC: [5, 8, 13, 18, 23.5, 29.5, 33, 31.5, 27, 20, 12, 6],
  tMinC: [-9, -7, -3, 1.5, 7.5, 13, 16, 15, 9.5, 2.5, -4, -8.5],
};

/** A record of so many days from a date, holding nothing but rain unless more is given. */
export function recordFrom(
  [year, month, day]: readonly [number, number, number],
  days: number,
  more: Partial<WeatherRecord> = {},
): WeatherRecord {
  const station = { id: "X", name: "invented", format: "test", latitudeDeg: null, elevationM: null };
  return {
    ...emptyRecord(dayNumber(year, month, day), days, station),
    rainMm: new Float64Array(days),
    ...more,
  };
}

export function every(days: number, value: number): Float64Array {
  return new Float64Array(days).fill(value);
}

/** Weather of which only the rain matters. */
export function weatherWithRain(
  [year, month, day]: readonly [number, number, number],
  rainMm: Float64Array,
): DailyWeather {
  const days = rainMm.length;
  return {
    firstDay: dayNumber(year, month, day),
    days,
    rainMm,
    tMaxC: every(days, 20),
    tMinC: every(days, 10),
    tMeanC: every(days, 15),
    et0Mm: every(days, 4),
    rhMinPercent: every(days, 40),
    wind2mMPerS: every(days, 2),
    hasTemperature: true,
    referenceEt: "test",
    notes: ["before"],
  };
}
