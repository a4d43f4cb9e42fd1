import { fallowYear, readyRotations } from "../../../src/scenario/fields/rotationFields.ts";
import { isGroup, isList, type Json } from "../../state/json.ts";
import { getAt, type Changes } from "../../state/path.ts";
import { casesIn } from "./caseEdits.ts";

/** How the crops that follow one another are told: not at all, by the name of a rotation, or year by year. */
export type RotationWay = "none" | (typeof readyRotations)[number] | "list";

export const mostRotationYears = 6;

export function rotationWay(scenario: Json): RotationWay {
  const written = getAt(scenario, "rotation");
  if (written === undefined) return "none";
  return readyRotations.find((name) => name === written) ?? "list";
}

/** A rotation tells how long each fallow is: what was said of that goes, in the same step. */
export function toRotation(scenario: Json, way: RotationWay): Changes {
  if (way === "none")
    return [
      ["rotation", undefined],
      ["chain", undefined],
    ];
  const crop = getAt(scenario, "crop.name");
  const own = typeof crop === "string" ? crop : "winter wheat";
  return [
    ["rotation", way === "list" ? [own, fallowYear] : way],
    ["fallow.length", undefined],
    ...casesIn(scenario).map((_, c) => [`cases[${c}].fallow.length`, undefined] as const),
  ];
}

/** One year of the list: its crop's name or `fallow`, and whether it has numbers of its own. */
export interface YearWritten {
  readonly name: string;
  readonly hasOwn: boolean;
}

export function yearsWritten(scenario: Json): readonly YearWritten[] {
  const written = getAt(scenario, "rotation");
  return isList(written)
    ? written.map((one) => {
        if (!isGroup(one)) return { name: String(one), hasOwn: false };
        const { name } = one;
        return { name: typeof name === "string" ? name : "", hasOwn: true };
      })
    : [];
}

/** Another crop in a year: numbers that were the other crop's go with it. */
export function growInYear(year: number, name: string): Changes {
  return [[`rotation[${year}]`, name]];
}

/** Room for a sowing day of its own. */
export function withOwnSowing(scenario: Json, year: number): Changes {
  const { name = "" } = yearsWritten(scenario)[year] ?? {};
  return [[`rotation[${year}]`, { name }]];
}
