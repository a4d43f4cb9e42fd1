import type { Spread } from "../../statistics/quantiles.ts";
import type { DigUse } from "../runs/readyRun.ts";

/** What else the answer could be, where plants were dug: told at its top. Depths and water in mm. */
export interface DigReadings {
  /** Cases whose roots may have stopped or go on slowly: their dig cannot tell. */
  readonly undecided: readonly UndecidedCase[];
  /** Where dig and model, or dig and density, do not agree. */
  readonly doubts: readonly DigDoubt[];
  /** Whether the dig decides in the answer. */
  readonly decides: boolean;
  /** The answer as it is given first, then the others, at the middle rainfall total; the first alone where nothing can be chosen. */
  readonly answers: readonly [ReadingAnswer, ...ReadingAnswer[]];
}

export interface UndecidedCase {
  readonly case: string;
  /** Last day it was dug on. */
  readonly date: string;
  /** Where it was dug then, and where its roots are when the crop is ripe, if they go on: medians. */
  readonly dugMm: number;
  readonly goingOnMm: number;
  /** Of two dates: how likely it is that the roots stopped; null of one. */
  readonly stoppedShare: number | null;
}

export type DigDoubt =
  /** The mean plant has deeper roots than the model's have when the crop is ripe. */
  | {
      readonly kind: "deeper than the front when ripe";
      readonly case: string;
      readonly dugMm: number;
      readonly frontMm: number;
    }
  /** What density or penetrometer say of the layer is outside the interval of the dig. */
  | {
      readonly kind: "density outside the dig";
      readonly case: string;
      readonly density: number;
      readonly low: number;
      readonly high: number;
    };

export interface ReadingAnswer {
  /** See `DigUse`. */
  readonly use: DigUse;
  readonly cases: readonly { readonly name: string; readonly finalRootDepthMm: number }[];
  readonly differences: readonly ReadingDifference[];
}

export interface ReadingDifference {
  readonly from: string;
  readonly to: string;
  readonly extraWaterUsedMm: Spread;
  readonly extraYield: Spread & { readonly unit: string };
  /** Money for each hectare; null where no price is told. */
  readonly netPerHa: Spread | null;
}
