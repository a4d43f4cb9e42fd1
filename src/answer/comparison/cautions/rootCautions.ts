import { sayBoth } from "../../../quantity/index.ts";
import type { Scenario } from "../../../scenario/scenario.ts";
import { isSod } from "../../../crop/crop.ts";
import { statedDepthMm } from "../../../scenario/statedDepth.ts";
import { restrictionKinds } from "../../../soil/layers/column.ts";
import { atEndMm, type RootsEnd } from "../rootsOfCases.ts";
import type { Uncautioned } from "../comparison.ts";
import { named } from "./namedCases.ts";

/** Roots that come to the end of the described soil might go on; not so where rock ends them. */
export function columnCaution({ byRainTotal, cases }: Uncautioned): string[] {
  const stoppedBy = (end: RootsEnd) =>
    cases.filter((_, c) => byRainTotal.some((at) => at.cases[c]?.rootsEndAt === end));
  const described = stoppedBy("described soil");
  const restricted = restrictionKinds.map((kind) => ({ kind, by: stoppedBy(kind) }));
  return [
    ...(described.length === 0
      ? []
      : [
          `The roots of ${named(described)} came to the bottom of the soil described: describe it deeper, or, where rock ends it, say so (soil.restriction).`,
        ]),
    ...restricted.flatMap(({ kind, by }) =>
      by.length === 0
        ? []
        : [
            `The roots of ${named(by)} came to the ${kind} stated; cracks in it, which some roots and water find, are left out.`,
          ],
    ),
  ];
}

/** A depth told against the first case can leave no roots below the seed. */
export function rootlessCaution({ byRainTotal }: Uncautioned, { cases }: Scenario): string[] {
  const rootless = cases.filter(
    ({ crop }, c) =>
      !isSod(crop) && byRainTotal.some((at) => at.cases[c]!.finalRootDepthMm <= crop.sowingDepthMm),
  );
  if (rootless.length === 0) return [];
  return [
    `No roots are left below the seed of ${named(rootless)} in a typical year: give a depth that leaves some.`,
  ];
}

/** From this share of the seasons on it is said that roots ended above the depth stated for them. Ours. */
const tellingShortShare = 0.1;

/** A stated depth is where roots stop; the soil, or the crop's own pace, may not let them get there. */
export function statedDepthCaution({ byRainTotal }: Uncautioned, { cases }: Scenario): string[] {
  return cases.flatMap(({ name, rooting }, c) => {
    const statedMm = statedDepthMm(rooting, cases[0].rooting);
    const short = Math.max(...byRainTotal.map((at) => at.cases[c]!.shortOfStatedShare ?? 0));
    if (statedMm === null || short < tellingShortShare) return [];
    const reached = byRainTotal.map((at) => at.cases[c]!.finalRootDepthMm);
    const least = Math.min(...reached);
    const ends = [...new Set([least, Math.max(...reached)].map(sayDepth))].join(" to ");
    const middle = least < statedMm - atEndMm ? `, in a typical year at ${ends}` : "";
    return [
      `The roots of "${name}" ended above the ${sayDepth(statedMm)} stated for them in ${short === 1 ? "every season" : `${Math.round(100 * short)} % of the seasons`}${middle}: dry soil, a dense layer or the crop's own pace held them.`,
    ];
  });
}

function sayDepth(mm: number): string {
  return sayBoth(mm, "depth");
}
