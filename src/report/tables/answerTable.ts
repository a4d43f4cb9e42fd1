import type { Comparison, DifferenceAnswer } from "../../answer/comparison/comparison.ts";
import type { MoneyOfPair } from "../../answer/money/money.ts";
import { haPerAcre, mmPerInch } from "../../quantity/constants.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { roundForPrint } from "./roundForPrint.ts";

type Cell = string | number | null;

/** The answer as a flat table: a row for each rainfall total and case, units in the names of the columns. */
export interface AnswerTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

interface Row {
  readonly rainTotalMm: number | null;
  readonly case: Comparison["cases"][number];
  /** Null for the first case, which the others are compared with. */
  readonly difference: DifferenceAnswer | null;
  readonly money: MoneyOfPair | null;
}

interface Column {
  readonly name: string;
  readonly of: (row: Row) => Cell;
}

const points = ["p10", "p50", "p90"] as const;

/** @param units of every column but shares, which are 0 to 1 */
export function answerTable(comparison: Comparison, units: Units): AnswerTable {
  const columns = columnsOf(comparison, units);
  const rows = comparison.byRainTotal.flatMap((at, t) =>
    at.cases.map((one, c): Row => ({
      rainTotalMm: at.rainTotalMm,
      case: one,
      difference: c === 0 ? null : (at.differences[c - 1] ?? null),
      money: c === 0 ? null : (comparison.money?.byRainTotal[t]?.pairs[c - 1] ?? null),
    })),
  );
  return {
    head: columns.map(({ name }) => name),
    rows: rows.map((row) => columns.map(({ of }) => rounded(of(row)))),
  };
}

function columnsOf({ method, cases, differences, money, chain }: Comparison, units: Units): Column[] {
  const { unit } = cases[0]!.yield;
  const [length, perMm] = units === "us" ? ["in", 1 / mmPerInch] : ["mm", 1];
  const [land, perHa] = units === "us" ? ["ac", haPerAcre] : ["ha", 1];
  const yieldUnit = unit.replace("/", "_per_");
  const mm = (name: string, of: (row: Row) => number | null): Column => ({
    name: `${name}_${length}`,
    of: (row) => times(of(row), perMm),
  });
  const spread = (name: string, inUnit: string, factor: number, of: (row: Row) => Spread | null): Column[] =>
    points.map((point) => ({
      name: `${name}_${point}_${inUnit}`,
      of: (row) => times(of(row)?.[point] ?? null, factor),
    }));
  return [
    mm(`${method.rainTotalOver}_rain_total`, ({ rainTotalMm }) => rainTotalMm),
    { name: "case", of: (row) => row.case.name },
    { name: "against", of: ({ difference }) => difference?.from ?? null },
    ...(chain === undefined ? [] : [{ name: "years", of: () => "year after year" }]),
    mm("root_depth", (row) => row.case.finalRootDepthMm),
    mm("stored_at_sowing", (row) => row.case.storedAtSowingMm),
    mm("season_rain", (row) => row.case.seasonRainMm),
    mm("water_use", (row) => row.case.waterUseMm),
    mm("transpiration", (row) => row.case.transpirationMm),
    mm("evaporation", (row) => row.case.evaporationMm),
    mm("runoff", (row) => row.case.runoffMm),
    mm("drainage", (row) => row.case.drainageMm),
    ...spread("yield", yieldUnit, 1, (row) => row.case.yield),
    ...(differences.length === 0
      ? []
      : [
          mm("extra_root_depth", ({ difference }) => difference?.extraDepthMm ?? null),
          mm("rule_of_thumb", ({ difference }) => difference?.ruleOfThumbMm ?? null),
          mm("stored_in_extra_depth", ({ difference }) => difference?.storedInExtraDepthMm ?? null),
          ...spread("extra_water", length, perMm, ({ difference }) => difference?.extraWaterUsedMm ?? null),
          ...spread("extra_yield", yieldUnit, 1, ({ difference }) => difference?.extraYield ?? null),
          {
            name: "share_of_seasons_it_mattered",
            of: ({ difference }: Row) => difference?.shareOfSeasonsItMattered ?? null,
          },
        ]),
    ...(money === null
      ? []
      : [
          ...spread(
            "net",
            `${money.currency.toLowerCase()}_per_${land}`,
            perHa,
            (row) => row.money?.netPerHa ?? null,
          ),
          { name: "chance_it_pays", of: (row: Row) => row.money?.chanceItPays ?? null },
        ]),
  ];
}

function times(value: number | null, factor: number): number | null {
  return value === null ? null : value * factor;
}

function rounded(cell: Cell): Cell {
  return typeof cell === "number" ? roundForPrint(cell) : cell;
}
