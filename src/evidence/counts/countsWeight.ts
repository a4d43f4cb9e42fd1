import table from "../../../data-reference/kernel-weights.json";
import { kgPerPound } from "../../quantity/constants.ts";
import type { GrainWeight } from "./counts.ts";
import { seedSizeMultiplier, seedSizes, type SeedSize } from "./countsSunflower.ts";

/** What kernels weigh where they were not weighed: published, carried as a range. */

export const cornSeasons = ["excellent", "average", "stressed", "severe"] as const;
export type CornSeason = (typeof cornSeasons)[number];

/** Half a class of seed size, which is judged by eye: ours. */
const halfSizeClass = 0.05;

/** g of one kernel. */
export function weightOfKernelsPerPound(kernels: number): number {
  return (kgPerPound * 1000) / kernels;
}

export function weightOfKernelsPerBushel(kernels: number, kgPerBushel: number): number {
  return (kgPerBushel * 1000) / kernels;
}

/** As the grower gave it, g. */
export function givenWeight(gram: number, per: "kernel" | "head"): GrainWeight {
  return { per, low: gram, middle: gram, high: gram, weighed: true, source: "as given" };
}

/**
 * The usual weight of a kernel; null for a crop none is published of.
 *
 * @param crop name as in the table of crops
 * @param season corn only: what kind of season filled the kernels; null takes the whole range
 */
export function usualKernelWeight(crop: string, season: CornSeason | null): GrainWeight | null {
  const bushel = table.kernelsPerBushel.find((one) => one.crops.includes(crop) && one.season === season);
  if (bushel !== undefined) {
    const { few, usual, many } = bushel.kernelsPerBushelThousand;
    const gram = (thousand: number) =>
      weightOfKernelsPerBushel(thousand * 1000, bushel.lbPerBushel * kgPerPound);
    return usualWeight("kernel", gram(many), gram(usual), gram(few), bushel);
  }
  const pound = table.kernelsPerPound.find((one) => one.crops.includes(crop));
  if (pound === undefined) return null;
  const [low, middle, high] = [pound.many, pound.usual, pound.few].map(weightOfKernelsPerPound);
  return usualWeight("kernel", low!, middle!, high!, pound);
}

/** Grain of a head where kernels were not counted; null for a crop none is published of. */
export function usualGrainPerHead(crop: string): GrainWeight | null {
  const head = table.grainPerHead.find((one) => one.crops.includes(crop));
  return head === undefined ? null : usualWeight("head", head.poorG, head.usualG, head.goodG, head);
}

/** Sunflower's seed size as a multiplier; not judged: anything from light to heavy. */
export function seedSizeWeight(size: SeedSize | null): GrainWeight {
  const source = `${table.sunflower[0]!.source} (read)`;
  const middle = seedSizeMultiplier(size ?? "medium");
  const [lightest, heaviest] = [seedSizeMultiplier(seedSizes[0]), seedSizeMultiplier(seedSizes.at(-1)!)];
  return size === null
    ? { per: "seed size", low: lightest, middle, high: heaviest, weighed: false, source }
    : {
        per: "seed size",
        low: middle - halfSizeClass,
        middle,
        high: middle + halfSizeClass,
        weighed: false,
        source,
      };
}

function usualWeight(
  per: "kernel" | "head",
  low: number,
  middle: number,
  high: number,
  { source, mark }: { readonly source: string; readonly mark: string },
): GrainWeight {
  return { per, low, middle, high, weighed: false, source: `${source} (${mark})` };
}
