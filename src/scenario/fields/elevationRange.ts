import type { Within } from "./facts/limits.ts";

/** Land that is farmed or could be, m: from the Dead Sea's shore to above the highest fields. Ours. */
export const elevationRange: Within = {
  from: -451.104,
  to: 6004.56,
  says: "-1480 to 19,700 ft (-450 to 6000 m)",
};
