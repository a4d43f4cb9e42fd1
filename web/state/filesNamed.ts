import { isGroup, type Json } from "./json.ts";
import type { Attachments } from "./scenarioStore.ts";

/** The files a scenario names: its weather record and its horizons. */
export function filesNamed(scenario: Json): string[] {
  if (!isGroup(scenario)) return [];
  const { weather, soil } = scenario;
  const horizons = isGroup(soil) ? soil["horizons"] : undefined;
  const named = [
    isGroup(weather) ? weather["record"] : undefined,
    isGroup(horizons) ? horizons["file"] : undefined,
  ];
  return named.filter((name) => typeof name === "string");
}

/** Of the files at hand those that the scenario names; folders are of no account in a page. */
export function filesUsed(scenario: Json, attachments: Attachments): Attachments {
  const names = new Set(filesNamed(scenario).map(lastPart));
  return Object.fromEntries(Object.entries(attachments).filter(([name]) => names.has(lastPart(name))));
}

/** Names of files that the scenario asks for and nobody has given. */
export function filesMissing(scenario: Json, attachments: Attachments): string[] {
  const here = new Set(Object.keys(attachments).map(lastPart));
  return filesNamed(scenario).filter((name) => !here.has(lastPart(name)));
}

/** @example lastPart("records/station.csv") // "station.csv" */
export function lastPart(path: string): string {
  return path.split(/[\\/]/).at(-1) ?? path;
}
