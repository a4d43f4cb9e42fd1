import { usualSensitivityYears } from "../answer/sensitivity/budget.ts";
import type { RunCommand } from "./context.ts";
import { quickFlags, type FlagName } from "./flags.ts";

export interface Command {
  readonly name: string;
  readonly summary: string;
  /** The one thing it works on, as commander writes it; null = none. */
  readonly argument: string | null;
  readonly argumentSays: string;
  readonly flags: readonly FlagName[];
  /** Fetches the command's code when it is called, not before. */
  readonly load: () => Promise<{ readonly run: RunCommand }>;
  readonly example: string;
}

const results = ["units", "json", "out"] as const;
const record = ["weatherUnits", "weatherStation"] as const;

export const commands: readonly Command[] = [
  {
    name: "compare",
    summary: "how much the deeper roots matter: water, yield, and how sure that is",
    argument: "[file]",
    argumentSays:
      "scenario file; left out, a quick question: it needs --texture, --rain, --crop and --deeper",
    flags: [...results, "csv", "brief", "defaults", "seed", "years", "rain", ...record, ...quickFlags],
    load: () => import("./commands/compare.ts"),
    example:
      'rootfront compare --texture "silt loam" --rain "12..14 in" \\\n    --crop "grain sorghum" --deeper "2 in"',
  },
  {
    name: "evidence",
    summary: "what was dug, sampled, counted and harvested; how sure; how much of it can be water",
    argument: "<file>",
    argumentSays: "scenario file",
    flags: [...results, "seed", "years", "rain", ...record],
    load: () => import("./commands/evidence.ts"),
    example: "rootfront evidence my-field.json",
  },
  {
    name: "sensitivity",
    summary: "what moves the answer most, and so what to measure first",
    argument: "<file>",
    argumentSays: `scenario file of two cases or more; without --years, up to ${usualSensitivityYears} of its years are run`,
    flags: [...results, "csv", "budget", "seed", "years", "rain", ...record],
    load: () => import("./commands/sensitivity.ts"),
    example: "rootfront sensitivity my-field.json --budget 100000",
  },
  {
    name: "outlook",
    summary: "the season under way: what the roots have in reach, how long it lasts, how it may end",
    argument: "<file>",
    argumentSays: "scenario file with a station record",
    flags: [...results, "date", "seed", "years", ...record],
    load: () => import("./commands/outlook.ts"),
    example: "rootfront outlook my-field.json --date 2024-07-03",
  },
  {
    name: "ledger",
    summary: "one run, day by day, as CSV: every flux, storage by layer, root front, stress, residual",
    argument: "<file>",
    argumentSays: "scenario file",
    flags: [...results, "year", "run", "seed", "years", "rain", ...record],
    load: () => import("./commands/ledger.ts"),
    example: "rootfront ledger my-field.json --year 2012 --out 2012.csv",
  },
  {
    name: "seasons",
    summary: "a row a year and case, as CSV: dates, rain, water at sowing, what became of it, yield",
    argument: "<file>",
    argumentSays: "scenario file; with a rotation its chains of years, else its runs",
    flags: [...results, "sort", "only", "skipGaps", "seed", "years", "rain", ...record],
    load: () => import("./commands/seasons.ts"),
    example:
      'rootfront seasons my-field.json --sort=-extra_yield \\\n    --only "sowing,case,season_rain,extra_yield"',
  },
  {
    name: "batch",
    summary: "many scenarios: one a line in, the answer of compare --json a line out, in their order",
    argument: "[file]",
    argumentSays: "file with a scenario a line, as JSON; left out, standard input",
    flags: [...results, "csv", "only", "list", "resume", "seed", "years", "rain", ...record],
    load: () => import("./commands/batch.ts"),
    example: "cat fields.ndjson | rootfront batch --out answers.ndjson --resume",
  },
  {
    name: "report",
    summary: "the answer as one web page to print, with soil, roots, sources and the scenario in it",
    argument: "<file>",
    argumentSays: "scenario file",
    flags: [...results, "seed", "years", "rain", ...record],
    load: () => import("./commands/report.ts"),
    example: "rootfront report my-field.json --out my-field.html",
  },
  {
    name: "weather",
    summary: "what a weather record holds: years, gaps, totals, reference ET",
    argument: "<file>",
    argumentSays: "weather file, or a scenario file that names one",
    flags: [...results, ...record, "daysNotListed", "latitude", "elevation", "from", "to", "maxGapDays"],
    load: () => import("./commands/weather.ts"),
    example: "rootfront weather station.csv --weather-units us",
  },
  {
    name: "check",
    summary: "check a scenario and say it in plain words, with every default it will use",
    argument: "<file>",
    argumentSays: "scenario file",
    flags: [...results, ...record],
    load: () => import("./commands/check.ts"),
    example: "rootfront check my-field.json",
  },
  {
    name: "new",
    summary: "write a starter scenario to change",
    argument: "[file]",
    argumentSays:
      "file to write, which must not exist yet (--json then prints its name as JSON); left out, print the scenario, which is JSON as it is",
    flags: ["json"],
    load: () => import("./commands/new.ts"),
    example: "rootfront new my-field.json",
  },
];
