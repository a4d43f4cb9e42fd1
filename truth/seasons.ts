/** The engine as the scoreboard uses it: a scenario as a user would write it, every one of its seasons looked at. */
import { prepare, type Preparation } from "../src/answer/runs/prepare.ts";
import { readyRun } from "../src/answer/runs/readyRun.ts";
import { runAtRain } from "../src/answer/runs/ensemble.ts";
import { makeRunBuffers, type CaseAfterRun } from "../src/answer/runs/run.ts";
import { resolveScenario } from "../src/scenario/index.ts";
import type { DailyWeather } from "../src/weather/records/record.ts";

/** A scenario file as JSON, without its format and name. */
export type Written = Readonly<Record<string, unknown>>;

/** Text of the files a scenario names, by their names. */
export type Files = Readonly<Record<string, string>>;

export interface Season {
  /** In the order of the scenario. The arrays hold until the next season. */
  readonly cases: readonly CaseAfterRun[];
  readonly weather: DailyWeather;
  readonly run: number;
  readonly year: number;
}

/** Runs every season of a scenario and hands them over one by one. */
export async function eachSeason(
  written: Written,
  files: Files,
  look: (season: Season, preparation: Preparation) => void,
): Promise<void> {
  const scenario = await resolveScenario(
    { format: "rootfront-scenario/1", name: "a row of the scoreboard", ...written },
    {
      fileName: "scoreboard.json",
      readText: (path: string) => {
        const text = files[path];
        if (text === undefined) throw new Error(`the scoreboard has no file ${path}`);
        return text;
      },
    },
  );
  const preparation = prepare(scenario);
  const buffers = makeRunBuffers();
  const weather = preparation.weatherYears.weatherByTotal[0]!;
  preparation.yearByRun.forEach(({ year }, run) => {
    const cases = runAtRain(preparation, readyRun(preparation, run), 0, buffers);
    look({ cases, weather, run, year }, preparation);
  });
}

/** What `of` gives for every season of the first case. */
export async function bySeason<T>(
  written: Written,
  files: Files,
  of: (run: CaseAfterRun, season: Season) => T,
): Promise<T[]> {
  const found: T[] = [];
  await eachSeason(written, files, (season) => found.push(of(season.cases[0]!, season)));
  return found;
}

/** An ensemble in which the soil is as described in every run. */
export const noSpread: Written = {
  availableCapacitySpread: "0 %",
  deepWaterSpread: "0 %",
  deepUptakeSpread: "0 %",
  density: "usual",
};
