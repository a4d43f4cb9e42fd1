/** The open series of winter wheat variety trials in Montana, 1949-2019, with the station's rain from August to July. */
import { readFileSync } from "node:fs";
import { mean } from "./water.ts";

export interface TrialYear {
  readonly harvest: number;
  readonly rainMm: number;
  /** Less the straight trend over the years, which is the varieties', around the mean. */
  readonly buPerAc: number;
}

export function trialYears(openData: string, place: "havre" | "moccasin"): TrialYear[] {
  const file = `${openData}/yields/montana_${place}_winter_wheat_trials_1949-2019.csv`;
  const rows = readFileSync(file, "utf8")
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(","))
    .filter((cells) => cells[4] !== "")
    .map((cells) => ({ harvest: Number(cells[0]), harvested: Number(cells[2]), rainMm: Number(cells[4]) }));
  const middle = mean(rows.map(({ harvest }) => harvest));
  const level = mean(rows.map(({ harvested }) => harvested));
  const trend =
    mean(rows.map((row) => (row.harvest - middle) * (row.harvested - level))) /
    mean(rows.map(({ harvest }) => (harvest - middle) ** 2));
  return rows.map(({ harvest, harvested, rainMm }) => ({
    harvest,
    rainMm,
    buPerAc: harvested - trend * (harvest - middle),
  }));
}
