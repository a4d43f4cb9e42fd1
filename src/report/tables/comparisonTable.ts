import type {
  AnswerAtRain,
  CaseAnswer,
  Comparison,
  DifferenceAnswer,
} from "../../answer/comparison/comparison.ts";
import type { MoneyOfPair } from "../../answer/money/money.ts";
import { haPerAcre, mmPerInch } from "../../quantity/constants.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { roundForPrint } from "./roundForPrint.ts";

type Cell = string | number | null;

/** A comparison as a table: a row for each rainfall total and case. */
export interface ComparisonTable {
  /** Figures with a unit have it behind the name. */
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

interface Row {
  readonly answer: Comparison;
  readonly at: AnswerAtRain;
  readonly case: CaseAnswer;
  /** Null in the row of the first case, which is what the others are held against. */
  readonly difference: DifferenceAnswer | null;
  readonly money: MoneyOfPair | null;
}

interface Column {
  readonly name: string;
  readonly kind?: "length" | "moneyByArea" | "yield";
  /** The unit or currency of other columns: of many scenarios it differs, of one it stands in the head. */
  readonly isUnit?: true;
  readonly of: (row: Row) => Cell;
}

const mm = (name: string, of: (row: Row) => number | null): Column => ({ name, kind: "length", of });
const spread = (name: string, of: (row: Row) => Spread | null, kind?: Column["kind"]): Column[] =>
  (["p10", "p50", "p90"] as const).map((p) => ({
    name: `${name}_${p}`,
    ...(kind === undefined ? {} : { kind }),
    of: (row) => of(row)?.[p] ?? null,
  }));

/** With a rotation these are year after year, as in the answer's own `cases`. */
const columns: readonly Column[] = [
  { name: "scenario", of: ({ answer }) => answer.scenario },
  { name: "years", of: ({ answer }) => (answer.chain === undefined ? "single seasons" : "year after year") },
  mm("rain_total", ({ at }) => at.rainTotalMm),
  ...spread("year_rain", ({ at }) => at.annualRainMm, "length"),
  { name: "runs", of: ({ answer }) => answer.method.runs },
  { name: "case", of: (row) => row.case.name },
  { name: "against", of: ({ difference }) => difference?.from ?? null },
  mm("root_depth", (row) => row.case.finalRootDepthMm),
  mm("stored_at_sowing", (row) => row.case.storedAtSowingMm),
  mm("season_rain", (row) => row.case.seasonRainMm),
  mm("transpiration", (row) => row.case.transpirationMm),
  mm("evaporation", (row) => row.case.evaporationMm),
  mm("runoff", (row) => row.case.runoffMm),
  mm("drainage", (row) => row.case.drainageMm),
  mm("water_use", (row) => row.case.waterUseMm),
  { name: "fallow_storage_share", of: (row) => row.case.fallowStorageShare },
  { name: "demand_met", of: (row) => row.case.demandMet },
  { name: "unripe_share", of: (row) => row.case.unripeShare },
  ...spread("yield", (row) => row.case.yield, "yield"),
  { name: "yield_unit", isUnit: true, of: (row) => row.case.yield.unit },
  mm("extra_root_depth", ({ difference }) => difference?.extraDepthMm ?? null),
  mm("rule_of_thumb", ({ difference }) => difference?.ruleOfThumbMm ?? null),
  mm("stored_in_extra_depth", ({ difference }) => difference?.storedInExtraDepthMm ?? null),
  ...spread("extra_water_used", ({ difference }) => difference?.extraWaterUsedMm ?? null, "length"),
  { name: "share_of_seasons_it_mattered", of: (row) => row.difference?.shareOfSeasonsItMattered ?? null },
  ...spread("extra_yield", ({ difference }) => difference?.extraYield ?? null, "yield"),
  // Yields are those of the rows that change, money is that of the whole field: this share leads from one to the other.
  {
    name: "share_of_rows_that_change",
    of: ({ money }) => (money === null ? null : (money.rows?.share ?? 1)),
  },
  ...spread("net", ({ money }) => money?.netPerHa ?? null, "moneyByArea"),
  { name: "currency", isUnit: true, of: ({ answer }) => answer.money?.currency ?? null },
  { name: "chance_it_pays", of: ({ money }) => money?.chanceItPays ?? null },
];

const unitOf = {
  length: { us: { name: "in", factor: 1 / mmPerInch }, metric: { name: "mm", factor: 1 } },
  moneyByArea: { us: { name: "per_ac", factor: haPerAcre }, metric: { name: "per_ha", factor: 1 } },
  // A yield is already as people count it.
  yield: { us: { name: "", factor: 1 }, metric: { name: "", factor: 1 } },
} as const;

/** The same for every scenario in the same units. */
export function comparisonHead(units: Units): string[] {
  return columns.map(({ name, kind }) => named(name, kind === undefined ? "" : unitOf[kind][units].name));
}

/** @param units that the answer was made in: of its yields */
export function comparisonTable(answer: Comparison, units: Units): ComparisonTable {
  return { head: comparisonHead(units), rows: rowsOf(answer).map((row) => cellsOf(columns, row, units)) };
}

/** Of one answer alone: the unit of yields and money stands in the head too. */
export function tableOfOne(answer: Comparison, units: Units): ComparisonTable {
  const own = columns.filter(({ isUnit }) => isUnit !== true);
  const yieldUnit = answer.cases[0]!.yield.unit.replace("/", "_per_");
  const currency = answer.money?.currency.toLowerCase() ?? "";
  const head = own.map(({ name, kind }) => {
    if (kind === undefined) return name;
    if (kind === "yield") return named(name, yieldUnit);
    const { name: unit } = unitOf[kind][units];
    return kind === "moneyByArea" ? named(named(name, currency), unit) : named(name, unit);
  });
  return { head, rows: rowsOf(answer).map((row) => cellsOf(own, row, units)) };
}

const named = (name: string, unit: string) => (unit === "" ? name : `${name}_${unit}`);

function rowsOf(answer: Comparison): Row[] {
  return answer.byRainTotal.flatMap((at, t) =>
    at.cases.map((one, c) => ({
      answer,
      at,
      case: one,
      difference: at.differences[c - 1] ?? null,
      money: answer.money?.byRainTotal[t]?.pairs[c - 1] ?? null,
    })),
  );
}

function cellsOf(of: readonly Column[], row: Row, units: Units): Cell[] {
  return of.map(({ kind, of: valueOf }) => {
    const value = valueOf(row);
    if (typeof value !== "number") return value;
    return roundForPrint(kind === undefined ? value : value * unitOf[kind][units].factor);
  });
}

/** A column by its name, with or without its unit; -1 where there is none. */
export function comparisonColumn(head: readonly string[], name: string): number {
  const wanted = name.trim().toLowerCase();
  const exact = head.indexOf(wanted);
  return exact >= 0
    ? exact
    : head.findIndex((one) => one.replace(/_(?:in|mm|per_ac|per_ha)$/, "") === wanted);
}
