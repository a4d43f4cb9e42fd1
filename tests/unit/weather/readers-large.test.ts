import { expect, test } from "vitest";
import { dayNumber, isoDate } from "../../../src/quantity/calendar.ts";
import { complaintsOf, read } from "./readersFixture.ts";

/** Days of 50 years from 1970, as text. */
const dates = Array.from({ length: 18_262 }, (_, i) => isoDate(dayNumber(1970, 1, 1) + i));

/** About 20 MB: 16 invented stations of 50 years, quoted as the agency quotes them. */
function manyStations(): string {
  const rows = ['"STATION","NAME","DATE","AWND","PRCP","SNOW","TMAX","TMIN"'];
  for (let station = 1; station <= 16; station++) {
    for (const date of dates)
      rows.push(`"XXC${station}","INVENTED, KS US","${date}","5.0","0.10","0.0","${station + 60}","40"`);
  }
  return rows.join("\n");
}

test("20 MB of several stations: one is read, whole", () => {
  const text = manyStations();
  expect(text.length).toBeGreaterThan(19e6);
  const record = read(text, { units: "us", station: "XXC16" });
  expect(record.days).toBe(dates.length);
  expect(record.rainMm.every((rain) => Math.abs(rain - 2.54) < 1e-9)).toBe(true);
  expect(record.tMaxC!.every((tMax) => Math.abs(tMax - ((76 - 32) * 5) / 9) < 1e-9)).toBe(true);
  expect(complaintsOf(() => read(text, { units: "us" }))[0]).toMatch(
    /found 16: .*; and 4 more; set weather.station/,
  );
});

test("20 MB of faults stay a line and a count", () => {
  const text = `date,rain_mm\n${"2020-01-01,wet\n".repeat(1_400_000)}`;
  const lines = complaintsOf(() => read(text));
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/and 1399999 more like it/);
});

test("20 MB in one line of commas are refused", () => {
  const [line] = complaintsOf(() => read(",".repeat(20_000_000)));
  expect(line!.length).toBeLessThan(700);
  expect(complaintsOf(() => read(`date,rain_mm\n2020-01-01${",1".repeat(10_000_000)}\n`))[0]).toMatch(
    /^file line 2: expected a line of at most 100000 characters/,
  );
});
