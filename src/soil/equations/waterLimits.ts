import { listedDensity } from "./usualDensity.ts";

/**
 * Water limits from texture, after Saxton & Rawls (2006), Soil Sci. Soc. Am. J. 70:1569-1578, equations 1 to 22. Coefficients
 * from memory; with them all 72 cells of the paper's Table 3 come out as printed (tests/published/soil/soil-saxton-rawls.test.ts).
 * Inside: S and C are sand and clay fractions, OM is organic matter in percent, as in the paper. Water is a volume fraction.
 */

/** kg/m3; the paper's 2.65 g/cm3. */
export const particleDensityKgPerM3 = 2650;

/** The range the paper states; memory. */
export const statedRange = {
  clayFraction: 0.6,
  organicMatterPercent: 8,
  densityFactor: [0.9, 1.3],
} as const;

/** Least water between wilting point and field capacity, and between field capacity and saturation, that we let stand. */
const leastAvailable = 0.01;
const leastDrainable = 0.02;

export interface FineEarth {
  /** 0 to 1; sand + clay at most 1. */
  readonly sandFraction: number;
  readonly clayFraction: number;
  /** By weight, 0 to 100; the estimate is held at 8 above 8. */
  readonly organicMatterPercent: number;
  /** Of the fine earth; null = the density the texture normally has. */
  readonly bulkDensityKgPerM3: number | null;
  /** Stones > 2 mm by whole volume, 0 to below 1. */
  readonly gravelVolumeFraction: number;
}

export interface WaterLimits {
  /** Of the whole volume, stones included; 0 < wilting point < field capacity < saturation < 1. */
  readonly wiltingPoint: number;
  readonly fieldCapacity: number;
  readonly saturation: number;
  /** Density the texture normally has, and the one used; both of the fine earth. */
  readonly normalDensityKgPerM3: number;
  readonly bulkDensityKgPerM3: number;
  /** Of the whole soil. */
  readonly saturatedConductivityMmPerDay: number;
  /** Slope of the retention curve (lambda). */
  readonly poreSizeIndex: number;
  readonly drainExponent: number;
  /** Where the texture or the density is outside the paper's range, and what was held back. */
  readonly notes: readonly string[];
}

/**
 * All limits of one layer.
 *
 * Always ordered, finite and positive. What the equations would break is held, and said in `notes`: clay at 60 %, organic
 * matter at 8 %; with a density so high that the pores cannot hold the water, field capacity stays 0.02 below saturation
 * and wilting point 0.01 below field capacity.
 * The density adjustment leaves the wilting point alone, so the available water of a pan is an upper estimate.
 */
export function estimateWaterLimits(soil: FineEarth): WaterLimits {
  const notes: string[] = [];
  let C = soil.clayFraction;
  let OM = soil.organicMatterPercent;
  if (C > statedRange.clayFraction) {
    notes.push(
      `clay ${round(C * 100)} % is above the 60 % Saxton & Rawls (2006) cover: limits are those at 60 %`,
    );
    C = statedRange.clayFraction;
  }
  if (OM > statedRange.organicMatterPercent) {
    notes.push(
      `organic matter ${round(OM)} % is above the 8 % Saxton & Rawls (2006) cover: limits are those at 8 %`,
    );
    OM = statedRange.organicMatterPercent;
  }
  const S = Math.min(soil.sandFraction, 1 - C);

  const normalFieldCapacity = Math.max(water33(S, C, OM), 2 * leastAvailable);
  const normalSaturation = Math.max(
    saturationNormal(S, normalFieldCapacity, waterSaturationTo33(S, C, OM)),
    normalFieldCapacity + leastDrainable,
  );
  const normalDensityKgPerM3 = (1 - normalSaturation) * particleDensityKgPerM3; // eq 6
  const bulkDensityKgPerM3 = soil.bulkDensityKgPerM3 ?? normalDensityKgPerM3;

  const doubt = densityDoubt(soil, normalDensityKgPerM3);
  if (doubt !== null) notes.push(doubt);

  const saturation = soil.bulkDensityKgPerM3 === null ? normalSaturation : porosity(bulkDensityKgPerM3); // eq 8
  const adjusted = normalFieldCapacity - 0.2 * (normalSaturation - saturation); // eq 9
  const unheld = water1500(S, C, OM);
  const wiltingPoint = clamp(unheld, leastAvailable, saturation - leastDrainable - leastAvailable);
  const fieldCapacity = clamp(adjusted, wiltingPoint + leastAvailable, saturation - leastDrainable);
  if (wiltingPoint < unheld || fieldCapacity < adjusted) {
    notes.push(
      `at ${gPerCm3(bulkDensityKgPerM3)} the pores cannot hold this texture's usual water: ` +
        `field capacity held at ${round(fieldCapacity)}, wilting point at ${round(wiltingPoint)}`,
    );
  } else if (wiltingPoint > unheld || fieldCapacity > adjusted) {
    notes.push(
      `the estimate runs too low for this texture and density: ` +
        `wilting point held at ${round(wiltingPoint)}, field capacity at ${round(fieldCapacity)}`,
    );
  }

  const poreIndex = poreSizeIndex(wiltingPoint, fieldCapacity);
  const kept = 1 - soil.gravelVolumeFraction; // eq 21, for each limit
  return {
    wiltingPoint: wiltingPoint * kept,
    fieldCapacity: fieldCapacity * kept,
    saturation: saturation * kept,
    normalDensityKgPerM3,
    bulkDensityKgPerM3,
    saturatedConductivityMmPerDay:
      saturatedConductivityMmPerDay(fieldCapacity, saturation, poreIndex) *
      gravelConductivityShare(soil.gravelVolumeFraction, bulkDensityKgPerM3),
    poreSizeIndex: poreIndex,
    drainExponent: drainExponent(poreIndex),
    notes,
  };
}

