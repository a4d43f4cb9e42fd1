import { refuse } from "../../problem.ts";
import { mmPerInch } from "../../quantity/constants.ts";
import { textureClassNamed } from "../equations/texture.ts";
import { densityRange, percentRange, sandFrom, type HorizonFormat } from "./horizonFormat.ts";
import { numberIn, textIn, type HorizonRow, type HorizonTable } from "./horizonTable.ts";
import {
  printedColumns,
  printedNeeded,
  printedProperty,
  type PrintedColumn,
  type PrintedProperty,
} from "./printedColumns.ts";

/** Depths in mm; 10 m of soil are more than any table has. */
const mostMm = 10_000;
/** A fraction of the soil's volume that no soil keeps for plants. Ours; peat comes near it. */
const mostAvailable = 0.6;

/** What such tables print where there is no soil any more. */
const bedrock = /^(?:(?:un)?weathered )?bedrock$|^(?:u?wb|br)$/i;

/**
 * A soil table as a web page or a report prints it, or as somebody typed it: "Top (in)", "Bottom (in)", or one "Depth (in)" with
 * "0 to 6"; "Sand %", "Clay %" or a texture class by its name, and what else there is. The unit stands in the header.
 */
export const printedHorizons: HorizonFormat = {
  name: "a printed soil table",
  profileWord: "component",
  knows: (columns) => {
    const has = new Set(columns.map((column) => printedProperty(column)?.property));
    return has.has("depth") || (has.has("top") && has.has("bottom"));
  },
  needed: printedNeeded,
  lacks: (columns) => {
    const has = new Set(columns.map((column) => printedProperty(column)?.property));
    if (has.has("texture")) return [];
    return (["sand", "clay"] as const).filter((one) => !has.has(one) && !(one === "sand" && has.has("silt")));
  },
  orElse: 'write a column "Texture" with the class by its name, or "Sand %" and "Clay %"',
  saysUnit: true,
  choiceColumns: ["soil"],
  profileKey: (row) => soilOf(row) || "the only soil",
  labels: (row) => [soilOf(row)],
  horizonKey: (row) => String(row.line),
  horizon: (table, row) => {
    const columns = printedColumns(table);
    const text = (property: PrintedProperty): string => {
      const at = columns.get(property);
      return at === undefined ? "" : textIn(row, at.column);
    };
    const read = (property: PrintedProperty, range: readonly [number, number]): number | null => {
      const at = columns.get(property);
      return at === undefined ? null : numberIn(table, row, at.column, range);
    };
    const [topMm, bottomMm] = depthsOf(table, row, columns);
    const written = text("texture");
    const isRock = bedrock.test(written);
    const clay = read("clay", percentRange);
    const sand = sandFrom(read("sand", percentRange), read("silt", percentRange), clay);
    const isMeasured = sand !== undefined && clay !== null;
    const density = read("bulk density", [0, Infinity]);
    const available = availableOf(table, row, columns.get("AWC"));
    const ksat = read("Ksat", [0, 10_000]);
    const stones = read("stones", percentRange);
    return {
      line: row.line,
      notes: [],
      layer: {
        name: text("horizon") || (isRock ? "R" : `horizon at ${sayTop(topMm, columns)}`),
        topMm,
        bottomMm,
        texture:
          isMeasured || isRock || written === ""
            ? undefined
            : textureClassNamed(
                written,
                `${table.fileName} line ${row.line} column ${columns.get("texture")!.column}`,
              ),
        sandFraction: isMeasured ? sand : undefined,
        clayFraction: isMeasured ? clay / 100 : undefined,
        organicMatterPercent: read("organic matter", percentRange) ?? undefined,
        bulkDensityKgPerM3: densityOf(table, row, density, columns.get("bulk density")),
        saturatedConductivityMmPerDay: ksat ? ksat * columns.get("Ksat")!.factor : undefined,
        availableWater: available || undefined,
        gravelVolumeFraction: stones === null ? undefined : stones / 100,
      },
    };
  },
};

function soilOf(row: HorizonRow): string {
  for (const column of row.cells.keys())
    if (printedProperty(column)?.property === "soil") return textIn(row, column);
  return "";
}

/** Of two columns, or of one with `0 to 6` or `0-6`. */
function depthsOf(
  table: HorizonTable,
  row: HorizonRow,
  columns: ReadonlyMap<PrintedProperty, PrintedColumn>,
): [topMm: number, bottomMm: number] {
  const [top, bottom] = [columns.get("top"), columns.get("bottom")];
  if (top !== undefined && bottom !== undefined) {
    const of = ({ column, factor }: PrintedColumn) => {
      const value = numberIn(table, row, column, [0, mostMm / factor]);
      return (
        (value ??
          refuse(`${table.fileName} line ${row.line} column ${column}`, "a depth", undefined, "fill it in")) *
        factor
      );
    };
    return [of(top), of(bottom)];
  }
  const { column, factor } = columns.get("depth")!;
  const text = textIn(row, column);
  const [, from, to] = /^(\d+(?:\.\d+)?)\s*(?:to|-|–)\s*(\d+(?:\.\d+)?)$/i.exec(text) ?? [];
  if (from === undefined || to === undefined || Number(to) * factor > mostMm)
    return refuse(
      `${table.fileName} line ${row.line} column ${column}`,
      'two depths such as "0 to 6"',
      text,
      "write top and bottom of the horizon",
    );
  return [Number(from) * factor, Number(to) * factor];
}

function densityOf(
  { fileName }: HorizonTable,
  { line }: HorizonRow,
  density: number | null,
  at: PrintedColumn | undefined,
): number | undefined {
  if (density === null || at === undefined) return undefined;
  const [low, high] = densityRange;
  const kgPerM3 = density * at.factor;
  if (kgPerM3 < low * 1000 || kgPerM3 > high * 1000)
    refuse(
      `${fileName} line ${line} column ${at.column}`,
      `a density from ${low} to ${high} g/cm3`,
      `${density} ${at.unit}`,
      "correct it, or write its unit in the header",
    );
  return kgPerM3;
}

/** In the table's own unit: `6 in`. */
function sayTop(topMm: number, columns: ReadonlyMap<PrintedProperty, PrintedColumn>): string {
  const { factor, unit } = (columns.get("top") ?? columns.get("depth"))!;
  return `${Math.round((topMm / factor) * 10) / 10} ${unit}`;
}

/** 0 where the table prints none, as under rock. */
function availableOf(table: HorizonTable, row: HorizonRow, at: PrintedColumn | undefined): number {
  if (at === undefined) return 0;
  const value = numberIn(table, row, at.column, [0, 100]) ?? 0;
  if (value * at.factor > mostAvailable)
    refuse(
      `${table.fileName} line ${row.line} column ${at.column}`,
      `available water from 0 to ${mostAvailable} of the soil's volume`,
      `${value} ${at.unit}`,
      'write its unit in the header, such as "AWC (in/ft)" or "AWC %"',
    );
  return value * at.factor;
}

/** `31.5 in (80 cm)`: what a table in inches is told in. */
export function sayInches(mm: number): string {
  return `${Math.round((mm / mmPerInch) * 10) / 10} in (${Math.round(mm) / 10} cm)`;
}
