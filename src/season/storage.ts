/**
 * All water of a column, measured anew every day: summed where it can have changed, while what lies below rests as it was
 * summed before. Most days touch a few slices of a hundred.
 */
export interface Storage {
  /** Slices from here down have not changed since they were summed. */
  restsFrom: number;
  restingMm: number;
}

/** On the first day nothing has been summed yet. */
export function nothingRests(count: number): Storage {
  return { restsFrom: count, restingMm: 0 };
}

/** So many slices too many are summed rather than the resting ones anew. */
const slack = 16;

/**
 * Water in the column, mm.
 *
 * @param touchedTo slices from here down have not changed since the last call
 */
export function measuredMm(
  storage: Storage,
  waterMmBySlice: Float64Array,
  count: number,
  touchedTo: number,
): number {
  if (touchedTo > storage.restsFrom || touchedTo + slack < storage.restsFrom) {
    storage.restsFrom = touchedTo;
    storage.restingMm = sumBetween(waterMmBySlice, touchedTo, count);
  }
  return sumBetween(waterMmBySlice, 0, storage.restsFrom) + storage.restingMm;
}

function sumBetween(values: Float64Array, from: number, to: number): number {
  // Two sums side by side: a single one waits for each addition to be done.
  let even = 0;
  let odd = 0;
  let j = from;
  for (; j + 1 < to; j += 2) {
    even += values[j]!;
    odd += values[j + 1]!;
  }
  if (j < to) even += values[j]!;
  return even + odd;
}
