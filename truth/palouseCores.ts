/**
 * The open cores of Pullman, Washington, as a soil: density by foot, limits and spring water of the cores themselves.
 * Field capacity: the median of the spring cores, after a wet winter (the upper ones are as wet as the pores allow). Wilting point: the 5 % quantile of the autumn
 * cores in feet 1 to 3; feet 4 and 5, which crops do not empty, have that of foot 3.
 */
import { readFileSync } from "node:fs";
import type { Written } from "./seasons.ts";
import { mean, quantile } from "./water.ts";

export type SpringCrop = "SW" | "SB";

export interface CoredSoil {
  readonly layers: readonly Written[];
  /** Spring less autumn by foot, mm, as it stands in the open file. */
  readonly driedMm: readonly number[];
}

const feet = [0, 1, 2, 3, 4] as const;

/** Two more feet like the fifth lie below, so that nothing ends at the deepest core. */
const feetBelow = 2;

export function palouseSoil(openData: string, crop: SpringCrop): CoredSoil {
  const differences = rowsOf(`${openData}/soil-cores/pullman_wa_spring_less_autumn_by_foot.csv`);
  const cropOf = new Map(differences.map(([year, point, grown]) => [`${year} ${point}`, grown]));
  const cores = rowsOf(`${openData}/soil-cores/pullman_wa_cores_by_foot_1999-2006.csv`);
  const values = (season: "Spring" | "Fall", foot: number, column: number, only?: SpringCrop) =>
    cores
      .filter((cells) => cells[1] === season && Number(cells[6]) === foot)
      .filter((cells) => isOf(cropOf.get(`${cells[0]} ${cells[3]}`), only))
      .map((cells) => Number(cells[column] || NaN))
      .filter((value) => Number.isFinite(value));
  const [densityAt, volumeAt] = [8, 10];
  const perCent = (fraction: number) => `${(100 * fraction).toFixed(1)} %`;
  const layers = feet.map((foot) => ({
    name: `foot ${foot + 1}`,
    bottom: `${foot + 1} ft`,
    texture: "silt loam",
    bulkDensity: `${mean(values("Spring", foot, densityAt)).toFixed(3)} g/cm^3`,
    fieldCapacity: perCent(quantile(values("Spring", foot, volumeAt), 0.5)),
    wiltingPoint: perCent(quantile(values("Fall", Math.min(foot, 2), volumeAt), 0.05)),
    water: `${perCent(mean(values("Spring", foot, volumeAt, crop)))} by volume`,
  }));
  const below = { ...layers[4]!, name: "below", bottom: `${feet.length + feetBelow} ft` };
  return {
    layers: [...layers, below],
    driedMm: feet.map((foot) =>
      mean(differences.filter(([, , grown]) => grown === crop).map((cells) => Number(cells[3 + foot]))),
    ),
  };
}

const isOf = (grown: string | undefined, only: SpringCrop | undefined): boolean =>
  only === undefined ? grown === "SW" || grown === "SB" : grown === only;

function rowsOf(file: string): string[][] {
  return readFileSync(file, "utf8")
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(","));
}
