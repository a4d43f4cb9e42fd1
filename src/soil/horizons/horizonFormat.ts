import type { HorizonRow, HorizonTable } from "./horizonTable.ts";
import type { LayerDescription } from "../layers/layerDescription.ts";

/** A kind of horizon file: how it is known, how its rows group into profiles, and how a row becomes a layer. */
export interface HorizonFormat {
  /** In words, for messages: "soil survey horizons". */
  readonly name: string;
  /** What one profile is called there. */
  readonly profileWord: "component" | "pedon";
  /** Whether a header is of this kind of file. */
  readonly knows: (columns: readonly string[]) => boolean;
  /** Columns it cannot do without, as a header writes them: for messages. */
  readonly needed: readonly string[];
  /** Those of them that a header of this kind lacks. */
  readonly lacks: (columns: readonly string[]) => readonly string[];
  /** How to mend what is lacking, where exporting it is not the way. */
  readonly orElse?: string;
  /** The header says the unit of depths; else they are cm. */
  readonly saysUnit?: boolean;
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

/** Of a format whose columns have one name each. */
export function columnsNamed(
  knownBy: readonly string[],
  needed: readonly string[],
): Pick<HorizonFormat, "knows" | "needed" | "lacks"> {
  return {
    knows: (columns) => knownBy.every((column) => columns.includes(column)),
    needed,
    lacks: (columns) => needed.filter((column) => !columns.includes(column)),
  };
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
