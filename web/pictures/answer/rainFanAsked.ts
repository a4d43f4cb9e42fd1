import type { AnswerAtRain, Comparison } from "../../../src/answer/comparison/comparison.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";

/** The user's own totals, to be marked; a range of years where none was asked for. */
export interface AskedRain {
  readonly fromMm: number;
  readonly toMm: number;
  /** `12 to 14 in, asked for` */
  readonly said: string;
  /** The answer from all runs, where there is one. */
  readonly answers: readonly (AnswerAtRain & { readonly rainTotalMm: number })[];
}

/**
 * The totals asked for; where the rain is as it came, what eight years of ten brought.
 *
 * @param source whether the years are a record's or generated from monthly normals
 */
export function askedRain(
  { byRainTotal, annualRainMm, method }: Comparison,
  source: "record" | "normals",
  shown: Formatters,
): AskedRain | null {
  const answers = byRainTotal
    .filter((at): at is (typeof byRainTotal)[number] & { rainTotalMm: number } => at.rainTotalMm !== null)
    .toSorted((a, b) => a.rainTotalMm - b.rainTotalMm);
  const [first, last] = [answers[0], answers.at(-1)];
  if (first !== undefined && last !== undefined) {
    const { rainTotalMm: fromMm } = first;
    const { rainTotalMm: toMm } = last;
    return { fromMm, toMm, said: `your ${rangeSaid(fromMm, toMm, shown)}`, answers };
  }
  if (annualRainMm === null || method.rainTotalOver === "season") return null;
  const { p10, p90 } = annualRainMm;
  return {
    fromMm: p10,
    toMm: p90,
    said: `${source === "record" ? "your record" : "generated years"}, ${rangeSaid(p10, p90, shown)}`,
    answers: [],
  };
}

function rangeSaid(fromMm: number, toMm: number, { total, length }: Formatters): string {
  const [from, to] = [total(fromMm), total(toMm)];
  return from === to ? `${from} ${length}` : `${from} to ${to} ${length}`;
}
