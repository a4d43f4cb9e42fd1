/** Where the dots of counted spots stand. */

export interface CountedShown {
  readonly title: string;
  readonly caseIndex: number;
  /** In the unit on show, like all of these. */
  readonly spots: readonly number[];
  readonly mean: number;
  readonly interval: { readonly low: number; readonly high: number } | null;
  /** From the lightest to the heaviest kernels; null where they were weighed. */
  readonly byWeight: { readonly low: number; readonly high: number } | null;
}

/**
 * How many dots each dot stands on, so that none covers another.
 *
 * @param places px along the axis, in any order
 * @param gapPx least distance between two dots on one level
 * @example levels([10, 12, 40], 8) // [0, 1, 0]
 */
export function levels(places: readonly number[], gapPx: number): number[] {
  const order = places.map((_, i) => i).sort((a, b) => places[a]! - places[b]!);
  const found = places.map(() => 0);
  const lastOn: number[] = [];
  for (const i of order) {
    const at = places[i]!;
    let level = lastOn.findIndex((last) => at - last >= gapPx);
    if (level < 0) level = lastOn.length;
    lastOn[level] = at;
    found[i] = level;
  }
  return found;
}

/** The least and the largest number that the picture has to hold. */
export function countedSpan(groups: readonly CountedShown[]): readonly [number, number] {
  const all = groups.flatMap(({ spots, mean, interval, byWeight }) => [
    ...spots,
    mean,
    ...(interval === null ? [] : [interval.low, interval.high]),
    ...(byWeight === null ? [] : [byWeight.low, byWeight.high]),
  ]);
  return [Math.min(...all), Math.max(...all)];
}
