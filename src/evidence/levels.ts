import type { Reach } from "./reconcile.ts";

/** How high each yield stands, not how far they are apart: what was counted, harvested and modeled of one case. */
export interface Level {
  readonly by: "counts" | "strips" | "model";
  readonly caseIndex: number;
  readonly rowPosition: string | null;
  /** kg/ha */
  readonly range: Reach;
}

/** Two levels of one case whose ranges do not meet; `higher` is the higher one. */
export interface Disagreement {
  readonly higher: Level;
  readonly lower: Level;
}

/**
 * Levels of a case that differ by more than their ranges. One without a range is taken as it stands, and the words must say so.
 * Counts at one place in the row stand for that place, so they are held against the model's case but not against whole strips.
 */
export function disagreementsOf(levels: readonly Level[]): Disagreement[] {
  return levels.flatMap((one, i) =>
    levels.slice(i + 1).flatMap((other): Disagreement[] => {
      if (one.caseIndex !== other.caseIndex || one.by === other.by) return [];
      const placed = [one, other].some(({ rowPosition }) => rowPosition !== null);
      if (placed && one.by !== "model" && other.by !== "model") return [];
      if (lowOf(one) > highOf(other)) return [{ higher: one, lower: other }];
      return lowOf(other) > highOf(one) ? [{ higher: other, lower: one }] : [];
    }),
  );
}

function lowOf({ range: { low, middle } }: Level): number {
  return low ?? middle;
}

function highOf({ range: { high, middle } }: Level): number {
  return high ?? middle;
}
