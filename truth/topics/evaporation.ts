/** Evaporation after a wetting, with time and under residue. */
import file from "../../data-reference/scoreboard/evaporation.json" with { type: "json" };
import { dryDown, potentialPerEt0, type DryDown } from "../dryDown.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "../places.ts";
import { surfaceOf, type FallowSystem } from "../residue.ts";
import type { Row, Topic } from "../row.ts";
import { eachSeason } from "../seasons.ts";
import { mean, sum } from "../water.ts";

const bare: FallowSystem = { strawTPerHa: 0 };
const et0For = (potentialMmPerDay: number): number => potentialMmPerDay / potentialPerEt0;

/** Wet to field capacity, an inch of rain on the first day, then none. */
const wetted = (texture: string, system: FallowSystem, days: number): DryDown => ({
  texture,
  system,
  et0MmPerDay: et0For(6),
  startPercent: 100,
  days,
  rainMm: (day) => (day === 0 ? 25 : 0),
});

export const evaporation: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours() {
    return {
      ...(await afterStorm()),
      "residue-long-drying": await longDryingRatio(),
      "residue-energy-limited": await energyLimitedPercentLess(),
      ...(await singleWettings()),
      ...(await springSpell()),
      "sand-summer": await sandSummerMm(),
      "straw-under-dryland-corn": await savedUnderCornMm(),
    };
  },
};

/** The first day is the rain's own: day 10 is the tenth evening. */
async function afterStorm(): Promise<Record<string, number>> {
  const found: Record<string, number> = {};
  for (const texture of ["clay loam", "loam", "clay", "sand"]) {
    const { evaporationMm } = await dryDown(wetted(texture, bare, 20));
    for (const days of [10, 20])
      found[`storm-${texture.replace(" ", "-")}-${days}`] = sum(evaporationMm.slice(0, days));
  }
  return found;
}

async function longDryingRatio(): Promise<number> {
  const [covered, open] = await Promise.all(
    [{ strawTPerHa: 4 }, bare].map((system) => dryDown(wetted("silt loam", system, 90))),
  );
  return sum(covered!.evaporationMm) / sum(open!.evaporationMm);
}

/** Rain beyond what can evaporate on every day: only energy limits. Not counted: the first three days. */
async function energyLimitedPercentLess(): Promise<number> {
  const [covered, open] = await Promise.all(
    [{ strawTPerHa: 12 }, bare].map(async (system) => {
      const { evaporationMm } = await dryDown({
        ...wetted("silt loam", system, 20),
        rainMm: () => 8,
      });
      return sum(evaporationMm.slice(3));
    }),
  );
  return 100 * (1 - covered! / open!);
}

/** 5 mm on soil that had dried for 60 days; kept on the evening of the same day, mm. */
async function keptOf5Mm(potentialMmPerDay: number, strawTPerHa: number): Promise<number> {
  const { waterMm } = await dryDown({
    ...wetted("clay loam", { strawTPerHa }, 61),
    et0MmPerDay: et0For(potentialMmPerDay),
    startPercent: 0,
    rainMm: (day) => (day === 60 ? 5 : 0),
  });
  return waterMm[60]! - waterMm[59]!;
}

async function singleWettings(): Promise<Record<string, number>> {
  const at3 = await keptOf5Mm(3, 0);
  return {
    "wetting-3-straw-2": 100 * ((await keptOf5Mm(3, 2)) / at3 - 1),
    "wetting-3-straw-4": 100 * ((await keptOf5Mm(3, 4)) / at3 - 1),
    "wetting-6-bare": 20 * (await keptOf5Mm(6, 0)),
    "wetting-6-straw-2": 20 * (await keptOf5Mm(6, 2)),
    "wetting-12-straw-4": 20 * (await keptOf5Mm(12, 4)),
  };
}

/** Mean of the fourth to the eighth day after 20 mm of rain on a soil 60 % full, reference ET 4 mm. */
async function springSpell(): Promise<Record<string, number>> {
  const after = async (system: FallowSystem) => {
    const { evaporationMm } = await dryDown({
      texture: "silt loam",
      system,
      et0MmPerDay: 4,
      startPercent: 60,
      days: 40,
      rainMm: (day) => (day === 30 ? 20 : 0),
    });
    return mean(evaporationMm.slice(34, 39));
  };
  return { "spring-bare": await after(bare), "spring-stubble": await after("no-till") };
}

/** 90 days without rain on sand that a crop left with a quarter of its available water, reference ET 7 mm. */
async function sandSummerMm(): Promise<number> {
  const { evaporationMm } = await dryDown({
    texture: "sand",
    system: bare,
    et0MmPerDay: 7,
    startPercent: 25,
    days: 90,
    rainMm: () => 0,
  });
  return sum(evaporationMm);
}

/** Evaporation of a corn season on bare ground less that under the straw of a 60 bu wheat crop (about 6 t/ha). */
async function savedUnderCornMm(): Promise<number> {
  const place = placeNamed("north-platte");
  const savedMm: number[] = [];
  await eachSeason(
    {
      site: siteOf(place),
      soil: { layers: layersOf(place), startingWater: { share: "60 %" } },
      weather: normalsOf(place),
      crop: { name: "corn", sowing: "May 10" },
      cases: [
        { name: "bare", surface: surfaceOf(bare, "at planting") },
        { name: "straw", surface: surfaceOf({ strawTPerHa: 6 }, "at planting") },
      ],
      ensemble: { years: 20, seed: 1 },
    },
    {},
    ({ cases }) => savedMm.push(cases[0]!.totals.evaporationMm - cases[1]!.totals.evaporationMm),
  );
  return mean(savedMm);
}
