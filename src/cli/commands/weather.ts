import { dirname, resolve } from "node:path";
import { weatherAnswer, type Place } from "../../answer/comparison/weatherAnswer.ts";
import { refuse } from "../../problem.ts";
import {
  latitudeWithin,
  loadUnits,
  mostLatitudeDeg,
  readQuantity,
  tryDate,
  tryLatitude,
} from "../../quantity/index.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { weatherText } from "../../report/sentences/weatherText.ts";
import { elevationRange } from "../../scenario/fields/elevationRange.ts";
import { readJson } from "../../scenario/read/readJson.ts";
import { isMaxGapDays } from "../../weather/records/gapLimits.ts";
import type { GapOptions } from "../../weather/records/gaps.ts";
import { readWeather } from "../../weather/records/readers/index.ts";
import { weatherUnits, type WeatherUnits } from "../../weather/records/readers/options.ts";
import type { WeatherRecord } from "../../weather/records/record.ts";
import type { Context, RunCommand } from "../context.ts";
import type { GivenFlags } from "../flags.ts";
import { namingFlags } from "../overrides.ts";
import { readInput } from "../readFile.ts";
import { fileSaid } from "../standardInput.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `weather FILE`: what a record holds; of a scenario file, the record that it names, and the days of it that it uses. */
export const run: RunCommand = async (context, file, flags) => {
  refuseUnwritable(context.cwd, flags.out);
  const { record, use } = readRecord(context, file ?? "", flags);
  const site = await siteOf(record, flags);
  const answer = underFlags(flags, () => weatherAnswer(record, site, use));
  handOver(context, flags.json ? jsonText(answer) : weatherText(answer, flags.units), flags.out);
};

/** A record, and what of it is used. */
interface RecordInUse {
  readonly record: WeatherRecord;
  readonly use: GapOptions;
}

function readRecord(context: Context, file: string, flags: GivenFlags): RecordInUse {
  const { cwd } = context;
  const { from, to, maxGapDays } = flags;
  const text = readInput(context, flags, cwd, file);
  if (!text.trimStart().startsWith("{")) {
    const { weatherStation: station, weatherUnits: units } = flags;
    return {
      record: readWeather(text, { fileName: fileSaid(file), station, units }),
      use: { from, to, maxGapDays },
    };
  }
  const raw = readJson(text, fileSaid(file));
  const weather = textsIn(raw, "weather");
  const path = weather["record"];
  if (path === undefined) {
    return refuse(
      `${fileSaid(file)} weather.record`,
      "the path of a weather record",
      undefined,
      "name one, or call this on the record itself",
    );
  }
  const folder = dirname(resolve(cwd, file));
  const { maxGapDays: gap } = groupIn(raw, "weather");
  return {
    record: readWeather(readInput(context, flags, folder, path, "weather.record"), {
      fileName: fileSaid(path),
      station: flags.weatherStation ?? weather["station"],
      units: flags.weatherUnits ?? knownUnits(weather["units"]),
    }),
    use: {
      from: from ?? dayIn(weather["from"]),
      to: to ?? dayIn(weather["to"]),
      maxGapDays: maxGapDays ?? (isMaxGapDays(gap) ? gap : undefined),
    },
  };
}

/** What is wrong with the days is told of the flags where they gave them. */
function underFlags<T>({ from, to }: GivenFlags, act: () => T): T {
  const given = [
    { flag: "--from", field: ["weather", "from"] as const, value: from },
    { flag: "--to", field: ["weather", "to"] as const, value: to },
  ].filter(({ value }) => value !== undefined);
  try {
    return act();
  } catch (error) {
    throw namingFlags(error, given);
  }
}

function dayIn(text: string | undefined): number | undefined {
  const read = tryDate(text);
  return typeof read === "number" ? read : undefined;
}

function groupIn(raw: unknown, group: string): Record<string, unknown> {
  const found = typeof raw === "object" && raw !== null ? (raw as Record<string, unknown>)[group] : undefined;
  return typeof found === "object" && found !== null ? (found as Record<string, unknown>) : {};
}

/** The texts of one group of a scenario, unread; whether they are right is for `check`. */
function textsIn(raw: unknown, group: string): Record<string, string> {
  return Object.fromEntries(
    Object.entries(groupIn(raw, group)).filter(
      (entry): entry is [string, string] => typeof entry[1] === "string",
    ),
  );
}

function knownUnits(text: string | undefined): WeatherUnits | undefined {
  return weatherUnits.find((units) => units === text);
}

/** Where the station lies: as the flags say, else as the file does; null where neither tells the latitude. */
async function siteOf(
  { station }: WeatherRecord,
  { latitude, elevation }: GivenFlags,
): Promise<Place | null> {
  const latitudeDeg = latitude === undefined ? station.latitudeDeg : latitudeOf(latitude);
  let { elevationM } = station;
  if (elevation !== undefined) {
    await loadUnits();
    elevationM = elevationOf(elevation);
  }
  return latitudeDeg === null ? null : { latitudeDeg, elevationM, setting: "inland" };
}

function elevationOf(text: string): number {
  const read = readQuantity(text, "elevation", "--elevation");
  const { from, to, says } = elevationRange;
  if (read >= from && read <= to) return read;
  return refuse("--elevation", says, text, "check the number and its unit");
}

function latitudeOf(text: string): number {
  const read = tryLatitude(text);
  if (typeof read === "number" && Math.abs(read) <= mostLatitudeDeg) return read;
  return refuse("--latitude", `${latitudeWithin}, such as "38.5 N"`, text, "check the number");
}
