import { signal } from "@preact/signals";

export type LeafName = "dig" | "samples" | "counts" | "strips" | "water" | "rows" | "money";

/** The leaf of "In the field" that lies open; stays so while other views are looked at. */
export const openLeaf = signal<LeafName>("dig");
