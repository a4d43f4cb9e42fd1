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
