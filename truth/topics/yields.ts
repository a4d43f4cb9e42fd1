/** Yields of trials and long series, with the rain that they had, and which of two crops does better where. */
import { readFileSync } from "node:fs";
import file from "../../data-reference/scoreboard/yields.json" with { type: "json" };
import { dryRecord, westernKansasRecord } from "../dryRecord.ts";
import { placeNamed } from "../places.ts";
import type { Row, Topic } from "../row.ts";
import type { Files, Written } from "../seasons.ts";
import { trialYears } from "../trialYears.ts";
import { mean, median, quantile } from "../water.ts";
import { shareFor, yieldSeasons, type YieldRun, type YieldSeason } from "../yieldRuns.ts";

export const yields: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours(openData) {
    const ours: Record<string, number> = {
      ...(await bushland()),
      ...(await storedInch()),
      ...(await storedInchBySeason()),
      ...(await wsfSorghum()),
    };
    if (openData === null) return ours;
    return {
      ...ours,
      ...(await akron2002(openData)),
      ...(await montana("havre", openData)),
      ...(await montana("moccasin", openData)),
      ...(await westernKansas(openData)),
      ...(await johnsonKansas(openData)),
    };
  },
};

const buOf = (seasons: readonly YieldSeason[]): number[] => seasons.map(({ buPerAc }) => buPerAc);
const sorghumLeft: Written = { share: "10 %" };

/** Sorghum after 11 months of stubble: shares of straw, and how many years pass 2000 kg/ha. */
async function bushland(): Promise<Record<string, number>> {
  const run = (system: YieldRun["system"]) =>
    yieldSeasons({
      place: "bushland",
      crop: "grain sorghum",
      sowing: "Jun 10",
      fallowMonths: 11,
      startingWater: sorghumLeft,
      system: system!,
      years: 40,
    });
  const tons = (seasons: readonly YieldSeason[]) => seasons.map(({ kgPerHa }) => kgPerHa / 1000);
  const [bare, straw, mulch] = await Promise.all([
    run({ strawTPerHa: 0 }),
    run({ strawTPerHa: 12 }),
    run("stubble mulch"),
  ]);
  const over = tons(mulch).filter((each) => each > 2).length;
  return {
    "bushland-sorghum-no-straw": mean(tons(bare)),
    "bushland-sorghum-straw": mean(tons(straw)),
    "bushland-over-2000": (100 * over) / mulch.length,
  };
}

/** The same in dry and in wet seasons, by the season rain of the trials. */
async function storedInchBySeason(): Promise<Record<string, number>> {
  const worth = async (crop: string, sowing: string, dryUpToMm: number, wetFromMm: number) => {
    const run = (share: string) =>
      yieldSeasons({ place: "tribune", crop, sowing, startingWater: { share }, years: 120 });
    const [less, more] = await Promise.all([run("50 %"), run("75 %")]);
    const where = (holds: (rainMm: number) => boolean) => {
      const pairs = more.flatMap((one, r) => (holds(one.seasonRainMm) ? [[one, less[r]!] as const] : []));
      const inches = mean(pairs.map(([a, b]) => a.storedAtSowingIn - b.storedAtSowingIn));
      return mean(pairs.map(([a, b]) => a.buPerAc - b.buPerAc)) / inches;
    };
    return { dry: where((rainMm) => rainMm <= dryUpToMm), wet: where((rainMm) => rainMm >= wetFromMm) };
  };
  const corn = await worth("corn", "May 10", 215, 288);
  const sorghum = await worth("grain sorghum", "Jun 1", 281, 315);
  return {
    "inch-corn-dry": corn.dry,
    "inch-corn-wet": corn.wet,
    "inch-sorghum-dry": sorghum.dry,
    "inch-sorghum-wet": sorghum.wet,
  };
}

/** Tribune, wheat-sorghum-fallow: 11 months of no-till before sorghum. */
async function wsfSorghum(): Promise<Record<string, number>> {
  const seasons = await yieldSeasons({
    place: "tribune",
    crop: "grain sorghum",
    sowing: "Jun 1",
    fallowMonths: 11,
    startingWater: sorghumLeft,
    system: "no-till",
    years: 40,
  });
  return {
    "tribune-sorghum": mean(buOf(seasons)),
    "tribune-sorghum-p10": quantile(buOf(seasons), 0.1),
    "tribune-sorghum-p90": quantile(buOf(seasons), 0.9),
  };
}

