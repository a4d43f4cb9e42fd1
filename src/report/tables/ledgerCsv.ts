import { mmPerInch } from "../../quantity/constants.ts";
import type { CaseAfterRun } from "../../answer/runs/run.ts";
import { stageNames } from "../../crop/course.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Ledger } from "../../season/season.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import { isoDate } from "../../quantity/calendar.ts";
import { printable } from "../../printable.ts";
import { csvText } from "./csvText.ts";
import { roundForPrint } from "./roundForPrint.ts";

/** Columns taken as they are from the ledger; each name gets the unit of length behind it. */
const fluxes = [
  ["rain", "rainMm"],
  ["snowfall", "snowfallMm"],
  ["snow_caught", "snowCaughtMm"],
  ["melt", "meltMm"],
  ["snow_on_ground", "snowOnGroundMm"],
  ["runoff", "runoffMm"],
  ["infiltration", "infiltrationMm"],
  ["evaporation", "evaporationMm"],
  ["transpiration", "transpirationMm"],
  ["transpiration_demand", "transpirationDemandMm"],
  ["drainage", "drainageMm"],
  ["root_front", "frontMm"],
] as const satisfies readonly (readonly [string, keyof Ledger])[];

/** A ledger as a table: names with their unit, a row a day and case, the cases one after the other. */
export interface LedgerTable {
  readonly head: readonly string[];
  /** Null where there is nothing to say, such as stress on a day without demand. */
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/**
 * One run day by day. Numbers to six significant digits.
 * `stress` is transpiration as a share of demand, null on days without demand. The residual is always in mm.
 */
export function ledgerTable(
  cases: readonly CaseAfterRun[],
  weather: DailyWeather,
  units: Units,
): LedgerTable {
  const unit = units === "us" ? "in" : "mm";
  const layerCount = Math.max(...cases.map(({ plan }) => plan.layers.length));
  const layers = Array.from({ length: layerCount }, (_, layer) => layer);
  return {
    head: [
      "date",
      "case",
      "stage",
      `reference_et_${unit}`,
      ...fluxes.map(([name]) => `${name}_${unit}`),
      "stress",
      `storage_${unit}`,
      ...layers.map((layer) => `storage_layer_${layer + 1}_${unit}`),
      "residual_mm",
    ],
    rows: cases.flatMap((one) =>
      Array.from({ length: one.course.maturityDay + 1 }, (_, day) =>
        dayRow(one, day, layers, weather, units),
      ),
    ),
  };
}

function dayRow(
  one: CaseAfterRun,
  day: number,
  layers: readonly number[],
  weather: DailyWeather,
  units: Units,
): (string | number | null)[] {
  const { ledger, course, firstIndex, plan } = one;
  const index = firstIndex + day;
  const say = (mm: number) => roundForPrint(units === "us" ? mm / mmPerInch : mm);
  const demandMm = ledger.transpirationDemandMm[day]!;
  return [
    isoDate(weather.firstDay + index),
    plan.name,
    stageNames[course.stageByDay[day]!]!,
    say(weather.et0Mm[index]!),
    ...fluxes.map(([, key]) => say(ledger[key][day]!)),
    demandMm > 0 ? roundForPrint(ledger.transpirationMm[day]! / demandMm) : null,
    say(ledger.storageMm[day]!),
    ...layers.map((layer) => (layer < plan.layers.length ? say(layerStorageMm(one, day, layer)) : null)),
    roundForPrint(ledger.residualMm[day]!),
  ];
}

/** The table as CSV; null is an empty cell. */
export function ledgerCsv({ head, rows }: LedgerTable): string {
  return `${csvText([head, ...rows])}\n`;
}

/** The table as objects by column name, for JSON. */
export function ledgerObjects({ head, rows }: LedgerTable): Record<string, string | number | null>[] {
  return rows.map((row) =>
    Object.fromEntries(row.map((cell, c) => [head[c]!, typeof cell === "string" ? printable(cell) : cell])),
  );
}

/** All water in a user layer at the day's end, mm. */
function layerStorageMm({ ledger, slices }: CaseAfterRun, day: number, layer: number): number {
  const water = ledger.waterMmByDayAndSlice;
  if (water === null) throw new Error("the ledger keeps no water by slice");
  let mm = 0;
  for (let i = 0; i < slices.count; i++) if (slices.layer[i] === layer) mm += water[day * slices.count + i]!;
  return mm;
}
