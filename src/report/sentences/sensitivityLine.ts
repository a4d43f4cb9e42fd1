import type { FactorName } from "../../answer/sensitivity/factors.ts";
import type {
  FactorEffect,
  Sensitivity,
  SensitivityOfAnswer,
  SensitivityOfPair,
} from "../../answer/sensitivity/sensitivity.ts";
import type { AnswerKind } from "../../answer/sensitivity/settingRuns.ts";
import { shownIn, type Formatters } from "../tables/formatters.ts";
import { answerIn, figureOf, lengthsIn } from "../tables/sensitivityShown.ts";
import type { JsonUnits } from "../tables/unitsBeside.ts";
import { capital } from "./sentence.ts";

/** A factor in a sentence, and what to do about it; null where nobody can measure it. */
const saidOf: Readonly<Record<FactorName, { readonly what: string; readonly todo: string | null }>> = {
  "water at the start": { what: "what the subsoil holds", todo: "probe it" },
  "available water": { what: "what the soil can hold", todo: "have its limits measured" },
  "dense layer": { what: "what the dense layer lets through", todo: "dig more plants" },
  "extra depth": { what: "how much deeper the roots go", todo: "dig more plants" },
  "uptake at depth": { what: "what deep roots take up", todo: "core the deep soil after harvest" },
  rain: { what: "the rain", todo: null },
  residue: { what: "the residue", todo: "measure it along a tape" },
  stand: { what: "the stand", todo: "count it" },
  "yield slope": { what: "what water is worth in yield", todo: "harvest strips side by side" },
  price: { what: "the price", todo: null },
};

/** The answer that is spoken of first: money where it is told, else yield. */
export function mainAnswer({ answers }: SensitivityOfPair): SensitivityOfAnswer {
  return answers.at(-1)!;
}

/**
 * What moves the answer of a pair most, in words, with what to measure.
 * @example "What the subsoil holds matters five times as much as 2 in of root: probe it."
 */
export function sensitivityLine(
  pair: SensitivityOfPair,
  { mattersFrom }: Pick<Sensitivity, "mattersFrom">,
  units: JsonUnits,
): string {
  const main = mainAnswer(pair);
  const moving = main.factors.filter(({ swing }) => swing > 0);
  const [top, second] = moving;
  if (top === undefined)
    return `Nothing that was moved tells "${pair.to}" from "${pair.from}": there is nothing to measure.`;
  if (isLittle(pair, mattersFrom)) {
    const shown = answerIn(main, units, lengthsIn(units));
    const most = figureOf(shown)(shown.factors[0]!.swing);
    return `Nothing moves it by much: ${saidOf[top.name].what} moves it most, by ${most} ${shown.unit}, which is hardly worth measuring.`;
  }
  const beside = moving.find(({ name }) => name === "extra depth" && name !== top.name) ?? second;
  const first =
    beside === undefined
      ? `Only ${saidOf[top.name].what} moves the answer`
      : comparedSaid(top, beside, shownIn(units.system));
  const { todo } = saidOf[top.name];
  if (todo !== null) return `${first}: ${todo}.`;
  const none = `${first}, and nobody can measure it ahead.`;
  const measurable = moving.find(({ name }) => saidOf[name].todo !== null);
  if (measurable === undefined) return none;
  const { what, todo: does } = saidOf[measurable.name];
  return `${none} Of what can be measured, ${what} matters most: ${does}.`;
}

/** Whether no factor moves water or yield by what could be told apart in a field. */
function isLittle(
  { answers }: SensitivityOfPair,
  { waterMm, yieldKgPerHa }: Sensitivity["mattersFrom"],
): boolean {
  const widest = (kind: AnswerKind) =>
    Math.max(0, ...(answers.find((one) => one.kind === kind)?.factors ?? []).map(({ swing }) => swing));
  return widest("extraWaterUsed") < waterMm && widest("extraYield") < yieldKgPerHa;
}

function comparedSaid(top: FactorEffect, beside: FactorEffect, shown: Formatters): string {
  const what = capital(saidOf[top.name].what);
  return `${what} matters ${timesSaid(top.swing / beside.swing)} ${besideSaid(beside, shown)}`;
}

/** Extra depth by how much of it there is between the ends of its range. */
function besideSaid({ name, range }: FactorEffect, shown: Formatters): string {
  if (name !== "extra depth") return saidOf[name].what;
  return `${shown.total(Math.abs(range.high - range.low))} ${shown.length} of root`;
}

const inWords = ["", "", "twice", "three", "four", "five", "six", "seven", "eight", "nine", "ten"] as const;

/** @example timesSaid(5.1) // "five times as much as" */
export function timesSaid(times: number): string {
  if (times < 1.2) return "about as much as";
  if (times < 1.75) return "about half again as much as";
  const whole = Math.round(times);
  if (whole > 10) return "more than ten times as much as";
  return whole === 2 ? "twice as much as" : `${inWords[whole]!} times as much as`;
}
