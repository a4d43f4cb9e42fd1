import table from "../../../data-reference/open-share.json" with { type: "json" };

/** What made a layer as dense as it is: it decides how many roots find cracks and old channels in it. */
export const layerOrigins = ["natural", "tillage pan", "wheel track"] as const;
export type LayerOrigin = (typeof layerOrigins)[number];

/** A share that is not known well: the ensemble draws between low and high, middle being the usual. */
export interface ShareRange {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/**
 * Share of the root front that finds cracks, faces of structure and old channels, 0 to 1. A natural subsoil has many, a layer
 * that tillage or wheels packed has few.
 * Source: `data-reference/open-share.json`
 */
export function usualOpenShare(origin: LayerOrigin): ShareRange {
  const known = rowOf(origin === "natural" ? "open-share-natural" : "open-share-pan");
  const { low, middle, high } = known;
  if (low === undefined || middle === undefined || high === undefined)
    throw new Error(`no open share of a layer that is ${origin}`);
  return { low, middle, high };
}

/** A dense layer whose top lies above this depth is taken for a pan where nothing is said, mm. */
export const panTopAboveMm = rowOf("pan-depth").topAboveMm ?? 0;

/** Thicker than this no layer is taken for a pan: what tillage packs is inches thick, a clayey subsoil is feet. Ours. */
const panThinnerThanMm = 304.8;

/** What a layer is taken for where nothing is said: tillage and wheels reach about a foot, and pack a few inches. */
export function assumedOrigin(topMm: number, bottomMm: number): LayerOrigin {
  return topMm < panTopAboveMm && bottomMm - topMm <= panThinnerThanMm ? "tillage pan" : "natural";
}

/** A subsoil horizon of a survey or a laboratory is natural; of a plough layer, or where the letters do not tell, nothing is known. */
export function originOfHorizon(designation: string): LayerOrigin | undefined {
  return /^\d*[EBC]/.test(designation) ? "natural" : undefined;
}

function rowOf(id: string) {
  const row = table.find((one) => one.id === id);
  if (row === undefined) throw new Error(`no record ${id} of open shares`);
  return row.expected as Partial<ShareRange> & { readonly topAboveMm?: number };
}
