import type { SeasonOfCase } from "../../answer/chain/seasonsOf.ts";
import { shownYield } from "../../answer/comparison/yieldUnits.ts";
import { isoDate } from "../../quantity/calendar.ts";
import { mmPerInch } from "../../quantity/constants.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { roundForPrint } from "./roundForPrint.ts";

type Cell = string | number | null;

/** Seasons as a table: names with their unit, a row a season and case. */
export interface SeasonsTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

interface Column {
  readonly name: string;
  /** Lengths get their unit behind the name. */
  readonly isLength?: true;
  readonly of: (season: SeasonOfCase) => Cell;
}

const mm = (name: string, of: (season: SeasonOfCase) => number | null): Column => ({
  name,
  isLength: true,
  of,
});

/**
 * All columns of a scenario's seasons. `year_rain` is that of the calendar year of sowing.
 *
 * @param lengthsIn of water and depth, whose unit is in their names; yields have theirs beside them
 */
export function seasonsTable(
  seasons: readonly SeasonOfCase[],
  scenario: Scenario,
  units: Units,
  lengthsIn: Units = units,
): SeasonsTable {
  const columns = columnsOf(scenario, units);
  const unit = lengthsIn === "us" ? "in" : "mm";
  const say = (value: Cell, isLength: boolean) =>
    typeof value === "number"
      ? roundForPrint(isLength && lengthsIn === "us" ? value / mmPerInch : value)
      : value;
  return {
    head: columns.map(({ name, isLength }) => (isLength === true ? `${name}_${unit}` : name)),
    rows: seasons.map((season) => columns.map(({ of, isLength }) => say(of(season), isLength === true))),
  };
}

function columnsOf({ cases, rotation, weather, yieldLine }: Scenario, units: Units): Column[] {
  const lineOf = (crop: string) =>
    rotation?.entries.find((entry) => entry?.crop === crop)?.yieldLine ?? yieldLine;
  const yieldIn = ({ row }: SeasonOfCase) => shownYield(lineOf(row.crop).unit, units);
  const layers = cases[0].layers.map((_, l) => l);
  const ofRotation: Column[] = [
    { name: "chain", of: ({ chain }) => chain },
    { name: "begins_with", of: ({ beginsWith }) => beginsWith },
    { name: "years_since_change", of: ({ sinceChange }) => sinceChange },
  ];
  return [
    ...(weather.rainTotalsMm.length === 0 ? [] : [mm("rain_total", ({ rainTotalMm }) => rainTotalMm)]),
    ...(rotation === null ? [{ name: "run", of: ({ run }: SeasonOfCase) => run }] : ofRotation),
    { name: "crop", of: ({ row }) => row.crop },
    { name: "case", of: (season) => season.case },
    { name: "first_day", of: ({ row }) => isoDate(row.firstDay) },
    { name: "sowing", of: ({ row }) => isoDate(row.sowingDay) },
    { name: "harvest", of: ({ row }) => isoDate(row.harvestDay) },
    { name: "ripe", of: ({ row }) => (row.ripe ? "yes" : "no") },
    mm("year_rain", ({ row }) => row.yearRainMm),
    mm("fallow_rain", ({ row }) => row.totals.fallowRainMm),
    mm("season_rain", ({ row }) => row.totals.rainMm),
    mm("stored_on_first_day", ({ row }) => row.storedAtFirstMm),
    mm("stored_at_sowing", ({ row }) => row.totals.storedAtSowingMm),
    ...layers.map((l) =>
      mm(`stored_at_sowing_layer_${l + 1}`, ({ row }) => row.storedAtSowingMmByLayer[l] ?? null),
    ),
    mm("fallow_evaporation", ({ row }) => row.fallowEvaporationMm),
    mm("fallow_runoff", ({ row }) => row.fallowRunoffMm),
    mm("fallow_drainage", ({ row }) => row.fallowDrainageMm),
    mm("depth_wetted", ({ row }) => row.depthWettedMm),
    mm("transpiration", ({ row }) => row.totals.transpirationMm),
    mm("evaporation", ({ row }) => row.totals.evaporationMm),
    mm("runoff", ({ row }) => row.totals.runoffMm),
    mm("drainage", ({ row }) => row.totals.drainageMm),
    mm("root_depth", ({ row }) => row.totals.finalRootDepthMm),
    { name: "share_after_flowering", of: ({ row }) => shareAfterFlowering(row.totals) },
    { name: "met_around_flowering", of: ({ row }) => row.totals.metAroundFlowering },
    { name: "yield", of: (season) => season.row.yieldKgPerHa * yieldIn(season).factor },
    { name: "yield_unit", of: (season) => yieldIn(season).unit },
    mm(
      "extra_root_depth",
      ({ row, ofFirst }) => row.totals.finalRootDepthMm - ofFirst.totals.finalRootDepthMm,
    ),
    mm(
      "extra_transpiration",
      ({ row, ofFirst }) => row.totals.transpirationMm - ofFirst.totals.transpirationMm,
    ),
    {
      name: "extra_yield",
      of: (season) => (season.row.yieldKgPerHa - season.ofFirst.yieldKgPerHa) * yieldIn(season).factor,
    },
    { name: "residual_mm", of: ({ row }) => row.residualMm },
  ];
}

function shareAfterFlowering(totals: SeasonOfCase["row"]["totals"]): number | null {
  return totals.transpirationMm > 0 ? totals.transpirationAfterFloweringMm / totals.transpirationMm : null;
}

/** A column by its name, with or without its unit; -1 where there is none. */
export function columnNamed({ head }: SeasonsTable, name: string): number {
  const wanted = name.trim().toLowerCase();
  const exact = head.indexOf(wanted);
  return exact >= 0 ? exact : head.findIndex((one) => one.replace(/_(?:in|mm)$/, "") === wanted);
}

/** In the order of a column; rows that lack it come last, equal ones stay as they were. */
export function sortedBy({ head, rows }: SeasonsTable, column: number, falling: boolean): SeasonsTable {
  const compare = (a: Cell, b: Cell): number => {
    if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
    const order =
      typeof a === "number" && typeof b === "number" ? a - b : String(a) < String(b) ? -1 : a === b ? 0 : 1;
    return falling ? -order : order;
  };
  return { head, rows: rows.toSorted((a, b) => compare(a[column] ?? null, b[column] ?? null)) };
}

export function onlyColumns({ head, rows }: SeasonsTable, columns: readonly number[]): SeasonsTable {
  return {
    head: columns.map((column) => head[column]!),
    rows: rows.map((row) => columns.map((column) => row[column] ?? null)),
  };
}
