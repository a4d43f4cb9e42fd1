import { InvalidArgumentError, Option } from "commander";
import { usualBudget } from "../answer/sensitivity/budget.ts";
import { tryDate } from "../quantity/dates.ts";
import type { Units } from "../quantity/kinds.ts";
import {
  seedWithin,
  usualSeed,
  usualYears,
  yearsWithin,
  type WholeWithin,
} from "../scenario/fields/facts/limits.ts";
import { rainPatterns } from "../weather/generate/rainPatterns.ts";
import { maxGapDaysWithin, usualMaxGapDays } from "../weather/records/gapLimits.ts";
import {
  daysNotListed,
  weatherUnits,
  type DaysNotListed,
  type WeatherUnits,
} from "../weather/records/readers/options.ts";

/** What may stand on a command line after its command; undefined where it does not. */
export interface GivenFlags {
  readonly units: Units;
  readonly json?: true;
  readonly out?: string;
  readonly seed?: number;
  readonly years?: number;
  readonly rain?: string;
  readonly weatherUnits?: WeatherUnits;
  readonly weatherStation?: string;
  readonly year?: number;
  readonly run?: number;
  readonly latitude?: string;
  readonly elevation?: string;
  readonly daysNotListed?: DaysNotListed;
  /** Day numbers. */
  readonly from?: number;
  readonly to?: number;
  readonly maxGapDays?: number;
  readonly date?: number;
  readonly texture?: string;
  readonly crop?: string;
  readonly deeper?: string;
  readonly pattern?: string;
  readonly sowing?: string;
  readonly save?: string;
  readonly rotation?: string;
  readonly residue?: string;
  readonly moist?: string;
  readonly sort?: string;
  readonly only?: string;
  readonly skipGaps?: true;
  readonly csv?: true;
  readonly list?: true;
  readonly resume?: true;
  readonly brief?: true;
  readonly defaults?: true;
  /** Seasons to run at most. */
  readonly budget?: number;
}

interface Flag {
  /** As commander and the help write it. */
  readonly spec: string;
  readonly says: string;
  /** The only words it takes. */
  readonly words?: readonly string[];
  /** A whole number within. */
  readonly whole?: WholeWithin;
  /** A quantity: the units it may be written in, which it never goes without. */
  readonly unit?: string;
  readonly date?: true;
  readonly otherwise?: string;
}

/** The help names metric first. */
const [us, metric, tenths] = weatherUnits;

