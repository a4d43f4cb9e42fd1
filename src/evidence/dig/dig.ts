/** Plants dug and measured, as plain values. */
import type { SoilLayer } from "../../soil/layers/layer.ts";

export interface Dig {
  readonly groups: readonly DugGroup[];
  /** The n-th plant of every case stood beside the n-th of the others. */
  readonly paired: boolean;
  /** Of every interval, above 0 and below 1. */
  readonly confidence: number;
  /** What is fitted so that the simulated front meets these depths; null where there is nothing to fit. */
  readonly fitted: Fitted | null;
  /** Whether the fit takes the place of the density's or penetrometer's reading in every run of the answer. */
  readonly drives: boolean;
}

/** Plants of one case, dug on one day. */
export interface DugGroup {
  /** Where its date stands in the scenario, for messages. */
  readonly field: string;
  /** Index among the scenario's cases. */
  readonly caseIndex: number;
  /** Days since 1970-01-01. */
  readonly day: number;
  /** Where the row is; null where not told. */
  readonly rowPosition: string | null;
  /** Deepest root of each plant, mm, at least one. */
  readonly depthsMm: readonly number[];
  /** How the main roots of each plant went on, in the plants' order; left out: not told. */
  readonly ways?: readonly RootWay[];
  /** Depth at which the roots of those plants turned aside, mm; left out: not told. */
  readonly turnedAtMm?: readonly number[];
}

/** How the main roots of a plant met the dense layer. */
export const rootWays = ["straight", "turned aside", "stopped", "through a crack"] as const;
export type RootWay = (typeof rootWays)[number];

/** What more than half of a group's plants did; null where not told, or where they do not agree. */
export function mostWent({ ways = [] }: Pick<DugGroup, "ways">): RootWay | null {
  return rootWays.find((way) => 2 * ways.filter((one) => one === way).length > ways.length) ?? null;
}

/** What becomes of roots after the day they were dug. */
export type Reading =
  /** They go on as slowly as the fit says. */
  | "slowed"
  /** They stay where they were dug. */
  | "stopped"
  /** The dig cannot tell. */
  | "either";

/** What of the soil a dig can tell. */
export type Fitted =
  /** The share of its pace that the root front keeps in this layer at field capacity, 0 to 1. */
  | { readonly kind: "passage"; readonly layer: string }
  /** The penetrometer reading at which roots stop, MPa, of all layers that have a reading. */
  | { readonly kind: "penetration limit" };

/** What plants of one field usually differ in rooting depth, standard deviation as a share of the depth; a judgement, no published value. */
export const usualDepthVariation = 0.2;

/**
 * The middle depth of a group, and how well it is known.
 *
 * One plant, or plants all equal to the inch, tell nothing of how plants differ: then 20 % of the depth is assumed.
 */
export interface MiddleDepth {
  readonly depthMm: number;
  /** Standard error of the median: 1.2533 x sd / sqrt(n), for plants normally spread (memory); of one or two, that of the mean. */
  readonly errorMm: number;
  /** Degrees of freedom of that error; Infinity where it is assumed. */
  readonly freedom: number;
  readonly assumed: "one plant" | "all equal" | null;
}

const medianEfficiency = 1.2533;

export function middleDepth({ depthsMm }: Pick<DugGroup, "depthsMm">): MiddleDepth {
  const sorted = depthsMm.toSorted((a, b) => a - b);
  const n = sorted.length;
  const depthMm = (sorted[(n - 1) >> 1]! + sorted[n >> 1]!) / 2;
  const mean = sorted.reduce((sum, depth) => sum + depth, 0) / n;
  const squares = sorted.reduce((sum, depth) => sum + (depth - mean) ** 2, 0);
  const factor = (n > 2 ? medianEfficiency : 1) / Math.sqrt(n);
  if (n > 1 && squares > 0)
    return { depthMm, errorMm: factor * Math.sqrt(squares / (n - 1)), freedom: n - 1, assumed: null };
  const errorMm = factor * usualDepthVariation * depthMm;
  return { depthMm, errorMm, freedom: Infinity, assumed: n === 1 ? "one plant" : "all equal" };
}

/** Whether a case's soil has what is fitted. */
export function hasFitted(layers: readonly SoilLayer[], fitted: Fitted): boolean {
  return fitted.kind === "passage"
    ? layers.some(({ name }) => name === fitted.layer)
    : layers.some(({ hindrance }) => hindrance.resistanceMPa !== undefined);
}
