import type { FactorRange } from "../../answer/sensitivity/factors.ts";
import type { Sensitivity, SensitivityOfAnswer } from "../../answer/sensitivity/sensitivity.ts";
import type { AnswerKind } from "../../answer/sensitivity/settingRuns.ts";
import { shownYield } from "../../answer/comparison/yieldUnits.ts";
import { usPerInchOfSlope } from "../../crop/yield/yieldLine.ts";
import { haPerAcre, mmPerInch } from "../../quantity/constants.ts";
import { fixed } from "./formatters.ts";
import type { JsonUnits } from "./unitsBeside.ts";

/** A figure's unit, and how many of it are in one of ours. */
interface Scale {
  readonly unit: string;
  readonly factor: number;
}

/** Lengths of a table are in its units; in every JSON they are in mm. */
export type LengthsIn = "in" | "mm";

export function lengthsIn({ system }: JsonUnits): LengthsIn {
  return system === "us" ? "in" : "mm";
}

function lengthScale(unit: LengthsIn): Scale {
  return { unit, factor: unit === "in" ? 1 / mmPerInch : 1 };
}

/** What an answer of a pair is in. */
export function answerScale(kind: AnswerKind, units: JsonUnits, lengths: LengthsIn): Scale {
  const { system, yieldUnit, currency } = units;
  switch (kind) {
    case "extraWaterUsed":
      return lengthScale(lengths);
    case "extraYield":
      return shownYield(yieldUnit, system);
    case "net":
      return system === "us"
        ? { unit: `${currency}/ac`, factor: haPerAcre }
        : { unit: `${currency}/ha`, factor: 1 };
  }
}

function rangeScale({ kind }: FactorRange, units: JsonUnits, lengths: LengthsIn): Scale {
  const { system, yieldUnit, currency } = units;
  switch (kind) {
    case "share":
    case "share added":
      return { unit: "%", factor: 100 };
    case "depth":
    case "extra depth":
    case "rain":
      return lengthScale(lengths);
    case "slope":
      return system === "us"
        ? { unit: `${yieldUnit.us}/in`, factor: usPerInchOfSlope(1, yieldUnit) }
        : { unit: "kg/ha/mm", factor: 1 };
    case "price":
      return system === "us"
        ? { unit: `${currency}/${yieldUnit.us.split("/")[0]}`, factor: yieldUnit.kgPerUsUnit }
        : { unit: `${currency}/kg`, factor: 1 };
  }
}

/** The range of a factor as it is read. */
export function rangeIn(range: FactorRange, units: JsonUnits, lengths: LengthsIn) {
  const { unit, factor } = rangeScale(range, units, lengths);
  return { unit, low: range.low * factor, high: range.high * factor };
}

/** Digits after the point that tell swings apart. */
function digitsFor(widest: number): number {
  if (widest >= 100) return 0;
  if (widest >= 10) return 1;
  return widest >= 0.1 ? 2 : 3;
}

/** An answer in the units that it is read in; shares have none. */
export function answerIn(answer: SensitivityOfAnswer, units: JsonUnits, lengths: LengthsIn) {
  const { unit, factor } = answerScale(answer.kind, units, lengths);
  return {
    kind: answer.kind,
    unit,
    middle: answer.middle * factor,
    leastYear: answer.leastYear * factor,
    mostYear: answer.mostYear * factor,
    factors: answer.factors.map(({ name, range, atLow, atHigh, swing, share }) => ({
      name,
      range: rangeIn(range, units, lengths),
      atLow: atLow * factor,
      atHigh: atHigh * factor,
      swing: swing * factor,
      share,
    })),
  };
}

/** Its figures as text, all with the same digits. */
export function figureOf({ factors }: AnswerShown): (value: number) => string {
  const digits = digitsFor(Math.max(0, ...factors.map(({ swing }) => swing)));
  return (value) => fixed(value, digits);
}

export type AnswerShown = ReturnType<typeof answerIn>;

/** All of it as `--json` gives it, water and depth in mm. */
export function sensitivityJson(
  { pairs, ...rest }: Sensitivity,
  scenario: { readonly name: string; readonly invented: boolean },
  seed: number,
  units: JsonUnits,
) {
  const { years, rows, seasons, confidence, mattersFrom: _told, ...more } = rest;
  return {
    format: "rootfront-sensitivity/1",
    scenario: scenario.name,
    invented: scenario.invented,
    method: { years, rows, seasons, confidence, seed },
    ...more,
    pairs: pairs.map(({ from, to, answers }) => ({
      from,
      to,
      answers: answers.map((answer) => answerIn(answer, units, "mm")),
    })),
  };
}
