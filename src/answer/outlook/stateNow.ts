import type { FoundOnMorning } from "../../season/season.ts";
import { sumOver } from "../../season/ledger.ts";
import { storedBetweenMm } from "../runs/threeNumbers.ts";
import { bottomMm, type CaseAfterRun } from "../runs/run.ts";

/** Where one case stands at the end of the last day known, run by run. */
export interface StateRuns {
  readonly frontMm: Float64Array;
  /** Available water from the surface to the front, and beneath it, mm. */
  readonly inRootsMm: Float64Array;
  readonly belowRootsMm: Float64Array;
  /** By layer: available water in all, and of it what lies above the front. */
  readonly layers: readonly { readonly availableMm: Float64Array; readonly inRootsMm: Float64Array }[];
  /** Since sowing. */
  readonly takenUpMm: Float64Array;
  readonly demandMm: Float64Array;
}

export function emptyStates(runs: number, layers: number): StateRuns {
  const column = () => new Float64Array(runs);
  return {
    frontMm: column(),
    inRootsMm: column(),
    belowRootsMm: column(),
    layers: Array.from({ length: layers }, () => ({ availableMm: column(), inRootsMm: column() })),
    takenUpMm: column(),
    demandMm: column(),
  };
}

/**
 * Writes the state of one run down; what was measured that very day goes before what was simulated.
 *
 * @param lastDay of the run, the last one known
 */
export function noteState(
  states: StateRuns,
  run: number,
  { ledger, slices, plan, course }: CaseAfterRun,
  found: readonly FoundOnMorning[],
  lastDay: number,
): void {
  const bySlice = ledger.waterMmByDayAndSlice;
  if (bySlice === null) throw new Error("the ledger kept no water by slice");
  const tonight = found.filter(({ day }) => day === lastDay + 1);
  const simulated = bySlice.subarray(lastDay * slices.count, (lastDay + 1) * slices.count);
  const water = tonight.find(({ waterMmBySlice }) => waterMmBySlice !== null)?.waterMmBySlice ?? simulated;
  const front = tonight.find(({ frontMm }) => frontMm !== null)?.frontMm ?? ledger.frontMm[lastDay]!;
  states.frontMm[run] = front;
  states.inRootsMm[run] = storedBetweenMm(slices, water, 0, front);
  states.belowRootsMm[run] = storedBetweenMm(slices, water, front, bottomMm(slices));
  states.layers.forEach(({ availableMm, inRootsMm }, l) => {
    const { topMm, bottomMm: endMm } = plan.layers[l]!;
    availableMm[run] = storedBetweenMm(slices, water, topMm, endMm);
    inRootsMm[run] = front > topMm ? storedBetweenMm(slices, water, topMm, Math.min(endMm, front)) : 0;
  });
  states.takenUpMm[run] = sumOver(ledger.transpirationMm, course.sowingDay, lastDay);
  states.demandMm[run] = sumOver(ledger.transpirationDemandMm, course.sowingDay, lastDay);
}
