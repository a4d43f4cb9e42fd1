import { axisOver, type Axis } from "../../../src/drawing/axis.ts";

/** Differences on one axis with nothing in sight. */

export interface BesideMark {
  /** A measurement, what water explains, or what the kernel weight alone would do. */
  readonly kind: "measured" | "water" | "weight";
  readonly what: string;
  /** The numbers in words: `4.6 bu/ac more (1.1 to 9.3 bu/ac more)`. */
  readonly said: string;
  readonly middle: number;
  /** Null where there is no interval. */
  readonly low: number | null;
  readonly high: number | null;
}

export interface BesideRow {
  readonly title: string;
  readonly marks: readonly BesideMark[];
}

/** Goes over all that is marked, and over nothing. */
export function besideAxis(rows: readonly BesideRow[], fromPx: number, toPx: number, steps: number): Axis {
  const all = rows.flatMap(({ marks }) =>
    marks.flatMap(({ low, middle, high }) => [low ?? middle, middle, high ?? middle]),
  );
  return axisOver(Math.min(0, ...all), Math.max(0, ...all), fromPx, toPx, steps);
}
