import type { Sensitivity } from "../../answer/sensitivity/sensitivity.ts";
import { roundForPrint } from "./roundForPrint.ts";
import { answerIn, lengthsIn } from "./sensitivityShown.ts";
import type { JsonUnits } from "./unitsBeside.ts";

type Cell = string | number | null;

const head = [
  "scenario",
  "case",
  "against",
  "answer",
  "unit",
  "middle",
  "factor",
  "range_unit",
  "range_low",
  "range_high",
  "at_low",
  "at_high",
  "swing",
  "first_share",
  "first_share_low",
  "first_share_high",
  "total_share",
  "total_share_low",
  "total_share_high",
];

/** A row for each pair, answer and factor, the widest swing of an answer first. */
export function sensitivityTable(
  { pairs }: Sensitivity,
  scenario: string,
  units: JsonUnits,
): { readonly head: readonly string[]; readonly rows: readonly (readonly Cell[])[] } {
  const rows = pairs.flatMap(({ from, to, answers }) =>
    answers.flatMap((answer) => {
      const { kind, unit, middle, factors } = answerIn(answer, units, lengthsIn(units));
      return factors.map(({ name, range, atLow, atHigh, swing, share }): Cell[] => [
        scenario,
        to,
        from,
        kind,
        unit,
        middle,
        name,
        range.unit,
        range.low,
        range.high,
        atLow,
        atHigh,
        swing,
        ...[share?.first, share?.total].flatMap((one) => [
          one?.value ?? null,
          one?.low ?? null,
          one?.high ?? null,
        ]),
      ]);
    }),
  );
  return {
    head,
    rows: rows.map((row) => row.map((cell) => (typeof cell === "number" ? roundForPrint(cell) : cell))),
  };
}
