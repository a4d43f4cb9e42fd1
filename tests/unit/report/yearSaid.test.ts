import { expect, test } from "vitest";
import { runSaid } from "../../../src/report/tables/runSaid.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { generatedYear, yearBriefly, yearSaid } from "../../../src/report/tables/yearSaid.ts";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import { sayDay } from "../../../web/pictures/pit/pitWallReading.ts";
import { seasonsTable } from "../../../web/views/seasons/table.ts";

test("a generated year is counted, a real one is its number", () => {
  expect(generatedYear(2001)).toBe(1);
  expect([yearSaid(2012, true), yearBriefly(2012, true)]).toEqual(["generated year 12", "year 12"]);
  expect([yearSaid(1931, false), yearBriefly(1931, false)]).toEqual(["1931", "1931"]);
});

test("in a date, a run and a table it reads alike", () => {
  expect(sayDay(dayNumber(2112, 7, 16), true)).toBe("16 Jul, generated year 112");
  expect(sayDay(dayNumber(1931, 7, 16), false)).toBe("16 Jul 1931");
  expect(runSaid(3, { year: 2012, isGenerated: true }, null, "us")).toBe(
    "run 4: sown in generated year 12 (2012), rain as it came",
  );
  expect(runSaid(3, { year: 1931, isGenerated: false }, null, "us")).toContain("sown in 1931, ");
  const words = { names: [], yieldUnit: "bu/ac", isGenerated: true, shown: shownIn("us") };
  const row = {
    run: 0,
    year: 2012,
    runsOfYear: 1,
    seasonRainMm: 200,
    annualRainMm: 300,
    extraWaterMm: null,
    extraYield: null,
    cases: [],
  };
  const { head, rows } = seasonsTable([row], words);
  expect([head[0], rows[0]![0]]).toEqual(["Generated year", "12"]);
});
