import {
  type HorizonFormat,
  cm,
  columnsNamed,
  densityRange,
  depthCmRange,
  percentRange,
  sandFrom,
} from "./horizonFormat.ts";
import { numberIn, textIn, type HorizonRow } from "./horizonTable.ts";

/** mm a day in one um/s. */
const mmPerDayPerUmPerS = 86.4;

/** A table of one component, typed off or cut out, has often no key, and no name either. */
function keyOf(row: HorizonRow): string {
  return textIn(row, "cokey") || nameOf(row) || "the only component";
}

function nameOf(row: HorizonRow): string {
  return ["compname", "areasymbol", "musym"]
    .map((column) => textIn(row, column))
    .filter(Boolean)
    .join(" ");
}

/**
 * Soil-survey horizons by component, with the survey's public column names: representative values (`_r`), depths in cm, water
 * and texture in percent, `dbthirdbar` in g/cm3 at 33 kPa, `ksat` in um/s, `awc` in cm per cm of whole soil, and where the
 * export holds them `wthirdbar`, `wfifteenbar` (volume percent) and `fragvol` (stones, volume percent; these three from memory).
 */
export const surveyHorizons: HorizonFormat = {
  name: "soil survey horizons",
  profileWord: "component",
  ...columnsNamed(["hzdept_r", "hzdepb_r"], ["hzdept_r", "hzdepb_r", "claytotal_r"]),
  choiceColumns: ["compname", "cokey"],
  profileKey: keyOf,
  labels: (row) => [keyOf(row), nameOf(row), textIn(row, "compname")],
  // The same component stands once for every map unit it was joined to.
  horizonKey: (row) => textIn(row, "chkey") || `${textIn(row, "hzdept_r")} ${textIn(row, "hzdepb_r")}`,
  horizon: (table, row) => {
    const read = (column: string, range: readonly [number, number]): number | undefined =>
      numberIn(table, row, column, range) ?? undefined;
    const share = (column: string): number | undefined => {
      const value = read(column, percentRange);
      return value === undefined ? undefined : value / 100;
    };
    const clay = numberIn(table, row, "claytotal_r", percentRange);
    const sand = numberIn(table, row, "sandtotal_r", percentRange);
    const density = read("dbthirdbar_r", densityRange);
    const ksat = read("ksat_r", [0, 10_000]);
    const available = read("awc_r", [0, 1]);
    const topCm = read("hzdept_r", depthCmRange);
    const name = textIn(row, "hzname") || `horizon at ${topCm ?? "?"} cm`;
    const notes: string[] = [];
    if (available === 0) {
      notes.push(
        `${name}: the survey gives no available water there, as where roots are shut out; it is estimated instead`,
      );
    }
    return {
      line: row.line,
      notes,
      layer: {
        name,
        topMm: (topCm ?? Number.NaN) * cm,
        bottomMm: (read("hzdepb_r", depthCmRange) ?? Number.NaN) * cm,
        sandFraction: sandFrom(sand, numberIn(table, row, "silttotal_r", percentRange), clay),
        clayFraction: clay === null ? undefined : clay / 100,
        organicMatterPercent: read("om_r", percentRange),
        bulkDensityKgPerM3: density === undefined ? undefined : density * 1000,
        saturatedConductivityMmPerDay: ksat ? ksat * mmPerDayPerUmPerS : undefined,
        fieldCapacity: share("wthirdbar_r"),
        wiltingPoint: share("wfifteenbar_r"),
        // Stated limits say more than their difference rounded to a hundredth.
        availableWater: share("wthirdbar_r") === undefined && available ? available : undefined,
        gravelVolumeFraction: share("fragvol_r"),
      },
    };
  },
};
