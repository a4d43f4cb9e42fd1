import { mayDrainAnywhere, soakAndDrain, type SoakResult } from "../../src/season/drainage.ts";
import { evaporatingZone, takeEvaporation } from "../../src/season/evaporation/evaporation.ts";
import type { Ledger, SeasonInput } from "../../src/season/season.ts";

/**
 * What a run's crop took from each slice over the season, mm, told from its ledger: the evening before, put through the day's
 * own infiltration and evaporation, less that evening. Throws where the sum is not the ledger's transpiration.
 */
export function uptakeBySlice(
  { slices, startWaterMm, ground, course }: SeasonInput,
  ledger: Ledger,
): Float64Array {
  const { count, topMm, thicknessMm, fieldCapacityMm, wiltingPointMm } = slices;
  const zone = evaporatingZone(
    topMm,
    thicknessMm,
    fieldCapacityMm,
    wiltingPointMm,
    ground.evaporatingDepthMm,
  );
  const uptakeMm = new Float64Array(count);
  const soak: SoakResult = { refusedMm: 0, deepDrainageMm: 0 };
  const evenings = ledger.waterMmByDayAndSlice!;
  const water = startWaterMm.slice();
  for (let day = 0; day <= course.maturityDay; day++) {
    soakAndDrain(water, ledger.infiltrationMm[day]!, slices, mayDrainAnywhere(count), soak);
    takeEvaporation(ledger.evaporationMm[day]!, zone, water, wiltingPointMm);
    const evening = evenings.subarray(day * count, (day + 1) * count);
    let taken = 0;
    for (let j = 0; j < count; j++) {
      const mm = water[j]! - evening[j]!;
      uptakeMm[j] = uptakeMm[j]! + mm;
      taken += mm;
    }
    if (!(Math.abs(taken - ledger.transpirationMm[day]!) < 1e-9))
      throw new Error(`day ${day}: slices lost ${taken} mm, the crop took ${ledger.transpirationMm[day]} mm`);
    water.set(evening);
  }
  return uptakeMm;
}
