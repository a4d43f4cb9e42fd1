import type { StageLengths } from "./stageLengths.ts";

/** Basal coefficient of nearly bare, dry soil (FAO-56 Kc min, 0.15 to 0.20; the lower end is for dry places). */
export const kcMin = 0.15;

/** Tabulated values below this are not adjusted for climate (FAO-56 ch. 6 and 7, read). */
const adjustedFrom = 0.45;

/**
 * What a climate unlike FAO-56's standard (wind 2 m/s, least humidity 45 %) adds to a coefficient.
 *
 * @param windMPerS mean wind at 2 m; held within 1 to 6
 * @param rhMinPercent mean of the daily least humidity; held within 20 to 80
 * @param heightMm height of the crop, 0 to 10,000; 0 adds nothing
 * @returns about -0.26 to 0.37 for the tallest crops
 * Source: [Allen et al. 1998, FAO-56] eq. 62, 70 and 72 (read). Height is in m there.
 */
export function climateTerm(windMPerS: number, rhMinPercent: number, heightMm: number): number {
  const u2 = clamp(windMPerS, 1, 6);
  const rhMin = clamp(rhMinPercent, 20, 80);
  const h = clamp(heightMm / 1000, 0, 10);
  return (0.04 * (u2 - 2) - 0.004 * (rhMin - 45)) * (h / 3) ** 0.3;
}

/**
 * A tabulated coefficient of mid-season or season's end in the climate of that stage; below 0.45 it stays as it is.
 *
 * @example climateAdjusted(1.1, 2.2, 30, 400) // 1.137
 * Source: [Allen et al. 1998, FAO-56] eq. 62, 65, 70 (read).
 */
export function climateAdjusted(
  tabulated: number,
  windMPerS: number,
  rhMinPercent: number,
  heightMm: number,
): number {
  if (tabulated < adjustedFrom) return tabulated;
  return tabulated + climateTerm(windMPerS, rhMinPercent, heightMm);
}

/**
 * Coefficient at a reading of the season's clock: level in the initial stage and mid-season, straight lines between.
 *
 * @param progress days or degree days since sowing; beyond the last stage the end value
 * Source: [Allen et al. 1998, FAO-56] eq. 66 (read), also on thermal time, which is ours.
 */
export function coefficientAt(
  progress: number,
  [initial, development, mid, late]: StageLengths,
  kInitial: number,
  kMid: number,
  kEnd: number,
): number {
  const intoDevelopment = progress - initial;
  if (intoDevelopment <= 0) return kInitial;
  if (intoDevelopment < development) return kInitial + (intoDevelopment / development) * (kMid - kInitial);
  const intoLate = intoDevelopment - development - mid;
  if (intoLate <= 0) return kMid;
  return intoLate < late ? kMid + (intoLate / late) * (kEnd - kMid) : kEnd;
}

/**
 * Upper limit of evaporation plus transpiration, as a share of reference ET.
 *
 * @param term `climateTerm` at the height reached by the crop; 0 for bare soil, which gives 1.2
 * Source: [Allen et al. 1998, FAO-56] eq. 72 (read).
 */
export function upperCoefficient(kcb: number, term: number): number {
  return Math.max(1.2 + term, kcb + 0.05);
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
