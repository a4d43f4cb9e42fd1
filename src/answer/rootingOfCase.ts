import type { CropCourse } from "../crop/course.ts";
import type { Case } from "../scenario/scenario.ts";
import type { Rooting } from "../season/season.ts";

/** What the first case of a run left behind for the cases that are told from it. */
export interface FirstFront {
  /** Front by day of the first case's run. */
  readonly frontMmByDay: Float64Array;
  readonly sowingDay: number;
  readonly maturityDay: number;
  readonly finalDepthMm: number;
}

/**
 * How deep the roots of the first case go: as grown, or grown and stopped at the stated depth.
 */
export function rootingOfFirst(rooting: Case["rooting"]): Rooting {
  switch (rooting.kind) {
    case "grown":
      return { kind: "grown" };
    case "absolute":
      return { kind: "stops", depthMm: rooting.depthMm };
    case "relative":
      throw new Error("the first case has nothing to be deeper than");
  }
}

/**
 * How deep the roots of a later case go. A stated depth, absolute or relative, stretches the first case's front of the
 * same run in proportion, so that both root systems reach their ends on the same day.
 *
 * @param bottomMm of the case's own column; no target lies below it, none above the surface
 * @param frontOut receives the first case's front, day by day of this case's run, matched at sowing
 */
export function rootingOfLater(
  rooting: Case["rooting"],
  first: FirstFront,
  course: CropCourse,
  bottomMm: number,
  frontOut: Float64Array,
): Rooting {
  if (rooting.kind === "grown") return { kind: "grown" };
  const wanted = rooting.kind === "absolute" ? rooting.depthMm : first.finalDepthMm + rooting.extraMm;
  const targetMm = Math.min(Math.max(wanted, 0), bottomMm);
  for (let day = 0; day <= course.maturityDay; day++) {
    const firstDay = Math.min(day - course.sowingDay + first.sowingDay, first.maturityDay);
    frontOut[day] = firstDay < first.sowingDay ? 0 : first.frontMmByDay[firstDay]!;
  }
  // A front that never left the surface cannot be stretched: it stays there.
  const factor = first.finalDepthMm > 0 ? targetMm / first.finalDepthMm : 0;
  return { kind: "stretched", frontMmByDay: frontOut, factor };
}
