import { triangleAt } from "../../randomness.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import { fallowCurveNumber } from "../../season/curveNumber.ts";
import type { Ground } from "../../season/season.ts";
import { writtenOut } from "../../crop/crop.ts";

/** Everything that a factor may move, at one value each: the same for all cases and years. */
export interface Setting {
  /** As in a run's draws: see `RunDraws`. */
  readonly deepShift: number;
  readonly capacity: number;
  readonly lenience: number;
  readonly openness: number;
  readonly deepUptake: number;
  /** Where the dig decides: the run whose draw of its fit is taken; else null. */
  readonly fitRun: number | null;
  /** Times the stated depth between a case's roots and the first's. */
  readonly extraDepthTimes: number;
  /** Times the rain of every day. */
  readonly rainTimes: number;
  /** Added to the share of the ground under residue; below 0 taken off. */
  readonly coverAdded: number;
  /** Times the leaf area of a thin stand. */
  readonly standTimes: number;
  readonly slopeKgPerHaPerMm: number;
  /** Null where no money is told of. */
  readonly pricePerKg: number | null;
}

/** All in the middle. */
export function middleSetting({ ensemble, yieldLine, money }: Scenario, fitRun: number | null): Setting {
  const { low, middle, high } = yieldLine.slopeKgPerHaPerMm;
  const price = money?.pricePerKg;
  return {
    deepShift: 0,
    capacity: 0,
    lenience: { range: 0, strict: -1, usual: 0, lenient: 1 }[ensemble.densityReading],
    openness: 0,
    deepUptake: 1,
    fitRun,
    extraDepthTimes: 1,
    rainTimes: 1,
    coverAdded: 0,
    standTimes: 1,
    slopeKgPerHaPerMm: triangleAt(0.5, low, middle, high),
    pricePerKg: price === undefined ? null : triangleAt(0.5, price.low, price.middle, price.high),
  };
}

/** A case as a setting has it: its ground, stand and roots. */
export function caseAt(plan: Case, first: Case, setting: Setting): Case {
  const { coverAdded, standTimes, extraDepthTimes } = setting;
  return {
    ...plan,
    ground: coverAdded === 0 ? plan.ground : groundWith(plan.ground, coverAdded),
    crop: standTimes === 1 ? plan.crop : cropWith(plan, standTimes),
    rooting: extraDepthTimes === 1 ? plan.rooting : rootingWith(plan, first, extraDepthTimes),
  };
}

/**
 * Ground with more or less residue. Bare ground stays bare. The curve number of fallow follows as it does when a file is read;
 * that of the crop, whose table only asks for 5 and 20 %, stays.
 */
function groundWith(ground: Ground, added: number): Ground {
  const cover = (share: number) => (share <= 0 ? share : Math.min(1, Math.max(0, share + added)));
  const fallow = cover(ground.residueCoverFallow);
  const follows = ground.curveNumberFallow !== ground.curveNumberBareFallow;
  return {
    ...ground,
    residueCoverFallow: fallow,
    residueCoverCrop: ground.residueCoverCrop === null ? null : cover(ground.residueCoverCrop),
    curveNumberFallow: follows
      ? fallowCurveNumber(ground.curveNumberBareFallow, fallow)
      : ground.curveNumberFallow,
  };
}

/** A full stand stays full. */
function cropWith({ crop }: Case, times: number): Case["crop"] {
  if (crop.standShare >= 1) return crop;
  return writtenOut({ ...crop, standShare: Math.min(1, crop.standShare * times) });
}

function rootingWith({ rooting }: Case, { rooting: first }: Case, times: number): Case["rooting"] {
  if (rooting.kind === "relative") return { kind: "relative", extraMm: rooting.extraMm * times };
  if (rooting.kind === "grown" || first.kind !== "absolute") return rooting;
  return { kind: "absolute", depthMm: first.depthMm + (rooting.depthMm - first.depthMm) * times };
}

/** By how much a case is stated to be rooted deeper than the first, mm; null where no such depth is stated. */
export function statedExtraMm({ rooting, crop }: Case, { rooting: first }: Case): number | null {
  if (rooting.kind === "relative") return rooting.extraMm;
  if (rooting.kind !== "absolute" || first.kind !== "absolute") return null;
  // Sod is as deep as stated from the first day: its depth stands with the crop.
  return crop.sowingDepthMm >= crop.maxRootDepthMm ? null : rooting.depthMm - first.depthMm;
}
