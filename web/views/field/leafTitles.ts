import type { LeafName } from "../../state/view.ts";

/** What the leaves of "In the field" are called. */
export const leafTitles: Readonly<Record<LeafName, string>> = {
  dig: "The dig",
  samples: "Soil samples",
  counts: "Counts",
  strips: "Strips",
  water: "Can it be water?",
  rows: "Rows of the field",
  money: "Money",
};
