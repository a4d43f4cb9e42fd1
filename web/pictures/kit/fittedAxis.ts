import type { DigFitAnswer } from "../../../src/answer/dig/digAnswer.ts";
import { fixed, percent } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "./frame.tsx";
import { axisOver, type Axis } from "../../../src/drawing/axis.ts";

/** How what is fitted is measured out and said. */

export type What = DigFitAnswer["what"];

/** How a fitted value is said: as sentences say it. */
export function fittedSaid(what: What): (value: number) => string {
  return what === "passage" ? percent : (mPa) => `${fixed(mPa, 1)} MPa`;
}

/** Passage from shut to open; a limit from nothing up. */
export function fittedAxis({ what, cases }: DigFitAnswer, fromPx: number, toPx: number): Axis {
  if (what === "passage") return axisOver(0, 1, fromPx, toPx, toPx - fromPx > 420 ? 10 : 5);
  const most = Math.max(...cases.flatMap(({ high, otherwise }) => [high, otherwise]));
  return axisOver(0, most, fromPx, toPx, 6);
}

export function fittedTable({ what, cases }: DigFitAnswer, confidence: number): PictureTable {
  const say = fittedSaid(what);
  return {
    head: ["Case", "Fitted", `${percent(confidence)} interval`, otherwiseWord(what), "Meets what was dug"],
    rows: cases.map(({ case: name, value, low, high, otherwise, verdict }) => [
      name,
      say(value),
      `${say(low)} to ${say(high)}`,
      say(otherwise),
      verdict === "meets" ? "yes" : verdict,
    ]),
  };
}

function otherwiseWord(what: What): string {
  return what === "passage" ? "Density or reading says" : "Usual for a pan";
}