/**
 * Says that a density is out of the ordinary; null where it is not. Loess is looser than the equations' own density by more than
 * they were made for, in every survey of it: so what surveys list for the texture is in order as well.
 */
function densityDoubt(
  { sandFraction, clayFraction, bulkDensityKgPerM3: density }: FineEarth,
  normalDensityKgPerM3: number,
): string | null {
  if (density === null) return null;
  const [loosest, densest] = statedRange.densityFactor.map((factor) => factor * normalDensityKgPerM3);
  // A hair of room: a density typed to three figures should not trip the note.
  const isWithin = (low: number, high: number) => density >= low - 8 && density <= high + 8;
  const listed = listedDensity(sandFraction, clayFraction);
  if (isWithin(loosest!, densest!) || (listed !== null && isWithin(listed.lowKgPerM3, listed.highKgPerM3)))
    return null;
  const surveys =
    listed === null
      ? ""
      : ` the ${inG(listed.lowKgPerM3)} to ${inG(listed.highKgPerM3)} that surveys list for such soil, and`;
  return (
    `bulk density ${gPerCm3(density)} is outside${surveys} the ${inG(loosest!)} to ${inG(densest!)} ` +
    "that Saxton & Rawls (2006) cover: is it right?"
  );
}

/** Water at 1500 kPa, the wilting point; standard error 0.02. Eq 1. */
export function water1500(S: number, C: number, OM: number): number {
  const t = -0.024 * S + 0.487 * C + 0.006 * OM + 0.005 * S * OM - 0.013 * C * OM + 0.068 * S * C + 0.031;
  return t + (0.14 * t - 0.02);
}

/** Water at 33 kPa, the field capacity, at normal density; standard error 0.05. Eq 2. */
export function water33(S: number, C: number, OM: number): number {
  const t = -0.251 * S + 0.195 * C + 0.011 * OM + 0.006 * S * OM - 0.027 * C * OM + 0.452 * S * C + 0.299;
  return t + (1.283 * t * t - 0.374 * t - 0.015);
}

/** Water between saturation and 33 kPa at normal density, before the sand correction; standard error 0.06. Eq 3. */
export function waterSaturationTo33(S: number, C: number, OM: number): number {
  const t = 0.278 * S + 0.034 * C + 0.022 * OM - 0.018 * S * OM - 0.027 * C * OM - 0.584 * S * C + 0.078;
  return t + (0.636 * t - 0.107);
}

/** Water at saturation at normal density; standard error 0.04. Eq 5. */
function saturationNormal(S: number, theta33: number, thetaS33: number): number {
  return theta33 + thetaS33 - 0.097 * S + 0.043;
}

/** Pore space of the fine earth, 0 to 1. Eq 8. */
export function porosity(bulkDensityKgPerM3: number): number {
  return 1 - bulkDensityKgPerM3 / particleDensityKgPerM3;
}

/** Slope of the retention curve between 1500 and 33 kPa (lambda = 1/B); held within 0.05 and 1. Eq 15 and 18. */
export function poreSizeIndex(wiltingPoint: number, fieldCapacity: number): number {
  const lambda = (Math.log(fieldCapacity) - Math.log(wiltingPoint)) / (Math.log(1500) - Math.log(33));
  return clamp(lambda, 0.05, 1);
}

/** Of the fine earth; printed in mm an hour, here in mm a day. Eq 16. */
export function saturatedConductivityMmPerDay(
  fieldCapacity: number,
  saturation: number,
  poreSizeIndex: number,
): number {
  return 24 * 1930 * (saturation - fieldCapacity) ** (3 - poreSizeIndex);
}

/** Exponent of K = Ks (theta / theta s) ^ exponent. Eq 17. */
export function drainExponent(poreSizeIndex: number): number {
  return 3 + 2 / poreSizeIndex;
}

/** Stones by volume of the whole soil from stones by weight, both 0 to below 1 (Rv from Rw). Eq 19. */
export function gravelVolumeFraction(gravelMassFraction: number, bulkDensityKgPerM3: number): number {
  const alpha = bulkDensityKgPerM3 / particleDensityKgPerM3;
  return (alpha * gravelMassFraction) / (1 - gravelMassFraction * (1 - alpha));
}

/** Stones by weight from stones by volume: eq 19 turned round. */
export function gravelMassFraction(gravelVolumeFraction: number, bulkDensityKgPerM3: number): number {
  const alpha = bulkDensityKgPerM3 / particleDensityKgPerM3;
  return gravelVolumeFraction / (alpha + gravelVolumeFraction * (1 - alpha));
}

/** Conductivity of the whole soil over that of its fine earth, 0 to 1 (Kb/Ks). Eq 22. */
export function gravelConductivityShare(gravelVolume: number, bulkDensityKgPerM3: number): number {
  const alpha = bulkDensityKgPerM3 / particleDensityKgPerM3;
  const Rw = gravelMassFraction(gravelVolume, bulkDensityKgPerM3);
  return (1 - Rw) / (1 - Rw * (1 - 1.5 * alpha));
}

/** Density of fine earth and stones together. Eq 20. */
export function wholeDensityKgPerM3(bulkDensityKgPerM3: number, gravelVolume: number): number {
  return bulkDensityKgPerM3 * (1 - gravelVolume) + gravelVolume * particleDensityKgPerM3;
}

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
const round = (value: number): number => Math.round(value * 100) / 100;
const inG = (kgPerM3: number): string => (kgPerM3 / 1000).toFixed(2);
export const gPerCm3 = (kgPerM3: number): string => `${(kgPerM3 / 1000).toFixed(2)} g/cm^3`;