/** Help and validation come from this one table. Quantities are read later, with the scenario they belong to. */
const flags = {
  units: { spec: "--units <system>", says: "units of the results", words: ["us", "metric"], otherwise: "us" },
  json: { spec: "--json", says: "print the result as JSON" },
  out: {
    spec: "-o, --out <file>",
    says: 'write the result to a file, whole or not at all; "-" is standard output',
  },
  seed: {
    spec: "--seed <n>",
    says: `seed of all draws (left out: the file's, or ${usualSeed})`,
    whole: seedWithin,
  },
  years: {
    spec: "--years <n>",
    says: `weather years to run for each rainfall total (left out: the file's, or ${usualYears})`,
    whole: yearsWithin,
  },
  rain: {
    spec: "--rain <totals>",
    says: 'scale each year to a total: "13 in", "12..14 in" (low, middle and high)',
    unit: "13 in or 330 mm",
  },
  weatherUnits: {
    spec: "--weather-units <units>",
    says: "units of a weather file that does not state them",
    words: [metric, us, tenths],
  },
  weatherStation: {
    spec: "--station, --weather-station <id>",
    says: "station of a weather file that holds several",
  },
  year: { spec: "--year <n>", says: "take the first run sown in this year", whole: [1, 9999] },
  run: {
    spec: "--run <n>",
    says: "take this run, counted from 1; with neither --run nor --year, one near the middle",
    whole: yearsWithin,
  },
  latitude: {
    spec: "--latitude <degrees>",
    says: 'latitude of the site, such as "38.5 N" (compare: quick question only)',
  },
  elevation: {
    spec: "--elevation <height>",
    says: 'height of the site, such as "3300 ft" (compare: quick question only)',
    unit: "3300 ft or 1000 m",
  },
  daysNotListed: {
    spec: "--days-not-listed <what>",
    says: "what days without a line are: dry for a rain book that lists only days with rain",
    words: daysNotListed,
  },
  from: {
    spec: "--from <date>",
    says: "first day of the record to use, such as 1991-01-01 (left out: its first)",
    date: true,
  },
  to: {
    spec: "--to <date>",
    says: "last day of the record to use (left out: its last)",
    date: true,
  },
  maxGapDays: {
    spec: "--max-gap-days <n>",
    says: `longest gap that is filled for reference ET (left out: the scenario's, or ${usualMaxGapDays})`,
    whole: maxGapDaysWithin,
  },
  date: {
    spec: "--date <date>",
    says: "day of the season under way, such as 2024-07-03 (left out: the file's outlook.date, or the record's last day)",
    date: true,
  },
  texture: { spec: "--texture <class>", says: 'quick question: USDA texture class, such as "silt loam"' },
  crop: { spec: "--crop <crop>", says: 'quick question: the crop, such as "grain sorghum"' },
  deeper: {
    spec: "--deeper <depth>",
    says: 'quick question: how much deeper the roots go, such as "2 in"',
    unit: "2 in or 5 cm",
  },
  pattern: {
    spec: "--pattern <pattern>",
    says: "quick question: how rain falls over the year",
    words: rainPatterns,
  },
  sowing: { spec: "--sowing <date>", says: 'quick question: sowing date, such as "May 25"' },
  rotation: {
    spec: "--rotation <rotation>",
    says: 'quick question: years in a row, such as "every year", "wheat-corn-fallow" or "winter wheat, proso millet, fallow"',
  },
  residue: {
    spec: "--residue <cover>",
    says: 'quick question: ground under residue after harvest, such as "60 %"',
    unit: "60 %",
  },
  moist: {
    spec: "--moist <depth>",
    says: 'quick question: how deep a push probe found moist soil before sowing, such as "36 in"',
    unit: "36 in or 90 cm",
  },
  sort: {
    spec: "--sort <column>",
    says: 'order the rows by a column, least first; with a minus in front, most first: "--sort=-yield"',
  },
  only: {
    spec: "--only <columns>",
    says: 'print these columns alone, in this order: "sowing,case,yield"; of JSON by batch these fields: "scenario,differences.extraWaterUsedMm.p50"',
  },
  csv: { spec: "--csv", says: "print the result as a table, CSV, in the units of --units" },
  list: { spec: "--list", says: "each line is not a scenario but the path of a scenario file" },
  resume: {
    spec: "--resume",
    says: "go on where an earlier run ended: lines that the file of --out answers are left out",
  },
  skipGaps: {
    spec: "--skip-gaps",
    says: "leave out seasons that touch a gap of the record, counted and named, instead of refusing the record",
  },
  brief: { spec: "--brief", says: "print ten lines: dollars first where a price is given" },
  defaults: {
    spec: "--defaults",
    says: "list every default with its reason, not only the two that decide most",
  },
  budget: {
    spec: "--budget <n>",
    says: `seasons to run at most, of one case and year each (left out: ${usualBudget})`,
    whole: [1, 10_000_000],
  },
  save: {
    spec: "--save <file>",
    says: "quick question: write it as a scenario file to refine, which must not exist yet",
  },
} as const satisfies Record<keyof GivenFlags, Flag>;

export type FlagName = keyof typeof flags;

/** Flags of the quick question alone: beside a file they have nothing to say. */
export const quickFlags = [
  "texture",
  "crop",
  "deeper",
  "pattern",
  "sowing",
  "latitude",
  "elevation",
  "rotation",
  "residue",
  "moist",
  "save",
] as const satisfies readonly FlagName[];

/** A flag as commander knows it. Each takes one value: a second is refused, not taken in silence. */
export function flagOption(name: FlagName): Option {
  const { spec, says, words, whole, unit, date, otherwise }: Flag = flags[name];
  const option = new Option(spec, says);
  if (words !== undefined) option.choices(words);
  if (whole !== undefined) option.argParser((text) => wholeNumber(text, ...whole));
  if (unit !== undefined) option.argParser((text) => withUnit(text, unit));
  if (date === true) option.argParser(dayNumberOf);
  if (otherwise !== undefined) option.default(otherwise);
  if (!option.isBoolean()) refuseTwice(option);
  return option;
}

function refuseTwice(option: Option): void {
  const read = option.parseArg?.bind(option);
  let given = false;
  option.argParser((text: string, previous: unknown) => {
    if (given) throw new InvalidArgumentError("It was given before: give it once.");
    given = true;
    return read === undefined ? text : read(text, previous);
  });
}

/** `--weather-units` */
export function flagWritten(name: FlagName): string {
  return flagOption(name).long ?? name;
}

function wholeNumber(text: string, from: number, to: number): number {
  const value = /^\d+$/.test(text) ? Number(text) : NaN;
  if (value >= from && value <= to) return value;
  throw new InvalidArgumentError(`It is a whole number from ${from} to ${to}.`);
}

/** A quantity stays as it is written; what is only a number is refused here, as 2 may be inches or millimetres. */
function withUnit(text: string, example: string): string {
  if (/[^\d\s.,/+\u2212\u2026-]/.test(text) || !/\d/.test(text)) return text;
  throw new InvalidArgumentError(`Its unit is missing: ${example}.`);
}

function dayNumberOf(text: string): number {
  const read = tryDate(text);
  if (typeof read === "number") return read;
  throw new InvalidArgumentError(`It is ${read.expected}: ${read.mend}.`);
}
