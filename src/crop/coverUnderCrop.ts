import { cropNamed, type CoverUnderCrop } from "./crops.ts";

/** What the ground looks like under a crop, for the curve number: as its record in `data-reference/crops.json` says. */
export function coverUnderCrop(cropName: string): CoverUnderCrop {
  return cropNamed(cropName)?.cover.value ?? coverByName(cropName);
}

/**
 * Of a crop that the table has not, by its name. Ours: grass as pasture (sudangrass is sown every year), wide rows, legumes sown
 * close, all others as small grain.
 */
function coverByName(cropName: string): CoverUnderCrop {
  if (/(?<!sudan)grass(es)?\b|\b(sod|pasture|rangeland)\b/i.test(cropName)) return "pasture or range";
  if (/corn|maize|sorghum|milo|sunflower|cotton|bean/i.test(cropName)) return "row crops";
  return /peas?\b|lentil|alfalfa|clover|vetch/i.test(cropName) ? "close-seeded legumes" : "small grain";
}
