import { makeLedger } from "../../src/season/ledger.ts";
import type { Ground, Ledger, SeasonInput } from "../../src/season/season.ts";
import { makeWorkspace, simulate } from "../../src/season/simulate.ts";
import { column, testCourse, testGround, testInput, testSilt, testWeather, waterAt } from "./column.ts";

/** Bare ground with nothing on it. */
export const bareGround: Ground = { ...testGround, residueCoverFallow: 0, residueCoverCrop: 0 };

/** What a day's reference ET becomes on bare wet ground: FAO-56 eq. 72 in its standard climate. */
export const potentialPerEt0 = 1.2;

/** Days of fallow at one potential evaporation, without rain, from field capacity: the whole engine, day by day. */
export function dryingLedger(
  days: number,
  potentialMmPerDay: number,
  change: Partial<SeasonInput> = {},
): Ledger {
  const slices = column([testSilt]);
  const input = testInput({
    slices,
    weather: testWeather(days + 1, () => ({ et0Mm: potentialMmPerDay / potentialPerEt0 })),
    course: testCourse(days + 1, days),
    startWaterMm: waterAt(slices, 1),
    ground: bareGround,
    ...change,
  });
  const ledger = makeLedger(days + 1, slices.count);
  simulate(input, ledger, makeWorkspace(slices.count));
  return ledger;
}

/** Evaporated until each evening, mm. */
export function evaporatedMm({ evaporationMm }: Ledger, days: number): number[] {
  let sum = 0;
  return Array.from(evaporationMm.subarray(0, days), (mm) => (sum += mm));
}
