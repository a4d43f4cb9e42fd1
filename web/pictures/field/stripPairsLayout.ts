/** Pairs of strips as lines from one case to the other, and the mean difference beside them. */

export interface StripPairsShown {
  readonly names: readonly [string, string];
  /** In the unit on show, like all of these; null where a strip's yield is missing. */
  readonly pairs: readonly (readonly [number | null, number | null])[];
  /** Over whole pairs; null without any. */
  readonly means: readonly [number, number] | null;
  readonly difference: {
    readonly value: number;
    readonly interval: { readonly low: number; readonly high: number } | null;
    /** `4.6 bu/ac more (1.1 to 9.3 bu/ac more)` */
    readonly said: string;
  } | null;
}

/** All that has to find room: the strips, and the difference set on the mean of the first case. */
export function stripSpan({ pairs, means, difference }: StripPairsShown): readonly [number, number] {
  const strips = pairs.flat().filter((one) => one !== null);
  const base = means?.[0] ?? 0;
  const ends =
    means === null || difference === null
      ? []
      : [
          base,
          base + difference.value,
          ...(difference.interval === null
            ? []
            : [base + difference.interval.low, base + difference.interval.high]),
        ];
  const all = [...strips, ...ends];
  return all.length === 0 ? [0, 1] : [Math.min(...all), Math.max(...all)];
}

/**
 * Labels moved apart, each as near its own place as the others let it; their order stays.
 *
 * @param places px, in any order
 * @example apart([10, 12, 40], 14) // [4, 18, 40]
 */
export function apart(places: readonly number[], gapPx: number): number[] {
  const order = places.map((_, i) => i).sort((a, b) => places[a]! - places[b]!);
  // Runs of labels that touch are spaced evenly about their middle.
  const runs: { own: number[]; middle: number }[] = [];
  for (const i of order) {
    runs.push({ own: [i], middle: places[i]! });
    for (;;) {
      const [before, last] = runs.slice(-2);
      if (before === undefined || last === undefined) break;
      const needed = ((before.own.length + last.own.length) / 2) * gapPx;
      if (last.middle - before.middle >= needed - 1e-9) break;
      const own = [...before.own, ...last.own];
      runs.splice(-2, 2, { own, middle: own.reduce((sum, one) => sum + places[one]!, 0) / own.length });
    }
  }
  const found = [...places];
  for (const { own, middle } of runs)
    own.forEach((i, place) => (found[i] = middle + (place - (own.length - 1) / 2) * gapPx));
  return found;
}
