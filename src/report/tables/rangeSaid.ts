import type { Spread } from "../../statistics/quantiles.ts";

type Say = (value: number) => string;

/** `0.1 to 0.8`, `0.2 less to 0.8 more`, `0.1 to 0.5 less`. */
export function rangeSaid({ p10, p50, p90 }: Spread, say: Say): string {
  const low = say(Math.abs(p10));
  const high = say(Math.abs(p90));
  const lowIsLess = p10 < 0 && Number(low) !== 0;
  const highIsMore = p90 > 0 && Number(high) !== 0;
  if (!lowIsLess) return `${low} to ${high}`;
  if (highIsMore) return `${low} less to ${high} more`;
  return p50 < 0 ? `${high} to ${low}` : `${low} less to ${high}`;
}

/** With its signs, for a table: `-0.2 to 0.8`. */
export function rangeSigned({ p10, p90 }: Spread, say: Say): string {
  return `${say(p10)} to ${say(p90)}`;
}

/** With its unit, and with what is less said so: `0.1 to 0.8 in`, `0.1 to 0.8 in less`, `0.2 in less to 0.8 in more`. */
export function rangeWithUnit({ p10, p90 }: Pick<Spread, "p10" | "p90">, say: Say, unit: string): string {
  const [low, high] = [say(Math.abs(p10)), say(Math.abs(p90))];
  const lowIsLess = p10 < 0 && Number(low) !== 0;
  const highIsMore = p90 > 0 && Number(high) !== 0;
  if (lowIsLess && highIsMore) return `${low} ${unit} less to ${high} ${unit} more`;
  return lowIsLess ? `${high} to ${low} ${unit} less` : `${low} to ${high} ${unit}`;
}

/** The same where no sentence before it says more: `0.10 to 0.80 in more`, `1.06 to 3.61 in less`. */
export function rangeMoreOrLess(spread: Pick<Spread, "p10" | "p90">, say: Say, unit: string): string {
  const said = rangeWithUnit(spread, say, unit);
  return /(?:more|less)$/.test(said) ? said : `${said} more`;
}

/** One end of a range that the middle does not show. */
export interface Tail {
  readonly side: "less" | "more";
  /** `17 bu/ac` */
  readonly amount: string;
}

/** The ends of a range that are at least `from` away from nothing, and not nothing as said: what one year in ten comes to, or passes. */
export function tailsToSay({ p10, p90 }: Spread, say: Say, unit: string, from: number): Tail[] {
  const tails: Tail[] = [];
  const isSaid = (value: number) => value >= from && Number(say(value)) !== 0;
  if (isSaid(-p10)) tails.push({ side: "less", amount: `${say(-p10)} ${unit}` });
  if (isSaid(p90)) tails.push({ side: "more", amount: `${say(p90)} ${unit}` });
  return tails;
}

/** `at least 17 bu/ac less in one year of ten` */
export function tailsSaid(tails: readonly Tail[]): string {
  return tails
    .map(({ side, amount }, t) => `at least ${amount} ${side} in ${t === 0 ? "one year of ten" : "one"}`)
    .join(" and ");
}
