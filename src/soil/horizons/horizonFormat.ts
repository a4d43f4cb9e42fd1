import type { HorizonRow, HorizonTable } from "./horizonTable.ts";
import type { LayerDescription } from "../layers/layerDescription.ts";

/** A kind of horizon file: how it is known, how its rows group into profiles, and how a row becomes a layer. */
export interface HorizonFormat {
  /** In words, for messages: "soil survey horizons". */
  readonly name: string;
  /** What one profile is called there. */
  readonly profileWord: "component" | "pedon";
  /** Columns without which it is not this kind of file. */
  readonly knownBy: readonly string[];
  /** Columns it cannot do without. */
  readonly needed: readonly string[];
  /** Where a person finds the names and keys of all profiles. */
  readonly choiceColumns: readonly string[];
  /** Same text = same profile. */
  readonly profileKey: (row: HorizonRow) => string;
  /** Names a person may choose the profile by, the plainest last. */
  readonly labels: (row: HorizonRow) => readonly string[];
  /** Same text = same horizon, repeated in the file. */
  readonly horizonKey: (row: HorizonRow) => string;
  readonly horizon: (table: HorizonTable, row: HorizonRow) => Horizon;
}

export interface Horizon {
  readonly line: number;
  /** Lacks sand or clay where the file does. */
  readonly layer: LayerDescription;
  /** What of this horizon was put aside and why. */
  readonly notes: readonly string[];
}

export const cm = 10;
export const percentRange = [0, 100] as const;
export const depthCmRange = [-50, 1000] as const;
export const densityRange = [0.05, 2.65] as const;

/** Sand, or what silt and clay leave for it; undefined where the file has neither. */
export function sandFrom(sand: number | null, silt: number | null, clay: number | null): number | undefined {
  if (sand !== null) return sand / 100;
  if (silt !== null && clay !== null && silt + clay <= 100) return (100 - silt - clay) / 100;
  return undefined;
}
