import type { Setting } from "./setting.ts";

/** What may move the answer, in the order in which an agronomist meets it. */
export const factorNames = [
  "water at the start",
  "available water",
  "dense layer",
  "extra depth",
  "uptake at depth",
  "rain",
  "residue",
  "stand",
  "yield slope",
  "price",
] as const;

export type FactorName = (typeof factorNames)[number];

/** What the ends of a range are in. */
export type RangeKind = "share" | "share added" | "depth" | "extra depth" | "rain" | "slope" | "price";

/** One setting in ten lies below `low`, one above `high`. SI: mm, shares 0 to 1, kg/ha per mm, money for each kg. */
export interface FactorRange {
  readonly kind: RangeKind;
  readonly low: number;
  readonly high: number;
}

export interface Factor {
  readonly name: FactorName;
  /** What is moved, and where its range comes from. */
  readonly range: string;
  /** Shares 0 to 1 that place it within its range; more than one where several things are moved by it. */
  readonly columns: number;
  /** Whether seasons have to be run anew; a slope and a price need none. */
  readonly movesSeasons: boolean;
  readonly set: (setting: Setting, shares: readonly number[]) => Setting;
  /** Of a pair, counted from 0; null where it is not a factor of that pair. */
  readonly rangeOfPair: (pair: number) => FactorRange | null;
}

export interface LeftOut {
  readonly name: FactorName;
  readonly why: string;
}

/** Low and high of a swing: one setting in ten lies beyond either, as in every range of an answer. */
export const swingShares = { low: 0.1, high: 0.9 } as const;
