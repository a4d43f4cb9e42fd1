/** A straight scale: numbers to pixels, with round numbers to mark on it. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
  /** Digits after the point that tell the ticks apart. */
  readonly digits: number;
}

/**
 * An axis over values, ending on round numbers, with about `count` steps of 1, 2 or 5.
 *
 * @param fromPx where the low end stands
 * @param toPx where the high end stands; may be the smaller one
 */
export function axisOver(
  low: number,
  high: number,
  fromPx: number,
  toPx: number,
  count: number,
  how: "ends rounded" | "ends as given" = "ends rounded",
): Axis {
  const span = high > low ? high - low : Math.max(1e-9, Math.abs(high) || 1);
  const step = roundStep(span / Math.max(1, count));
  const rounded = how === "ends rounded";
  const from = rounded ? Math.floor(low / step + 1e-9) * step : low;
  const to = rounded ? Math.max(Math.ceil((low + span) / step - 1e-9) * step, from + step) : low + span;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return {
    from,
    to,
    at: (value) => fromPx + ((value - from) / (to - from)) * (toPx - fromPx),
    ticks: Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step),
    digits: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

/** The next of 1, 2, 5 times a power of ten. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least) + 1e-9);
  return power * ([1, 2, 5, 10].find((one) => one * power >= least * (1 - 1e-9)) ?? 10);
}
