import generator from "../../../data-reference/rain-generator.json" with { type: "json" };
import type { Draws } from "../../randomness.ts";

/** Two by two, row by row. */
export type Matrix = readonly [number, number, number, number];

/**
 * How the highest and lowest temperature wander about their normal course: today's residuals x = A x(yesterday) + B e,
 * e independent normal draws, x in standard deviations; A = M1 M0^-1 and B B' = M0 - M1 M0^-1 M1'.
 * Source: [Richardson 1981; matrices Richardson 1982] (memory), radiation left out.
 */
export function residualMatrices(): { readonly a: Matrix; readonly b: Matrix } {
  const { m0, m1 } = generator.residuals;
  const together = m0[0]![1]!;
  const [xx, xn, nx, nn] = [m1[0]![0]!, m1[0]![1]!, m1[1]![0]!, m1[1]![1]!];
  const det = 1 - together * together;
  const a: Matrix = [
    (xx - xn * together) / det,
    (xn - xx * together) / det,
    (nx - nn * together) / det,
    (nn - nx * together) / det,
  ];
  const own = Math.sqrt(1 - (a[0] * xx + a[1] * xn));
  const shared = (together - (a[0] * nx + a[1] * nn)) / own;
  const rest = Math.sqrt(1 - (a[2] * nx + a[3] * nn) - shared * shared);
  return { a, b: [own, 0, shared, rest] };
}

export interface Residuals {
  /** In standard deviations. */
  readonly tMax: number;
  readonly tMin: number;
}

/** Draws days one after the other, from a first day as any other. */
export function residualWalk(draws: Draws): () => Residuals {
  const { a, b } = residualMatrices();
  const together = generator.residuals.m0[0]![1]!;
  let tMax = draws.normal();
  let tMin = together * tMax + Math.sqrt(1 - together * together) * draws.normal();
  return () => {
    const yesterdayMax = tMax;
    const yesterdayMin = tMin;
    const e1 = draws.normal();
    const e2 = draws.normal();
    tMax = a[0] * yesterdayMax + a[1] * yesterdayMin + b[0] * e1;
    tMin = a[2] * yesterdayMax + a[3] * yesterdayMin + b[2] * e1 + b[3] * e2;
    return { tMax, tMin };
  };
}

/** Standard deviation of the daily highest (or lowest) in a month of that mean temperature, C. Assumption, see data-reference. */
export function temperatureSpreadC(of: "tMax" | "tMin", monthMeanC: number): number {
  const { at0C, perC, least, most } = generator.temperatureSpread[of];
  return Math.min(most, Math.max(least, at0C + perC * monthMeanC));
}
