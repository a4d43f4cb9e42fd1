import table from "../../../data-reference/kernel-weights.json";

/** The moisture the trade counts a crop at, share of wet weight; null where none is known. */
export function tradeMoistureOf(crop: string): { readonly share: number; readonly source: string } | null {
  const found = table.tradeMoisture.find((one) => one.crops.includes(crop));
  if (found === undefined) return null;
  return { share: found.percent / 100, source: `${found.source} (${found.mark})` };
}

/**
 * Turns wet weight into weight at trade moisture: (1 - moisture) / (1 - trade moisture).
 *
 * @param moisture share of wet weight, 0 to below 1
 * @example 1 / moistureFactor(0.20, 0.155) * 56 // 59.15 lb of corn at 20 % are a bushel
 * Source: Univ. of Missouri Extension tables of grain weight (read).
 */
export function moistureFactor(moisture: number, tradeMoisture: number): number {
  return (1 - moisture) / (1 - tradeMoisture);
}
