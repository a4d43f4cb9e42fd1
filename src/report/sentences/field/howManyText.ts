import {
  chanceAt,
  mostAdvised,
  neededForReach,
  neededToTell,
  type Layout,
  type Needed,
} from "../../../statistics/howMany.ts";
import type { NoInterval } from "../../../statistics/interval.ts";
import { percent } from "../../tables/formatters.ts";

/** What was counted: plants, spots, pairs of strips. */
export interface Noun {
  readonly one: string;
  readonly many: string;
}

export const plants: Noun = { one: "plant", many: "plants" };
export const spots: Noun = { one: "spot", many: "spots" };
export const stripPairs: Noun = { one: "pair of strips", many: "pairs of strips" };

export interface HowMany {
  readonly layout: Layout;
  /** How many there are now; of the case that has fewest where they are not in pairs. */
  readonly now: number;
  /** How far the present interval reaches to either side. */
  readonly reach: number;
  readonly confidence: number;
  /** A difference to be told from nothing, and as people read it. */
  readonly wanted: { readonly difference: number; readonly said: string; readonly chance: number } | null;
}

/** How many more of them it takes: to halve the interval, and to tell the difference wanted. */
export function howManyLines({ layout, now, reach, confidence, wanted }: HowMany, noun: Noun): string[] {
  const of = layout.kind === "two sets" ? " of each case" : "";
  const halve = neededForReach(layout, reach / 2, confidence);
  const lines = [`Half as wide an interval takes ${neededSaid(halve, noun)}${of}; there are ${now} now.`];
  if (wanted === null || wanted.difference === 0) return lines;
  const needed = neededToTell(layout, wanted.difference, confidence, wanted.chance);
  const chanceNow = chanceAt(layout, now, wanted.difference, confidence);
  return [
    ...lines,
    `To tell ${wanted.said} from nothing with a chance of ${percent(wanted.chance)} takes ${neededSaid(needed, noun)}${of}; with ${now} the chance is ${shareSaid(chanceNow)}.`,
  ];
}

export function neededSaid(needed: Needed, { one, many }: Noun): string {
  if (needed === null) return `more than ${mostAdvised.toLocaleString("en")} ${many}`;
  return `${needed} ${needed === 1 ? one : many}`;
}

/** Never a bare 0 % or 100 %. */
export function shareSaid(share: number): string {
  if (share > 0.99) return "more than 99 %";
  return share < 0.01 ? "less than 1 %" : percent(share);
}

/** Why there is no interval, as the end of a sentence. */
export function noIntervalSaid(why: NoInterval, { one, many }: Noun): string {
  switch (why) {
    case "no values":
    case "no pairs":
      return `there are no ${many}`;
    case "one value":
    case "one pair":
      return `one ${one} does not show how much ${many} differ`;
    case "all equal":
    case "all differences equal":
      return `all ${many} agree to the last digit, which says more of the measuring than of the field`;
  }
}

const words = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** `three pairs of strips`; digits above twelve. */
export function countSaid(count: number, { one, many }: Noun): string {
  return `${words[count] ?? count} ${count === 1 ? one : many}`;
}
