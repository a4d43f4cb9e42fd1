import { frozenGroundIndex, isFrozenAt, snowDepthCm } from "../../src/season/frozenGround.ts";
import type { Ledger } from "../../src/season/season.ts";
import type { DailyWeather } from "../../src/weather/records/record.ts";

/** On which of a run's first days its ground was frozen, worked out anew from its ledger. */
export function frozenByDay(
  { snowOnGroundMm, meltMm }: Ledger,
  weather: DailyWeather,
  firstIndex: number,
  days: number,
): boolean[] {
  let index = 0;
  let isFrozen = false;
  return Array.from({ length: days }, (_, day) => {
    const depthCm = snowDepthCm(snowOnGroundMm[day]! + meltMm[day]!);
    index = frozenGroundIndex(index, weather.tMeanC[firstIndex + day]!, depthCm);
    isFrozen = isFrozenAt(index, isFrozen);
    return isFrozen;
  });
}
