import type { CaseSeason, SeasonShown } from "../../worker/protocol.ts";
import { heldFront } from "./twoRootsTable.ts";

/** The soil between both fronts, which only the deeper roots reach. */
export interface Strip {
  /** Place of the deeper case among all of the season. */
  readonly deeper: number;
  readonly topMm: number;
  readonly bottomMm: number;
  /** Water that the deeper roots' crop has taken up more than the other so far, mm; negative: less. */
  readonly moreWaterMm: number;
}

/** Less is not to be seen, mm. */
const leastMm = 2.5;

/** @returns null where one case is shown, before both have roots, and where they are as deep as each other */
export function stripOn(season: SeasonShown, pair: readonly number[], day: number): Strip | null {
  const [a, b] = pair;
  const [one, two] = [season.cases[a ?? -1], season.cases[b ?? -1]];
  if (one === undefined || two === undefined) return null;
  const [oneMm, twoMm] = [heldFront(one, day), heldFront(two, day)];
  if (oneMm === null || twoMm === null || Math.abs(twoMm - oneMm) < leastMm) return null;
  const isTwo = twoMm > oneMm;
  const more = takenUpMm(two, day) - takenUpMm(one, day);
  return {
    deeper: isTwo ? b! : a!,
    topMm: Math.min(oneMm, twoMm),
    bottomMm: Math.max(oneMm, twoMm),
    moreWaterMm: isTwo ? more : -more,
  };
}

function takenUpMm({ transpirationMm, startsAt, sowingDay }: CaseSeason, day: number): number {
  let sum = 0;
  const end = Math.min(day - startsAt, transpirationMm.length - 1);
  for (let own = sowingDay; own <= end; own++) sum += transpirationMm[own]!;
  return sum;
}
