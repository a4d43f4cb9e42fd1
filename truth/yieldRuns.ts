/** Yields of a dryland crop, season by season, as the tool tells them: with its own line, cap and draws. */
import { runEnsemble } from "../src/answer/runs/ensemble.ts";
import { resolveScenario } from "../src/scenario/index.ts";
import { sumOver } from "../src/season/ledger.ts";
import { dayNumber } from "../src/quantity/calendar.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "./places.ts";
import { surfaceOf, type FallowSystem } from "./residue.ts";
import type { Files, Written } from "./seasons.ts";

export interface YieldRun {
  readonly place: string;
  readonly crop: string;
  readonly sowing: string;
  /** As a scenario writes it, at harvest of the last crop where there is a fallow; left out: the layers have their own. */
  readonly startingWater?: Written;
  readonly fallowMonths?: number;
  readonly system?: FallowSystem;
  readonly layers?: readonly Written[];
  readonly depth?: string;
  /** Left out: years generated from the place's normals. */
  readonly weather?: Written;
  readonly files?: Files;
  readonly years: number;
}

export interface YieldSeason {
  /** Of sowing. */
  readonly year: number;
  readonly buPerAc: number;
  readonly kgPerHa: number;
  readonly storedAtSowingIn: number;
  readonly waterUseIn: number;
  /** From sowing to maturity, mm. */
  readonly seasonRainMm: number;
  /** Rain from August of the year of sowing to the next July, mm; NaN where the weather ends before. */
  readonly augustToJulyMm: number;
}

const lbPerBu: Readonly<Record<string, number>> = { "winter wheat": 60, corn: 56, "grain sorghum": 56 };
const kgPerLb = 0.45359237;
const haPerAc = 0.40468564224;

export async function yieldSeasons(run: YieldRun): Promise<YieldSeason[]> {
  const { place: id, crop, sowing, startingWater, fallowMonths, system = "no-till", depth } = run;
  const place = placeNamed(id);
  const written = {
    format: "rootfront-scenario/1",
    name: "yields of the scoreboard",
    site: siteOf(place),
    soil: {
      layers: run.layers ?? layersOf(place, depth),
      ...(startingWater === undefined ? {} : { startingWater }),
    },
    weather: run.weather ?? normalsOf(place),
    crop: { name: crop, sowing },
    ...(fallowMonths === undefined ? {} : { fallow: { length: `${fallowMonths} months` } }),
    surface: surfaceOf(system, fallowMonths === undefined ? "at planting" : "with fallow"),
    ensemble: { years: run.years, seed: 1 },
  };
  const scenario = await resolveScenario(written, {
    fileName: "yields.json",
    readText: (path: string) => run.files?.[path] ?? missing(path),
  });
  const { byRainTotal, preparation } = runEnsemble(scenario);
  const { byRun, yieldKgPerHaByRun } = byRainTotal[0]!.cases[0]!;
  const { firstDay, days, rainMm } = preparation.weatherYears.weather;
  return preparation.yearByRun.map(({ year }, r) => {
    const [from, to] = [dayNumber(year, 8, 1) - firstDay, dayNumber(year + 1, 7, 31) - firstDay];
    return {
      year,
      kgPerHa: yieldKgPerHaByRun[r]!,
      buPerAc: (yieldKgPerHaByRun[r]! * haPerAc) / kgPerLb / lbPerBu[crop]!,
      storedAtSowingIn: byRun.storedAtSowingMm[r]! / 25.4,
      waterUseIn: byRun.waterUseMm[r]! / 25.4,
      seasonRainMm: byRun.rainMm[r]!,
      augustToJulyMm: from >= 0 && to < days ? sumOver(rainMm, from, to) : NaN,
    };
  });
}

function missing(path: string): never {
  throw new Error(`the scoreboard has no file ${path}`);
}

/** So much available water, inches, spread over the profile as the same share of what each part can hold. */
export async function shareFor(place: string, inches: number, depth?: string): Promise<Written> {
  const full = await yieldSeasons({
    place,
    crop: "winter wheat",
    sowing: "Sep 25",
    startingWater: { share: "100 %" },
    ...(depth === undefined ? {} : { depth }),
    years: 60,
  });
  const capacityIn = full.reduce((sum, { storedAtSowingIn }) => sum + storedAtSowingIn, 0) / full.length;
  return { share: `${Math.min(100, (100 * inches) / capacityIn).toFixed(1)} %` };
}
