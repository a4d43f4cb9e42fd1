import { signal } from "@preact/signals";

export type LeafName = "dig" | "samples" | "counts" | "strips" | "water" | "rows" | "money";

const held: readonly (readonly [LeafName, RegExp])[] = [
  ["counts", /^evidence\.(?:counts|spotsPaired)\b/],
  ["strips", /^evidence\.strips\b/],
  ["dig", /^evidence\b/],
  ["samples", /^soil\.(?:penetrometer|layers\[\d+\]\.cores)\b/],
  ["rows", /^rowPositions\b/],
  ["money", /^money\b/],
];

/** The leaf on which a place of the scenario is entered; null where it is entered in Inputs. */
export function leafOf(path: string): LeafName | null {
  return held.find(([, paths]) => paths.test(path))?.[0] ?? null;
}

/** The leaf of "In the field" that lies open; stays so while other views are looked at. */
export const openLeaf = signal<LeafName>("dig");
