import { evaporationMmPerMj } from "./atmosphere.ts";
import { meanSaturationKPa, saturationSlopeKPaPerC } from "./humidity.ts";
import { leastWindMPerS } from "./wind.ts";

export interface ReferenceDay {
  readonly tMaxC: number;
  readonly tMinC: number;
  /** Usually the mean of the two; FAO-56 eq. 9. */
  readonly tMeanC: number;
  readonly vapourKPa: number;
  readonly netRadiationMj: number;
  /** Into the soil; 0 for a day (eq. 42), not for a month's mean. */
  readonly soilHeatMj: number;
  readonly wind2mMPerS: number;
  readonly psychrometricKPaPerC: number;
}

/**
 * Reference ET of a grass sward by Penman and Monteith.
 *
 * @returns mm a day, never below 0; wind below 0.5 m/s counts as 0.5, vapour above saturation as saturation
 * Source: [Allen et al. 1998, FAO-56] eq. 6 (read).
 */
export function penmanMonteithMm(day: ReferenceDay): number {
  const delta = saturationSlopeKPaPerC(day.tMeanC);
  const gamma = day.psychrometricKPaPerC;
  const u2 = Math.max(leastWindMPerS, day.wind2mMPerS);
  const deficitKPa = Math.max(0, meanSaturationKPa(day.tMaxC, day.tMinC) - day.vapourKPa);
  const radiative = evaporationMmPerMj * delta * (day.netRadiationMj - day.soilHeatMj);
  const aerodynamic = ((gamma * 900) / (day.tMeanC + 273)) * u2 * deficitKPa;
  return Math.max(0, (radiative + aerodynamic) / (delta + gamma * (1 + 0.34 * u2)));
}
