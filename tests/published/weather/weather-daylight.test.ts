/**
 * Day length by FAO-56 eq. 34 (read) against a general sun-position library (suncalc 2, after Meeus), every day of a year.
 *
 * Eq. 34 takes the sun's centre at a true altitude of 0, so the library is asked for that, not for the sunrise
 * people see: refraction and the sun's radius (0.833 degrees) would add 6 to 13 minutes.
 * Tolerance: eq. 24 draws declination as one sine, which meets the equator 2.5 days before the September equinox;
 * so it is up to 1.25 degrees off in October. One degree of declination is 8 minutes x tan(latitude). Near the poles that
 * grows without bound: 60 degrees is the last row.
 */
import { addTime, getTimes } from "suncalc";
import { describe, expect, test } from "vitest";
import { daylightHours } from "../../../src/weather/et/sun.ts";

addTime(0, "centreUp", "centreDown");

const declinationOffDeg = 1.25;
const minutesPerDegree = (latitudeDeg: number) => 8 * Math.tan((Math.abs(latitudeDeg) * Math.PI) / 180);

describe("day length against suncalc, minutes", () => {
  test.each([0, 15, 30, 36.6, 40, 45, 50, 55, 60, -20, -35, -50])("latitude %d", (latitudeDeg) => {
    const differences = daysOf2023().map(
      (date, index) => 60 * (daylightHours(latitudeDeg, index + 1) - hoursUp(date, latitudeDeg)),
    );
    expect(differences).toHaveLength(365);
    const worst = Math.max(...differences.map(Math.abs));
    const mean = differences.reduce((sum, each) => sum + each, 0) / 365;
    const tolerance = 0.5 + declinationOffDeg * minutesPerDegree(latitudeDeg);
    expect(worst).toBeLessThanOrEqual(tolerance);
    expect(Math.abs(mean)).toBeLessThanOrEqual(tolerance / 2);
  });
});

function daysOf2023(): Date[] {
  return Array.from({ length: 365 }, (_, index) => new Date(Date.UTC(2023, 0, 1 + index, 12)));
}

function hoursUp(date: Date, latitudeDeg: number): number {
  const { centreUp, centreDown } = getTimes(date, latitudeDeg, 0);
  if (!(centreUp instanceof Date && centreDown instanceof Date))
    throw new Error("no sunrise at this latitude");
  return (centreDown.getTime() - centreUp.getTime()) / 3_600_000;
}
