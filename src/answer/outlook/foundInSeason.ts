import { middleDepth } from "../../evidence/dig/dig.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import { statedDepthMm } from "../../scenario/statedDepth.ts";
import type { FoundOnMorning } from "../../season/season.ts";
import { startingWaterMm } from "../../soil/layers/startingWater.ts";
import type { RunDraws } from "../runs/draws.ts";
import { bottomMm, type ReadyCase } from "../runs/run.ts";

/** What was measured in one case in the season under way, on or before its last day. */
export interface FoundInSeason {
  /** Day number of the measured water; null where none is used. */
  readonly waterDay: number | null;
  /** Middle depth of the plants dug on a day, mm, in the order of the days. */
  readonly dug: readonly { readonly day: number; readonly depthMm: number; readonly plants: number }[];
}

/**
 * Water that `outlook` gives, and plants dug between sowing and the season's last known day. Roots told against the first
 * case's grown roots follow those, so a dig of their own is left out.
 *
 * @param firstDay day number of the run's first day
 * @param sowingDay day number
 * @param day day number of the last day known
 */
export function foundInSeason(
  { outlook, evidence, cases }: Scenario,
  c: number,
  firstDay: number,
  sowingDay: number,
  day: number,
): FoundInSeason {
  const measured = outlook?.waterByCase[c] === null ? null : (outlook?.day ?? null);
  const waterDay = measured !== null && measured >= firstDay && measured <= day ? measured : null;
  const follows =
    cases[c]!.rooting.kind === "relative" && statedDepthMm(cases[c]!.rooting, cases[0].rooting) === null;
  const groups = (evidence?.dig?.groups ?? []).filter(
    (group) => group.caseIndex === c && group.day >= sowingDay && group.day <= day && !follows,
  );
  const days = [...new Set(groups.map((group) => group.day))].sort((a, b) => a - b);
  return {
    waterDay,
    dug: days.map((on) => {
      const depthsMm = groups.filter((group) => group.day === on).flatMap((group) => group.depthsMm);
      return { day: on, depthMm: middleDepth({ depthsMm }).depthMm, plants: depthsMm.length };
    }),
  };
}

/** The same for one run: from the morning after, the measured water fills this run's soil and the front stands where it was dug. */
export function foundOnMornings(
  { waterDay, dug }: FoundInSeason,
  ready: Pick<ReadyCase, "plan" | "slices" | "stopMm">,
  { outlook, cases, ensemble }: Scenario,
  c: number,
  draws: RunDraws,
  firstDay: number,
): FoundOnMorning[] {
  const { plan, slices, stopMm } = ready;
  const water = outlook?.waterByCase[c] ?? null;
  const deepest = Math.min(deepestOf(plan, cases[0]), stopMm ?? Infinity, bottomMm(slices));
  const found: FoundOnMorning[] = dug.map(({ day, depthMm }) => ({
    day: day - firstDay + 1,
    waterMmBySlice: null,
    frontMm: Math.min(depthMm, deepest),
  }));
  if (waterDay !== null && water !== null) {
    const draw = { deepShift: draws.deepShift, deepBelowMm: ensemble.deepBelowMm };
    const waterMmBySlice = startingWaterMm(slices, plan.layers, water, draw);
    found.push({ day: waterDay - firstDay + 1, waterMmBySlice, frontMm: null });
  }
  return found.sort((a, b) => a.day - b.day);
}

function deepestOf({ rooting }: Case, first: Case): number {
  return statedDepthMm(rooting, first.rooting) ?? Infinity;
}
