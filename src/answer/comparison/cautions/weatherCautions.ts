import type { Scenario } from "../../../scenario/scenario.ts";
import { patternSite } from "../../../weather/generate/rainPatterns.ts";
import type { Uncautioned } from "../comparison.ts";

/** Farther than this from the latitude of the pattern's temperatures it is said. Ours. */
const tellingDegrees = 3;

/** A built-in pattern has the temperatures of one latitude wherever the field lies. */
export function patternCaution({ weather: { source }, site }: Scenario): string[] {
  const { latitudeDeg } = patternSite;
  if (source.kind !== "normals" || source.ofPattern !== true) return [];
  if (Math.abs(Math.abs(site.latitudeDeg) - latitudeDeg) <= tellingDegrees) return [];
  const side = site.latitudeDeg < 0 ? "S" : "N";
  return [
    `The field lies at ${Number(Math.abs(site.latitudeDeg).toFixed(2))} ${side}, but the built-in rain pattern has the temperatures of an invented place at ${latitudeDeg} N: use a weather record, or the monthly normals of a place nearby.`,
  ];
}

/** Fewer runs than this make no range to speak of: P10 would be the lowest but one. Ours. */
const fewestRuns = 20;

export function fewRunsCaution({ method: { runs } }: Uncautioned): string[] {
  if (runs >= fewestRuns) return [];
  return [
    runs === 1
      ? "One run only: it does not show how years differ. Use 20 or more; 200 is usual."
      : `${runs} runs only, so the ranges are rough: use ${fewestRuns} or more; 200 is usual.`,
  ];
}

export function shortRecordCaution({ method }: Uncautioned): string[] {
  if (method.sowingYears >= Math.min(method.runs, 10)) return [];
  return [
    method.sowingYears === 1
      ? "The record holds one season only, so the ranges show no difference between years: use a record of more years."
      : `The record holds ${method.sowingYears} seasons only, so the ranges show few of the years that can come: use a record of more years.`,
  ];
}
