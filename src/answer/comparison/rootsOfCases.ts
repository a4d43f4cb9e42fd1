import type { Case } from "../../scenario/scenario.ts";
import type { RestrictionKind } from "../../soil/layers/column.ts";
import { isSod, sodTo } from "../../crop/crop.ts";
import { statedDepthMm } from "../../scenario/statedDepth.ts";

/** A front within this distance of its end counts as having reached it, mm. */
export const atEndMm = 1;

/** What stops roots that would go on: rock or the like, or only that nothing deeper is described. */
export type RootsEnd = RestrictionKind | "described soil";

/**
 * What ends the roots of a case; null where they end by themselves, or at a depth stated for them.
 *
 * @param first what the first case says of its roots
 * @param finalRootDepthMm the middle of the runs
 */
export function rootsEndAt(
  { layers, rooting, endsOn }: Case,
  first: Case["rooting"],
  finalRootDepthMm: number,
): RootsEnd | null {
  const bottomMm = layers.at(-1)?.bottomMm ?? Infinity;
  if (statedDepthMm(rooting, first) !== null || finalRootDepthMm < bottomMm - atEndMm) return null;
  return endsOn ?? "described soil";
}

/** Whether two cases are the same but for their names and how deep their roots go. */
export function onlyRootsDiffer(one: Case, other: Case): boolean {
  return JSON.stringify(withoutRoots(one)) === JSON.stringify(withoutRoots(other));
}

/** Of sod the depth that its roots begin at is their depth too. */
function withoutRoots({ name: _name, rooting: _rooting, ...others }: Case) {
  return isSod(others.crop) ? { ...others, crop: sodTo(0, others.crop) } : others;
}
