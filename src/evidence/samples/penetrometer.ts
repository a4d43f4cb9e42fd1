import { psiToMPa } from "../../soil/equations/penetrationFactor.ts";

/** Penetrometer pushes: readings with their depths, and how wet the soil was. */

export interface PenetrometerReading {
  readonly depthMm: number;
  readonly resistanceMPa: number;
}

/**
 * Above this roots did not enter repacked soil: the extension rule, 300 psi; log where the reading passes it and where it
 * comes back, [Penn State Agronomy Facts 63, as reported; Cornell adviser guide PO 35] (read).
 */
export const rootStopMPa = psiToMPa(300);

/** What a reading is good for. */
export type ReadingUse = "as read" | "with a warning" | "not used";

/**
 * Shares of the available water that part the three uses. Readings belong to field capacity, a day or two after a soaking, and
 * rise as the soil dries [Penn State Agronomy Facts 63, as reported] (read): of 19 soils one in ten read above 2 MPa at -10 kPa,
 * half at -200 kPa [Bengough et al. 2011] (read). At -200 kPa a silt loam holds about 40 % of its available water: there the
 * reading tells of dryness as much as of a pan. Both shares are our judgement.
 */
export const wetnessLimits = { unusableBelow: 0.4, sureFrom: 0.75 } as const;

/** What the words for wetness stand for, share of the available water; ours. */
export const wetnessWords = { dry: 0.2, moist: 0.6, wet: 1 } as const;

export function readingUse(wetnessShare: number): ReadingUse {
  if (wetnessShare < wetnessLimits.unusableBelow) return "not used";
  return wetnessShare < wetnessLimits.sureFrom ? "with a warning" : "as read";
}

export interface LayerReading {
  /** Null where no reading lies in the layer. */
  readonly meanMPa: number | null;
  readonly readings: number;
}

/** Mean of the readings in each layer; one that stands on a boundary belongs to the layer above it, as the cone has just left that. */
export function readingsByLayer(
  readings: readonly PenetrometerReading[],
  layers: readonly { readonly topMm: number; readonly bottomMm: number }[],
): LayerReading[] {
  return layers.map(({ topMm, bottomMm }, l) => {
    const inside = readings.filter(
      ({ depthMm }) => (depthMm > topMm || (l === 0 && depthMm >= topMm)) && depthMm <= bottomMm,
    );
    const sum = inside.reduce((total, { resistanceMPa }) => total + resistanceMPa, 0);
    return { meanMPa: inside.length === 0 ? null : sum / inside.length, readings: inside.length };
  });
}

/** A stretch of the log above a limit; `toMm` is null where the log ends before it comes back. */
export interface StretchAbove {
  readonly fromMm: number;
  readonly toMm: number | null;
}

/**
 * Where a log passes a limit and where it comes back, along straight lines between readings. Readings of several pushes at one
 * depth count as their mean. A log that begins above the limit begins its first stretch there.
 */
export function stretchesAbove(
  readings: readonly PenetrometerReading[],
  limitMPa: number = rootStopMPa,
): StretchAbove[] {
  const log = oneADepth(readings);
  const stretches: StretchAbove[] = [];
  let fromMm: number | null = null;
  log.forEach((here, i) => {
    const before = log[i - 1];
    const above = here.resistanceMPa > limitMPa;
    if (above && fromMm === null)
      fromMm = before === undefined ? here.depthMm : crossing(before, here, limitMPa);
    else if (!above && fromMm !== null && before !== undefined) {
      stretches.push({ fromMm, toMm: crossing(before, here, limitMPa) });
      fromMm = null;
    }
  });
  if (fromMm !== null) stretches.push({ fromMm, toMm: null });
  return stretches;
}

function crossing(above: PenetrometerReading, below: PenetrometerReading, limitMPa: number): number {
  const share = (limitMPa - above.resistanceMPa) / (below.resistanceMPa - above.resistanceMPa);
  return above.depthMm + share * (below.depthMm - above.depthMm);
}

/** One reading a depth, downward: several pushes at a depth count as their mean. */
export function oneADepth(readings: readonly PenetrometerReading[]): PenetrometerReading[] {
  const byDepth = new Map<number, number[]>();
  for (const { depthMm, resistanceMPa } of readings) {
    byDepth.set(depthMm, [...(byDepth.get(depthMm) ?? []), resistanceMPa]);
  }
  return [...byDepth]
    .map(([depthMm, all]) => ({
      depthMm,
      resistanceMPa: all.reduce((sum, one) => sum + one, 0) / all.length,
    }))
    .sort((a, b) => a.depthMm - b.depthMm);
}
