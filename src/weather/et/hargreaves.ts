import { evaporationMmPerMj } from "./atmosphere.ts";

/**
 * Reference ET from temperatures alone. Low in wind above 3 m/s, high in humid air.
 *
 * @param rangeC highest less lowest; below 0 counts as 0
 * @returns mm a day, never below 0 (mean below -17.8 C)
 * @example hargreavesMm(20.7, 11.8, 40.55) // 5.03
 * Source: [Allen et al. 1998, FAO-56] eq. 52 (read), radiation there in mm.
 */
export function hargreavesMm(meanC: number, rangeC: number, extraterrestrialMj: number): number {
  const mm =
    0.0023 * (meanC + 17.8) * Math.sqrt(Math.max(0, rangeC)) * evaporationMmPerMj * extraterrestrialMj;
  return Math.max(0, mm);
}
