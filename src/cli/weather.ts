import { dirname, resolve } from "node:path";
import { weatherAnswer, type Place } from "../answer/weatherAnswer.ts";
import { refuse } from "../problem.ts";
import { loadUnits, readQuantity, tryLatitude } from "../quantity/index.ts";
import { jsonText } from "../report/roundForPrint.ts";
import { weatherText } from "../report/weatherText.ts";
import { readJson } from "../scenario/readJson.ts";
import { readWeather } from "../weather/readers/index.ts";
import type { WeatherRecord } from "../weather/record.ts";
import type { Act } from "./commands.ts";
import type { Context } from "./context.ts";
import type { GivenFlags } from "./flags.ts";
import { readText } from "./readFile.ts";
import { handOver, refuseUnwritable } from "./writeFile.ts";

/** `weather FILE`: what a record holds; of a scenario file, the record that it names. */
export const act: Act = async (context, file, flags) => {
  refuseUnwritable(context.cwd, flags.out);
  const record = readRecord(context, file ?? "", flags);
  const answer = weatherAnswer(record, await siteOf(record, flags));
  handOver(context, flags.json ? jsonText(answer) : weatherText(answer, flags.units), flags.out);
};

function readRecord({ cwd }: Context, file: string, flags: GivenFlags): WeatherRecord {
  const text = readText(cwd, file);
  if (!text.trimStart().startsWith("{")) {
    return readWeather(text, { fileName: file, station: flags.weatherStation, units: flags.weatherUnits });
  }
  const weather = textsIn(readJson(text, file), "weather");
  const path = weather["record"];
  if (path === undefined) {
    return refuse(
      `${file} weather.record`,
      "the path of a weather record",
      undefined,
      "name one, or call this on the record itself",
    );
  }
  return readWeather(readText(dirname(resolve(cwd, file)), path, "weather.record"), {
    fileName: path,
    station: flags.weatherStation ?? weather["station"],
    units: flags.weatherUnits ?? knownUnits(weather["units"]),
  });
}

/** The texts of one group of a scenario, unread; whether they are right is for `check`. */
function textsIn(raw: unknown, group: string): Record<string, string> {
  const found = typeof raw === "object" && raw !== null ? (raw as Record<string, unknown>)[group] : undefined;
  if (typeof found !== "object" || found === null) return {};
  return Object.fromEntries(
    Object.entries(found).filter((entry): entry is [string, string] => typeof entry[1] === "string"),
  );
}

function knownUnits(text: string | undefined): "us" | "metric" | undefined {
  return text === "us" || text === "metric" ? text : undefined;
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
    elevationM = readQuantity(elevation, "elevation", "--elevation");
  }
  return latitudeDeg === null ? null : { latitudeDeg, elevationM, setting: "inland" };
}

function latitudeOf(text: string): number {
  const read = tryLatitude(text);
  if (typeof read === "number" && Math.abs(read) <= 66) return read;
  return refuse("--latitude", 'a latitude from 66 S to 66 N, such as "38.5 N"', text, "check the number");
}
