import { expect, test } from "vitest";
import { dayNumber, isoDate } from "../../../src/quantity/calendar.ts";
import { casesOf } from "../../support/laws.ts";
import { complaintsOf, read } from "./readersFixture.ts";

/** MB of text, of the 20 that a file may have about. */
const megabytes = casesOf({ whole: 20, usually: 6 });

/** Days of 50 years from 1970, or their first part, as text. */
const dates = Array.from({ length: Math.round((18_262 * megabytes) / 20) }, (_, i) =>
  isoDate(dayNumber(1970, 1, 1) + i),
);

/** 16 invented stations, quoted as the agency quotes them. */
function manyStations(): string {
  const rows = ['"STATION","NAME","DATE","AWND","PRCP","SNOW","TMAX","TMIN"'];
  for (let station = 1; station <= 16; station++) {
    for (const date of dates)
      rows.push(`"XXC${station}","INVENTED, KS US","${date}","5.0","0.10","0.0","${station + 60}","40"`);
  }
  return rows.join("\n");
}

test(`${megabytes} MB of several stations: one is read, whole`, () => {
  const text = manyStations();
  expect(text.length).toBeGreaterThan(0.95e6 * megabytes);
  const record = read(text, { units: "us", station: "XXC16" });
  expect(record.days).toBe(dates.length);
  expect(record.rainMm.every((rain) => Math.abs(rain - 2.54) < 1e-9)).toBe(true);
  expect(record.tMaxC!.every((tMax) => Math.abs(tMax - ((76 - 32) * 5) / 9) < 1e-9)).toBe(true);
  expect(complaintsOf(() => read(text, { units: "us" }))[0]).toMatch(
    /found 16: .*; and 4 more; set weather.station/,
  );
});

test(`${megabytes} MB of faults stay a line and a count`, () => {
  const text = `date,rain_mm\n${"2020-01-01,wet\n".repeat(70_000 * megabytes)}`;
  const lines = complaintsOf(() => read(text));
  expect(lines).toHaveLength(1);
  expect(lines[0]).toContain(`and ${70_000 * megabytes - 1} more like it`);
});

test(`${megabytes} MB in one line of commas are refused`, () => {
  const [line] = complaintsOf(() => read(",".repeat(1_000_000 * megabytes)));
  expect(line!.length).toBeLessThan(700);
  expect(
    complaintsOf(() => read(`date,rain_mm\n2020-01-01${",1".repeat(500_000 * megabytes)}\n`))[0],
  ).toMatch(/^file line 2: expected a line of at most 100000 characters/);
});
