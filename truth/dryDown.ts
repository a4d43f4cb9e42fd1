/** Bare or covered ground under the same reference ET every day, and rain on chosen days: how a wetted soil dries. */
import { surfaceOf, type FallowSystem } from "./residue.ts";
import { bySeason, noSpread } from "./seasons.ts";
import { waterMm } from "./water.ts";

export interface DryDown {
  readonly texture: string;
  readonly system: FallowSystem;
  readonly et0MmPerDay: number;
  /** Of the available water when it begins, percent. */
  readonly startPercent: number;
  readonly days: number;
  /** Rain by day; the first day is 0. */
  readonly rainMm: (day: number) => number;
}

export interface Drying {
  /** Of each day, mm. */
  readonly evaporationMm: readonly number[];
  /** In the soil on each evening, mm. */
  readonly waterMm: readonly number[];
}

/** Bare ground at potential loses FAO-56's greatest coefficient times reference ET: 1.2 in the standard climate. */
export const potentialPerEt0 = 1.2;

const begins = Date.UTC(2001, 0, 1);
const dayText = (day: number): string => new Date(begins + day * 86_400_000).toISOString().slice(0, 10);
const sownOnDay = 120; // May 1

/** From `days` before 1 May; what grows then is of no interest. */
export async function dryDown(one: DryDown): Promise<Drying> {
  const { texture, system, et0MmPerDay, startPercent, days, rainMm } = one;
  const first = sownOnDay - days;
  const lines = Array.from({ length: 730 }, (_, day) => {
    const rain = day >= first && day < sownOnDay ? rainMm(day - first) : 0;
    return `${dayText(day)},${rain},${et0MmPerDay}`;
  });
  const written = {
    site: { latitude: "40 N", elevation: "1000 m" },
    soil: {
      layers: [{ name: texture, thickness: "60 in", texture }],
      startingWater: { share: `${startPercent} %` },
    },
    weather: { record: "steady.csv" },
    crop: { name: "proso millet", sowing: "May 1", clock: "days" },
    fallow: { length: `${days} days` },
    // Straw laid down for a trial of days or weeks.
    surface: { ...surfaceOf(system), residueDecay: "none" },
    ensemble: { years: 1, seed: 1, ...noSpread },
  };
  const files = { "steady.csv": ["date,rain_mm,et0_mm", ...lines, ""].join("\n") };
  const [found] = await bySeason(written, files, (run) => ({
    evaporationMm: [...run.ledger.evaporationMm.subarray(0, days)],
    waterMm: Array.from({ length: days }, (_, day) => waterMm(run, day)),
  }));
  return found!;
}
