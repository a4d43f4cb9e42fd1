/**
 * One run of one case, day by day. The order of the day is fixed and stands here only:
 *
 *  0. residue            what half a month of rain and warmth rots            residueDecay.ts, residue.ts
 *  1. snow and melt      cold rain lies as snow; warm days melt it            snow.ts
 *                        and frost in the ground                              frozenGround.ts
 *  2. runoff             curve number, moved with the topsoil's water;        curveNumber.ts, runoff.ts
 *                        frozen ground sheds melt
 *  3. infiltration       and drainage, a cascade from the top slice down      drainage.ts
 *  4. evaporation        two stages, from the top slices                       evaporation.ts
 *  5. root front         the day's descent through what lies beneath          rootFront.ts
 *  6. uptake             supply and demand by slice                           uptake.ts
 *  7. ledger             every millimetre accounted for                       ledger.ts
 *
 * Pure as seen from outside: what it writes is the ledger and workspace it is handed. Nothing is allocated in the day.
 */
import { soakIn } from "./drainage.ts";
import { evaporate } from "./evaporation/evaporation.ts";
import type { Workspace } from "./field.ts";
import { layOut, takeFound } from "./layOut.ts";
import { closeDay, totalsOf } from "./ledger.ts";
import { freezeAndThaw } from "./frozenGround.ts";
import { rotResidue } from "./residue/residue.ts";
import { growRoots } from "./rootFront.ts";
import { runOff } from "./runoff.ts";
import type { Ledger, SeasonInput, SeasonTotals } from "./season.ts";
import { snowAndMelt } from "./snow.ts";
import { measuredMm } from "./storage.ts";
import { makeToday } from "./today.ts";
import { takeUp } from "./uptake.ts";

export type { Workspace } from "./field.ts";
export { makeWorkspace } from "./layOut.ts";

const nothingFound: NonNullable<SeasonInput["found"]> = [];

/**
 * Runs the days of `input.course`, writes `ledger` (index 0 = the run's first day) and returns the season's sums.
 * The ledger must hold at least that many days, the workspace at least as many slices.
 */
export function simulate(input: SeasonInput, ledger: Ledger, workspace: Workspace): SeasonTotals {
  const field = layOut(input, workspace);
  const { slices, weather, firstIndex, course } = input;
  const { waterMmBySlice } = workspace;
  const { sowingDay, floweringDay, maturityDay } = course;
  const { rooted } = field;
  const today = makeToday();
  const found = input.found ?? nothingFound;
  let next = 0;
  today.snowOnGroundMm = input.startSnowMm ?? 0;
  const availableMm = () => availableIn(waterMmBySlice, slices.wiltingPointMm, slices.count);
  const storedOnFirstDayMm = availableMm();
  let storedAtSowingMm = storedOnFirstDayMm;
  today.storedThisMorningMm = measuredMm(field.storage, waterMmBySlice, slices.count, slices.count);

  for (let day = 0; day <= maturityDay; day++) {
    today.day = day;
    today.index = firstIndex + day;
    today.inCrop = day >= sowingDay;
    today.et0Mm = weather.et0Mm[today.index]!;
    while (next < found.length && found[next]!.day === day)
      today.storedThisMorningMm = takeFound(found[next++]!, field);
    rooted.morningMm = waterMmBySlice[rooted.slice]!;
    if (day === sowingDay) {
      storedAtSowingMm = availableMm();
      workspace.waterAtSowingMmBySlice.set(waterMmBySlice);
    }

    rotResidue(today, field);
    snowAndMelt(today, field);
    freezeAndThaw(today, field);
    runOff(today, field);
    soakIn(today, field);
    evaporate(today, field);
    growRoots(today, field);
    takeUp(today, field);
    today.storedThisMorningMm = closeDay(ledger, today, field);
  }

  workspace.left.residueTPerHa = field.residue.massTPerHa;
  workspace.left.snowMm = today.snowOnGroundMm;
  return totalsOf(
    ledger,
    maturityDay + 1,
    sowingDay,
    floweringDay,
    maturityDay,
    storedOnFirstDayMm,
    storedAtSowingMm,
  );
}

/** Water above wilting point, mm. */
function availableIn(waterMmBySlice: Float64Array, wiltingPointMm: Float64Array, count: number): number {
  let sum = 0;
  for (let j = 0; j < count; j++) {
    const available = waterMmBySlice[j]! - wiltingPointMm[j]!;
    if (available > 0) sum += available;
  }
  return sum;
}
