import { shownYield } from "../../answer/comparison/yieldUnits.ts";
import { usOfKgPerHa, type YieldUnit } from "../../crop/yield/yieldLine.ts";
import { haPerAcre, mmPerInch } from "../../quantity/constants.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Scenario } from "../../scenario/scenario.ts";

/** What the figures of an answer are in, beside water and depth. */
export interface JsonUnits {
  readonly system: Units;
  /** How people count this yield. */
  readonly yieldUnit: YieldUnit;
  /** Null without money: then there is none to be told. */
  readonly currency: string | null;
}

export function unitsOf({ yieldLine, money }: Scenario, system: Units): JsonUnits {
  return { system, yieldUnit: yieldLine.unit, currency: money?.currency ?? null };
}

interface Scale {
  readonly unit: string;
  readonly factor: number;
}

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** Of what each ending of a key is, longest first: the ending goes, and the unit stands beside the figure. */
const endings = ["KgPerHaPerMm", "KgPerHa", "PerKg", "PerHa", "Ha"] as const;

/** Measured yields and what is worked out from them: kg/ha by what they are, without it in their names. */
const measuredIn: readonly string[] = ["counts", "strips", "reconciliations", "levels"];
const measured: readonly string[] = [
  "estimate",
  "spread",
  "difference",
  "layout",
  "measured",
  "explained",
  "range",
];
/** Of these groups, the figures that are yields; the others count or compare. */
const yields: readonly string[] = [
  "value",
  "standardError",
  "interval",
  "low",
  "middle",
  "high",
  "mean",
  "median",
  "sd",
  "sds",
  "smallest",
  "largest",
];

/**
 * An answer as `--json` gives it: water and depth keep their keys, which end in Mm; every other figure with a unit becomes a
 * group with the unit asked for beside it, so `netPerHa: {p10, ...}` becomes `net: {unit: "USD/ac", p10, ...}`.
 */
export function unitsBeside(answer: unknown, units: JsonUnits): unknown {
  return walked(answer as Json, units, "", false);
}

function walked(value: Json, units: JsonUnits, inside: string, isMeasured: boolean): Json {
  if (isList(value)) return value.map((one) => walked(one, units, inside, isMeasured));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]): [string, Json] => {
      const here = isMeasured || measuredIn.includes(key);
      const named = scaleOf(key, inside, units);
      if (named !== null) return [named.key, scaled(part, named.scale, null)];
      if (inside === "dig" && key === "fit") return [key, fitWithUnit(walked(part, units, key, here))];
      if (key === "layout" && !here) return [key, scaled(part, { unit: "mm", factor: 1 }, null)];
      if (here && measured.includes(key)) return [key, scaled(part, yieldScale(units), yields)];
      return [key, walked(part, units, key, here)];
    }),
  );
}

/** What a dig fits is a share of the open pace, or the reading at which roots stop. */
function fitWithUnit(fit: Json): Json {
  if (typeof fit !== "object" || fit === null || isList(fit)) return fit;
  return { ...fit, unit: fit["what"] === "penetration limit" ? "MPa" : "share of 1" };
}

/** The scale of a figure by its key, and the key without its unit; null for what stays as it is. */
function scaleOf(key: string, inside: string, units: JsonUnits): { key: string; scale: Scale } | null {
  const { currency, system } = units;
  // A factor from one unit to the other says so.
  if (key === "kgPerHaPerUnit") return null;
  if (inside === "seasons" && (key === "dry" || key === "wet")) return { key, scale: slopeScale(units) };
  if (currency !== null && (key === "netForField" || key === "yearly"))
    return { key, scale: { unit: currency, factor: 1 } };
  if (key === "haPerYear" || key === "haOverLife")
    return { key: key.replace("ha", "area"), scale: landScale(system) };
  const ending = endings.find((one) => key.endsWith(one) && key.length > one.length);
  if (ending === undefined) return null;
  const scale = scaleOfEnding(ending, units);
  return scale === null ? null : { key: key.slice(0, -ending.length), scale };
}

function scaleOfEnding(ending: (typeof endings)[number], units: JsonUnits): Scale | null {
  const { system, yieldUnit, currency } = units;
  const land = landScale(system);
  switch (ending) {
    case "KgPerHaPerMm":
      return slopeScale(units);
    case "KgPerHa":
      return yieldScale(units);
    case "Ha":
      return land;
    case "PerHa":
      return currency === null ? null : { unit: `${currency}/${land.unit}`, factor: 1 / land.factor };
    case "PerKg": {
      if (currency === null) return null;
      if (system === "metric") return { unit: `${currency}/kg`, factor: 1 };
      return { unit: `${currency}/${yieldUnit.us.split("/")[0]}`, factor: yieldUnit.kgPerUsUnit };
    }
  }
}

function landScale(system: Units): Scale {
  return system === "us" ? { unit: "ac", factor: 1 / haPerAcre } : { unit: "ha", factor: 1 };
}

function yieldScale({ yieldUnit, system }: JsonUnits): Scale {
  return shownYield(yieldUnit, system);
}

function slopeScale({ yieldUnit, system }: JsonUnits): Scale {
  return system === "us"
    ? { unit: `${yieldUnit.us}/in`, factor: usOfKgPerHa(mmPerInch, yieldUnit) }
    : { unit: "kg/ha/mm", factor: 1 };
}

/** A figure, a list of them or a group of them with its unit beside; nothing stays nothing. */
function scaled(value: Json, { unit, factor }: Scale, only: readonly string[] | null): Json {
  if (value === null) return null;
  if (typeof value === "number") return { unit, value: value * factor };
  if (isList(value)) return { unit, values: times(value, factor, null) };
  if (typeof value !== "object") return value;
  return { unit, ...(times(value, factor, only) as object) };
}

function times(value: Json, factor: number, only: readonly string[] | null): Json {
  if (typeof value === "number") return value * factor;
  if (isList(value)) return value.map((one) => times(one, factor, only));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [
      key,
      only === null || only.includes(key) ? times(part, factor, only) : part,
    ]),
  );
}

function isList(value: Json): value is readonly Json[] {
  return Array.isArray(value);
}
