import type { SunflowerHeads } from "./countsSunflower.ts";

/** Counts of a crop standing in the field, as plain values. */

export interface Counts {
  readonly groups: readonly CountedGroup[];
  /** The n-th spot of every case lies beside the n-th of the others. */
  readonly paired: boolean;
  /** Calendar year of harvest; null where it is not told. */
  readonly year: number | null;
  /** Of every interval, above 0 and below 1. */
  readonly confidence: number;
  /** As the trade names it; for cautions. */
  readonly crop: string;
}

/** Spots counted in one case, at one row position. */
export interface CountedGroup {
  /** Where it stands in the scenario, for messages. */
  readonly field: string;
  readonly caseIndex: number;
  readonly rowPosition: string | null;
  readonly weight: GrainWeight;
  /** Turns the weight as weighed into weight at trade moisture; 1 where it is that already. */
  readonly moistureFactor: number;
  /** How far the grain was; null where not told. */
  readonly stage: GrainStage | null;
  /** At least one, all counted the same way. */
  readonly spots: readonly CountedSpot[];
}

export const grainStages = ["before milk", "milk", "dough", "dent", "ripe"] as const;
export type GrainStage = (typeof grainStages)[number];

/** What a count is multiplied by; a range where it was not weighed. */
export interface GrainWeight {
  /** g of one kernel; g of grain of one head; or the sunflower's seed-size multiplier. */
  readonly per: "kernel" | "head" | "seed size";
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly weighed: boolean;
  /** Said with results: the source, or "as given". */
  readonly source: string;
}

export interface CountedSpot {
  readonly areaM2: number;
  /** First ears, or heads. */
  readonly heads: number;
  readonly per:
    | {
        readonly kind: "kernels";
        /** Mean of a first ear or head. */
        readonly kernelsPerHead: number;
        /** Of all second ears of the spot together. */
        readonly secondEarKernels: number;
        /** Ears with an odd number of kernel rows. */
        readonly oddRows: number;
      }
    | { readonly kind: "heads" }
    | { readonly kind: "sunflower"; readonly heads: SunflowerHeads };
}