/** What an inch more at sowing brings, the same years begun at 50 and at 75 % of the available water. */
async function storedInch(): Promise<Record<string, number>> {
  const worth = async (crop: string, sowing: string) => {
    const run = (share: string) =>
      yieldSeasons({ place: "tribune", crop, sowing, startingWater: { share }, years: 30 });
    const [less, more] = await Promise.all([run("50 %"), run("75 %")]);
    const inches = mean(more.map((one, r) => one.storedAtSowingIn - less[r]!.storedAtSowingIn));
    return (mean(buOf(more)) - mean(buOf(less))) / inches;
  };
  return {
    "inch-corn": await worth("corn", "May 10"),
    "inch-sorghum": await worth("grain sorghum", "Jun 1"),
    "inch-wheat": await worth("winter wheat", "Sep 25"),
  };
}

/** The drought of 2002 at Akron, on the dry record's own year; each with the fallow before it. */
async function akron2002(openData: string): Promise<Record<string, number>> {
  const files = { "dry.csv": dryRecord(openData, placeNamed("akron")) };
  const inYear = async (year: number, crop: string, sowing: string, fallowMonths: number) => {
    const seasons = await yieldSeasons({
      place: "akron",
      crop,
      sowing,
      fallowMonths,
      files,
      years: 60,
      startingWater: sorghumLeft,
      weather: { record: "dry.csv" },
    });
    return seasons.filter((one) => one.year === year);
  };
  const corn = await inYear(2002, "corn", "May 10", 10);
  const wheat = await inYear(2001, "winter wheat", "Sep 20", 14);
  return {
    "akron-2002-corn": median(buOf(corn)),
    "akron-2002-corn-water": median(corn.map(({ waterUseIn }) => waterUseIn)),
    "akron-2002-wheat": median(buOf(wheat)),
    "akron-2002-wheat-water": median(wheat.map(({ waterUseIn }) => waterUseIn)),
  };
}

/** Harvested years that lie from P10 to P90 of the model's 25 years with the nearest rain from August to July. */
async function montana(place: "havre" | "moccasin", openData: string): Promise<Record<string, number>> {
  const harvested = trialYears(openData, place);
  const seasons = await yieldSeasons({
    place,
    crop: "winter wheat",
    sowing: "Sep 15",
    fallowMonths: 13,
    system: "stubble mulch",
    years: 120,
    startingWater: { share: "10 %" },
    ...(place === "moccasin" ? { depth: "40 in" } : {}),
  });
  const near = (rainMm: number) =>
    buOf(
      [...seasons]
        .sort((a, b) => Math.abs(a.augustToJulyMm - rainMm) - Math.abs(b.augustToJulyMm - rainMm))
        .slice(0, 25),
    );
  const inside = harvested.filter(({ rainMm, buPerAc }) => {
    const years = near(rainMm);
    return buPerAc >= quantile(years, 0.1) && buPerAc <= quantile(years, 0.9);
  });
  return {
    [`${place}-median`]: median(harvested.flatMap(({ rainMm }) => median(near(rainMm)))),
    [`${place}-inside`]: (100 * inside.length) / harvested.length,
  };
}

/** Begun with the published water at planting, on the record of western Kansas. */
async function westernKansas(openData: string): Promise<Record<string, number>> {
  const files = { "kansas.csv": westernKansasRecord(openData) };
  const medianOf = async (crop: string, sowing: string, inches: number) =>
    median(
      buOf(await onRecord("tribune", crop, sowing, inches, { record: "kansas.csv" }, files, 54, "96 in")),
    );
  const wheat = await medianOf("winter wheat", "Sep 25", 9);
  const sorghum = await medianOf("grain sorghum", "Jun 1", 8);
  const corn = await medianOf("corn", "May 10", 8);
  return {
    "kansas-wheat": wheat,
    "kansas-sorghum": sorghum,
    "kansas-corn": corn,
    "kansas-sorghum-over-corn": sorghum / corn,
  };
}

/** The same two crops in a wet climate, on the open record of eastern Kansas. */
async function johnsonKansas(openData: string): Promise<Record<string, number>> {
  const name = "gridmet_Johnson_KS_2011-2020.csv";
  const files = { [name]: readFileSync(`${openData}/weather-daily/${name}`, "utf8") };
  const medianOf = async (crop: string, sowing: string) =>
    median(buOf(await onRecord("johnson-ks", crop, sowing, 10, { record: name }, files, 30, "72 in")));
  return {
    "johnson-corn-over-sorghum":
      (await medianOf("corn", "Apr 25")) / (await medianOf("grain sorghum", "May 25")),
  };
}

async function onRecord(
  place: string,
  crop: string,
  sowing: string,
  inches: number,
  weather: Written,
  files: Files,
  years: number,
  depth: string,
): Promise<YieldSeason[]> {
  const startingWater = await shareFor(place, inches, depth);
  return yieldSeasons({
    place,
    crop,
    sowing,
    startingWater,
    weather,
    files,
    years,
    depth,
    system: "no-till",
  });
}
