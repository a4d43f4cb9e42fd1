import { meanOf } from "../../statistics/spread.ts";

/**
 * Kernels of a mean ear from rows and kernels a row (or spikelets and kernels a spikelet).
 *
 * Where as many of one as of the other are given they are taken ear by ear, so that long ears with many rows count in full;
 * otherwise mean times mean, as extension pages do.
 */
export function kernelsOfMeanHead(rows: readonly number[], perRow: readonly number[]): number {
  return rows.length === perRow.length
    ? meanOf(rows.map((row, ear) => row * perRow[ear]!))
    : meanOf(rows) * meanOf(perRow);
}

/** Ears with an odd number of kernel rows: rows come in pairs, so one was most likely miscounted (common practice, no source). */
export function oddKernelRows(kernelRows: readonly number[]): number {
  return kernelRows.filter((rows) => rows % 2 === 1).length;
}

/**
 * Yield from counts. Corn's ears x rows x kernels / 90, sorghum's heads x seeds / seeds per pound / 56 and wheat's are this in other
 * units (read: see `data-reference/counts-checks.json`).
 *
 * @param perM2 kernels (or heads) on a m2
 * @param weightG g of one
 * @returns kg/ha
 */
export function yieldOfKernels(perM2: number, weightG: number): number {
  return perM2 * weightG * 10;
}
