/** Straight scales and round numbers to mark on them: for the pictures of the page and of the report. */

/** Values to places on an axis. */
export type Scale = (value: number) => number;

/** `from` stands at `start`, `to` at `end`, which may be the smaller place; all at `start` where the two values are one. */
export function scaleTo(from: number, to: number, start: number, end: number): Scale {
  // In halves, so that the span of two huge values is a number too.
  const half = to / 2 - from / 2;
  return (value) => (half === 0 ? start : start + ((value / 2 - from / 2) / half) * (end - start));
}

/** Steps as people count: 1, 2, 5, 10, 20, … */
const counted = [1, 2, 5] as const;
/** As fine as a span is told from none, against its ends. */
const fine = 1e-9;

/**
 * The least round number that is not below a number: one of `kinds` times a power of ten.
 *
 * @param least above 0; for what is not, 1
 * @param kinds ascending, from 1 to below 10
 * @example roundUp(0.3) // 0.5
 */
export function roundUp(least: number, kinds: readonly number[] = counted): number {
  if (!(least >= Number.MIN_VALUE / Number.EPSILON)) return 1;
  const power = Math.floor(Math.log10(least) + fine);
  const kind = [...kinds, 10].find((one) => timesTen(one, power) >= least * (1 - fine)) ?? 10;
  return Math.min(Number.MAX_VALUE, timesTen(kind, power));
}

/** Exact for negative powers too: 3 times 10 ** -1 is not 0.3. */
function timesTen(kind: number, power: number): number {
  return power < 0 && power > -300 ? kind / 10 ** -power : kind * 10 ** power;
}

/**
 * All multiples of a step from one value to another.
 *
 * @param step above 0
 * @example multiplesWithin(-0.3, 0.4, 0.2) // [-0.2, 0, 0.2, 0.4]
 */
export function multiplesWithin(from: number, to: number, step: number): number[] {
  return multiples(Math.ceil(from / step - fine), Math.floor(to / step + fine), step);
}

function multiples(first: number, last: number, step: number): number[] {
  const perOne = Math.round(1 / step);
  // Divided where that is exact: 3 times 0.1 is not 0.3. No minus zero.
  const at = (i: number) => (Math.abs(perOne * step - 1) < fine ? i / perOne : i * step) + 0;
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => at(first + i));
}

/**
 * Round values to mark from one end to the other, in about `most` steps or fewer.
 *
 * @param most steps, 1 or more: so many marks, and one more
 * @returns `from` alone where there is no span
 * @example marksBetween(0, 71, 5) // [0, 20, 40, 60]
 */
export function marksBetween(from: number, to: number, most: number): number[] {
  if (!isSpan(from, to)) return [from];
  return multiplesWithin(from, to, roundUp(to / most - from / most));
}

/** Values to pixels, with round numbers to mark. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly at: Scale;
  readonly step: number;
  readonly ticks: readonly number[];
  /** Digits after the point that tell the ticks apart. */
  readonly digits: number;
}

/**
 * An axis over values, ending on round numbers, with about `count` steps.
 *
 * @param fromPx where the low end stands
 * @param toPx where the high end stands; may be the smaller one
 */
export function axisOver(low: number, high: number, fromPx: number, toPx: number, count: number): Axis {
  const end = isSpan(low, high) ? high : low + (Math.abs(low) || 1);
  const steps = Math.max(1, count);
  const step = roundUp(end / steps - low / steps);
  const first = Math.floor(low / step + fine);
  const ticks = multiples(first, Math.max(Math.ceil(end / step - fine), first + 1), step);
  const [from, to] = [ticks[0]!, ticks.at(-1)!];
  return {
    from,
    to,
    at: scaleTo(from, to, fromPx, toPx),
    step,
    ticks,
    digits: Math.max(0, -Math.floor(Math.log10(step) + fine)),
  };
}

/** Two values that a scale can tell apart. */
function isSpan(from: number, to: number): boolean {
  return to / 2 - from / 2 > fine * Math.max(Math.abs(from), Math.abs(to));
}
