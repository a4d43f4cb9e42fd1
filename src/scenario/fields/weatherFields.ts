import { sayQuantity } from "../../quantity/index.ts";
import { choice, date, faultAt, group, list, quantity, rainTotals, text, wholeNumber } from "./fields.ts";
import { rainPatterns } from "../../weather/generate/rainPatterns.ts";
import { maxGapDaysWithin, usualMaxGapDays } from "../../weather/records/gapLimits.ts";
import { daysNotListed, weatherUnits } from "../../weather/records/readers/options.ts";
import { withDefault } from "./facts/withDefault.ts";

/** The weather part of a scenario file. */

const twelve = { atLeast: 12, atMost: 12 };
const air = { from: -60, to: 60, says: "-76 to 140 F (-60 to 60 C)" };

const normalsFields = group(
  {
    rain: list(
      quantity("rain", {
        means: "Rain of the month",
        within: { from: 0, to: 2006.6, says: "0 to 79 in (2000 mm)" },
      }),
      "Mean rain of each month, January first. Needed where there is no `record`; beside one it is not used",
      twelve,
    ).optional(),
    wetDays: list(
      quantity("duration", {
        means: "Days of the month with 0.01 in (0.25 mm) or more",
        within: { from: 0, to: 31, says: "0 to 31 days" },
      }),
      "Days with rain of each month, January first. Left out: estimated from the rain",
      twelve,
    ).optional(),
    tMax: list(
      quantity("temperature", { means: "Mean daily maximum", within: air }),
      "Mean daily maximum of each month, January first",
      twelve,
    ),
    tMin: list(
      quantity("temperature", { means: "Mean daily minimum", within: air }),
      "Mean daily minimum of each month, January first",
      twelve,
    ),
  },
  "Monthly normals: years are generated from them; beside a record without temperatures, `tMax` and `tMin` stand in",
).superRefine(({ tMax, tMin }, context) => {
  tMin.forEach((low, month) => {
    if (low <= (tMax[month] ?? low)) return;
    context.addIssue(
      faultAt(
        ["tMin", month],
        both(low),
        `at most that month's tMax, ${both(tMax[month] ?? low)}`,
        "swap or correct the two",
      ),
    );
  });
});

function both(airC: number): string {
  return `${sayQuantity(airC, "temperature", "us")} (${sayQuantity(airC, "temperature", "metric")})`;
}

export const rainTotalMeanings = ["each year", "long-run mean"] as const;

export const weatherFields = group(
  {
    record: text("Daily station record, relative to this file", 300).optional(),
    station: text("The station to take from a file of several, by its name or identifier").optional(),
    units: choice(weatherUnits, "Units of a record that does not state them").optional(),
    daysNotListed: choice(
      daysNotListed,
      "What days are that the record has no line for: `dry` for a rain book that lists only days with rain, taken to cover `from` to `to`. Left out: missing",
    ).optional(),
    from: date("First day to use of the record, such as 1991-01-01. Left out: its first").optional(),
    to: date("Last day to use of the record. Left out: its last").optional(),
    maxGapDays: withDefault(
      wholeNumber("Longest gap that is filled; a longer one is an error", ...maxGapDaysWithin),
      usualMaxGapDays,
      "longer gaps hide storms; our choice",
    ),
    monthlyNormals: normalsFields.optional(),
    pattern: choice(
      rainPatterns,
      "How `annualRain` falls over the year where there are neither record nor normals",
    ).optional(),
    annualRain: rainTotals(
      'Total of the year, of every year or as their mean (see `rainTotalIs`): "13 in", a list, or "12..14 in" for its low end, middle and high end; bare numbers in mm. Left out: years as they are',
    ).optional(),
    seasonRain: rainTotals("The same from sowing to maturity; give one of the two").optional(),
    rainTotalIs: choice(
      rainTotalMeanings,
      "What a total is: `long-run mean`, about which the years vary as they do, or `each year`, to which every year is scaled. Left out: the long-run mean with a rotation, else each year",
    ).optional(),
    referenceEt: withDefault(
      choice(["penman-monteith", "hargreaves"], "How reference ET is worked out (FAO-56)"),
      "penman-monteith",
      "FAO-56's standard, with its rules for missing data",
    ),
  },
  "Weather: `record`, or `monthlyNormals`, or `pattern` with `annualRain`",
);
