import {
  type HorizonFormat,
  cm,
  columnsNamed,
  densityRange,
  depthCmRange,
  percentRange,
  sandFrom,
} from "./horizonFormat.ts";
import { numberIn, textIn } from "./horizonTable.ts";
import { volumeFromGravimetric } from "../layers/startingWater.ts";

/**
 * Laboratory horizons by pedon: depths in cm, texture in percent, bulk density of the 33 kPa clod in g/cm3, and water at 33 and
 * 1500 kPa in percent by weight, turned into volume with that density. Water without a density is put aside.
 */
export const laboratoryHorizons: HorizonFormat = {
  name: "laboratory horizons",
  profileWord: "pedon",
  ...columnsNamed(["pedon_id", "hzn_top_cm"], ["pedon_id", "hzn_top_cm", "hzn_bot_cm", "clay_pct"]),
  choiceColumns: ["taxon_name", "pedon_id"],
  profileKey: (row) => textIn(row, "pedon_id"),
  labels: (row) => [
    textIn(row, "pedon_id"),
    [textIn(row, "taxon_name"), textIn(row, "pedon_id")].filter(Boolean).join(" "),
    textIn(row, "taxon_name"),
  ],
  horizonKey: (row) =>
    `${textIn(row, "hzn_desgn")} ${textIn(row, "hzn_top_cm")} ${textIn(row, "hzn_bot_cm")}`,
  horizon: (table, row) => {
    const clay = numberIn(table, row, "clay_pct", percentRange);
    const sand = numberIn(table, row, "sand_pct", percentRange);
    const density = numberIn(table, row, "bulk_density_33kpa_g_cm3", densityRange);
    const topCm = numberIn(table, row, "hzn_top_cm", depthCmRange);
    const water33 =
      numberIn(table, row, "water_33kpa_clod_wt_pct", percentRange) ??
      numberIn(table, row, "water_33kpa_sieved_wt_pct", percentRange);
    const water1500 = numberIn(table, row, "water_1500kpa_sieved_wt_pct", percentRange);
    const name = textIn(row, "hzn_desgn") || `horizon at ${topCm ?? "?"} cm`;
    const byVolume = (weightPercent: number | null): number | undefined =>
      density === null || !weightPercent ? undefined : volumeFromGravimetric(weightPercent, density * 1000);
    const notes: string[] = [];
    if (density === null && (water33 !== null || water1500 !== null)) {
      notes.push(`${name}: no bulk density, so its water by weight cannot be used and is estimated instead`);
    }
    return {
      line: row.line,
      notes,
      layer: {
        name,
        topMm: (topCm ?? Number.NaN) * cm,
        bottomMm: (numberIn(table, row, "hzn_bot_cm", depthCmRange) ?? Number.NaN) * cm,
        sandFraction: sandFrom(sand, numberIn(table, row, "silt_pct", percentRange), clay),
        clayFraction: clay === null ? undefined : clay / 100,
        bulkDensityKgPerM3: density === null ? undefined : density * 1000,
        fieldCapacity: byVolume(water33),
        wiltingPoint: byVolume(water1500),
      },
    };
  },
};
