/** How crops dry the profile by depth: the open cores of Pullman foot by foot, and what trials printed. */
import { readFileSync } from "node:fs";
import file from "../../data-reference/scoreboard/drying.json" with { type: "json" };
import type { CaseAfterRun } from "../../src/answer/runs/run.ts";
import { sumOver } from "../../src/season/ledger.ts";
import { cropSeasons, type CropRun } from "../cropRun.ts";
import { palouseSoil, type SpringCrop } from "../palouseCores.ts";
import type { Row, Topic } from "../row.ts";
import { mean, sum, waterMm } from "../water.ts";

const footMm = 304.8;

export const drying: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours(openData) {
    const ofCores =
      openData === null
        ? {}
        : {
            ...(await coredDrying(openData, "SW", "spring wheat")),
            ...(await coredDrying(openData, "SB", "barley")),
            "manhattan-sorghum-90": await manhattanSorghumM(openData),
          };
    const tribune = (crop: string) =>
      driedBetween({ place: "tribune", crop, sowing: "Jun 1", start: 70, depth: "132 in" }, 2200, 3300);
    const montana = (crop: string, sowing: string, from: number) =>
      driedBetween({ place: "havre", crop, sowing, start: 80 }, from, 1200);
    const gardenCity = (crop: string, sowing: string) =>
      driedBetween({ place: "garden-city", crop, sowing, start: 80 }, 0, 1800);
    const sunflower = await driedBetween(
      { place: "akron", crop: "sunflower", sowing: "Jun 5", start: 80, depth: "96 in" },
      0,
      6 * footMm,
    );
    const springWheatMm = await montana("spring wheat", "May 1", 0);
    return {
      ...ofCores,
      "swift-current-top-70cm": await swiftCurrentPercent(),
      ...(await montanaByFoot()),
      "akron-sunflower": sunflower / 25.4,
      "tribune-sunflower-deep": await tribune("sunflower"),
      "tribune-sorghum-deep": await tribune("grain sorghum"),
      "garden-city-sorghum-corn":
        (await gardenCity("grain sorghum", "Jun 1")) - (await gardenCity("corn", "May 10")),
      "montana-pea": (await montana("field pea", "Apr 25", 0)) - springWheatMm,
      "montana-sunflower-deep":
        (await montana("sunflower", "May 20", 900)) - (await montana("spring wheat", "May 1", 900)),
    };
  },
};

/** Sowing to maturity, mm; negative where it grew wetter. */
const driedMm = (run: CaseAfterRun, fromMm: number, toMm: number): number =>
  waterMm(run, run.course.sowingDay - 1, fromMm, toMm) - waterMm(run, run.course.maturityDay, fromMm, toMm);

async function driedBetween(run: CropRun, fromMm: number, toMm: number): Promise<number> {
  return mean(await cropSeasons(run, (one) => driedMm(one, fromMm, toMm)));
}

async function coredDrying(
  openData: string,
  grown: SpringCrop,
  crop: string,
): Promise<Record<string, number>> {
  const soil = palouseSoil(openData, grown);
  holdCores(grown, soil.driedMm);
  const run: CropRun = { place: "pullman", crop, sowing: "Apr 15", start: 100, layers: soil.layers };
  const seasons = await cropSeasons(run, (one) =>
    [0, 1, 2, 3, 4].map((foot) => driedMm(one, foot * footMm, (foot + 1) * footMm)),
  );
  return Object.fromEntries(
    [1, 2, 3, 4].map((foot) => [`cores-${grown}-foot-${foot + 1}`, mean(seasons.map((feet) => feet[foot]!))]),
  );
}

/** The rows' figures are the open file's own, as its description rounds them. */
function holdCores(grown: SpringCrop, driedByFootMm: readonly number[]): void {
  for (const row of file.rows) {
    const foot = new RegExp(`^cores-${grown}-foot-(\\d)$`).exec(row.id)?.[1];
    if (foot === undefined) continue;
    const dried = driedByFootMm[Number(foot) - 1]!;
    if (Math.abs(dried - Number(row.figure)) > 0.6)
      throw new Error(`${row.id}: the cores dried by ${dried} mm`);
  }
}

/** Of the soil water drawn by spring wheat, percent above 70 cm. */
async function swiftCurrentPercent(): Promise<number> {
  const run: CropRun = { place: "swift-current", crop: "spring wheat", sowing: "May 10", start: 70 };
  const seasons = await cropSeasons(run, (one) => [driedMm(one, 0, 700), driedMm(one, 0, Infinity)] as const);
  return (100 * mean(seasons.map(([above]) => above))) / mean(seasons.map(([, all]) => all));
}

/** Winter wheat in eight feet: what each depth gave, the rain that wetted it on the way included. */
async function montanaByFoot(): Promise<Record<string, number>> {
  const run: CropRun = { place: "havre", crop: "winter wheat", sowing: "Sep 15", start: 70, depth: "96 in" };
  const seasons = await cropSeasons(run, (one) => {
    const rain = sumOver(one.ledger.infiltrationMm, 0, one.course.maturityDay);
    return [
      rain + driedMm(one, 0, footMm),
      rain + driedMm(one, 0, 4 * footMm),
      rain + driedMm(one, 0, Infinity),
    ];
  });
  const of = (which: number) => sum(seasons.map((one) => one[which]!));
  return { "montana-top-foot": (100 * of(0)) / of(2), "montana-top-four-feet": (100 * of(1)) / of(2) };
}

/** Depth above which sorghum took 90 % of what it drew from the profile, on the record of Manhattan, Kansas. */
async function manhattanSorghumM(openData: string): Promise<number> {
  const name = "uscrn_KS_Manhattan_6_SSW_2003-2017.csv";
  const run: CropRun = {
    place: "tribune",
    crop: "grain sorghum",
    sowing: "Jun 1",
    start: 90,
    depth: "108 in",
    weather: { record: name, from: "2003-10-02", to: "2017-10-03", maxGapDays: 60 },
    files: { [name]: readFileSync(`${openData}/soil-moisture/${name}`, "utf8") },
    years: 13,
  };
  const depths = Array.from({ length: 108 }, (_, inch) => inch + 1);
  const seasons = await cropSeasons(run, (one) => depths.map((inch) => driedMm(one, 0, inch * 25.4)));
  const dried = depths.map((_, inch) => mean(seasons.map((season) => season[inch]!)));
  const inch = dried.findIndex((mm) => mm >= 0.9 * dried.at(-1)!);
  return (depths[inch]! * 25.4) / 1000;
}
