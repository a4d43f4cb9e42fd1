import type { CropCourse } from "../../crop/course.ts";
import type { Case } from "../../scenario/scenario.ts";
import { statedDepthMm } from "../../scenario/statedDepth.ts";
import type { Rooting } from "../../season/season.ts";

/** What the first case of a run left behind for the cases that are told from it. */
export interface FirstFront {
  /** What the first case says of its roots. */
  readonly rooting: Case["rooting"];
  /** Front by day of the first case's run. */
  readonly frontMmByDay: Float64Array;
  readonly sowingDay: number;
  readonly maturityDay: number;
  readonly finalDepthMm: number;
}

/**
 * How deep the roots of a case go. A stated depth means the same in every case: the front grows through the case's own soil
 * and stops there, and where the soil does not let it get there it doesn't. Only a depth told against grown roots stretches
 * the first case's front of the same run in proportion, so that both root systems reach their ends on the same day.
 *
 * @param first null for the first case itself
 * @param bottomMm of the case's own column; no target lies below it, none above the surface
 * @param frontOut receives the first case's front, day by day of this case's run, matched at sowing, where it is stretched
 */
export function rootingOfCase(
  rooting: Case["rooting"],
  first: FirstFront | null,
  course: CropCourse,
  bottomMm: number,
  frontOut: Float64Array,
): Rooting {
  if (rooting.kind === "grown") return { kind: "grown" };
  const depthMm = statedDepthMm(rooting, first?.rooting ?? rooting);
  if (depthMm !== null) return { kind: "stops", depthMm };
  if (rooting.kind !== "relative" || first === null)
    throw new Error("the first case has nothing to be deeper than");
  const targetMm = Math.min(Math.max(first.finalDepthMm + rooting.extraMm, 0), bottomMm);
  for (let day = 0; day <= course.maturityDay; day++) {
    const firstDay = Math.min(day - course.sowingDay + first.sowingDay, first.maturityDay);
    frontOut[day] = firstDay < first.sowingDay ? 0 : first.frontMmByDay[firstDay]!;
  }
  // A front that never left the surface cannot be stretched: it stays there.
  const factor = first.finalDepthMm > 0 ? targetMm / first.finalDepthMm : 0;
  return { kind: "stretched", frontMmByDay: frontOut, factor };
}

/** The same roots, stopped where a dig says so; those that follow the first case's front do not stop by themselves. */
export function stoppedAt(rooting: Rooting, stopMm: number | null): Rooting {
  if (stopMm === null || rooting.kind === "stretched") return rooting;
  return { kind: "stops", depthMm: rooting.kind === "stops" ? Math.min(rooting.depthMm, stopMm) : stopMm };
}
