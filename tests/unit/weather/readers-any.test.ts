import fc from "fast-check";
import { expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { elementNames, elements } from "../../../src/weather/records/readers/element.ts";
import { readWeather, type WeatherUnits } from "../../../src/weather/records/readers/index.ts";
import { fixture } from "./readersFixture.ts";

const files = [
  "invented-ghcn-daily.dly",
  "invented-ghcn-summaries-two-stations.csv",
  "invented-ghcn-summaries-us.csv",
  "invented-gridmet.csv",
  "invented-plain-unit-row.csv",
  "invented-plain.csv",
  "invented-power-doy.csv",
  "invented-power-modydy.csv",
  "invented-uscrn-daily01.txt",
  "invented-uscrn.csv",
].map(fixture);

/** A text with some stretches of it replaced by others, moved copies of its own included. */
const damaged = fc
  .tuple(
    fc.constantFrom(...files),
    fc.array(
      fc.record({
        at: fc.nat(3000),
        length: fc.nat(40),
        text: fc.oneof(
          fc.constantFrom(
            "",
            ",",
            ";",
            "\n",
            "\t",
            '"',
            '""',
            "-9999",
            "NaN",
            "1e999",
            "\u0000",
            "\ufeff",
            "#",
            "T",
            "9",
          ),
          fc.string({ maxLength: 5 }),
          fc.nat(3000),
        ),
      }),
      { maxLength: 4 },
    ),
  )
  .map(([file, cuts]) =>
    cuts.reduce((text, { at, length, text: other }) => {
      const from = at % (text.length + 1);
      const put =
        typeof other === "number" ? text.slice(other % text.length, (other % text.length) + 60) : other;
      return text.slice(0, from) + put + text.slice(from + length);
    }, file),
  );

/** The record's figures outside their limits; null where the text was refused in plain lines. */
function outside(text: string, units: WeatherUnits | undefined): number | null {
  try {
    const record = readWeather(text, { fileName: "file", units, station: undefined });
    const odd = elementNames.flatMap((element) => {
      const { min, max } = elements[element];
      return Array.from(record[element] ?? []).filter(
        (value) => !Number.isNaN(value) && !(value >= min && value <= max),
      );
    });
    return odd.length;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const long = error.message.split("\n").filter((line) => line.length > 900 || line.includes("undefined"));
    return long.length === 0 && error.problems.length <= 13 ? null : -1;
  }
}

const orRefused = (result: number | null) => result === null || result === 0;

test("a damaged file is a record within the limits, or refused in at most 13 lines", () => {
  const units = fc.constantFrom(undefined, "metric" as const, "us" as const, "tenths" as const);
  fc.assert(
    fc.property(damaged, units, (text, unit) => orRefused(outside(text, unit))),
    { numRuns: 3000, seed: 1 },
  );
});

test("any text at all is a record within the limits, or refused in at most 13 lines", () => {
  const text = fc.oneof(fc.string({ unit: "binary", maxLength: 300 }), fc.string({ maxLength: 300 }));
  fc.assert(
    fc.property(text, (any) => orRefused(outside(any, undefined))),
    { numRuns: 1000, seed: 1 },
  );
  fc.assert(
    fc.property(text, (any) => orRefused(outside(`date,rain_mm\n2020-01-01,${any}`, undefined))),
    {
      numRuns: 1000,
      seed: 1,
    },
  );
});

test("whole, all are read but the two whose station or units are left open", () => {
  expect(files.map((text) => outside(text, "metric"))).toEqual([0, null, null, 0, 0, 0, 0, 0, 0, 0]);
});
