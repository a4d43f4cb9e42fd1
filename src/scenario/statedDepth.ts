import type { Case } from "./scenario.ts";

/**
 * The depth at which the roots of a case are stated to stop, mm, >= 0: its own, or the first case's with what it adds to it.
 * Equal statements give the very same number: "+2 in" against "60 in" is "62 in".
 *
 * @param first what the first case says; that case itself has its own here
 * @returns null where no depth is stated, and where one is told against roots that are grown
 */
export function statedDepthMm(rooting: Case["rooting"], first: Case["rooting"]): number | null {
  if (rooting.kind === "absolute") return rooting.depthMm;
  if (rooting.kind === "grown" || first.kind !== "absolute") return null;
  // As many figures as a depth that is read has.
  return Math.max(0, Number((first.depthMm + rooting.extraMm).toPrecision(13)));
}
