/** What a pan does to the front and to the yield, from hardly dense to shut. */
import file from "../../data-reference/scoreboard/pans.json" with { type: "json" };
import { resolveScenario } from "../../src/scenario/index.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import { dayNumber, yearOf } from "../../src/quantity/calendar.ts";
import { cropSeasons } from "../cropRun.ts";
import { normalsOf, placeNamed, siteOf } from "../places.ts";
import { surfaceOf } from "../residue.ts";
import type { Row, Topic } from "../row.ts";
import type { Written } from "../seasons.ts";
import { mean } from "../water.ts";

const densities = [1.6, 1.65, 1.7, 1.75, 1.8, 1.85, 1.9];
const resistancesPsi = [200, 300, 400, 500, 600, 700, 800];

export const pans: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours() {
    const [underPan, free] = await Promise.all([englishWheat(true), englishWheat(false)]);
    const [wetUnderPan, wetFree] = await Promise.all([
      englishWheat(true, wetYearMm),
      englishWheat(false, wetYearMm),
    ]);
    const byDensity = await lossesPercent(densities.map((density) => ({ bulkDensity: `${density} g/cm^3` })));
    const byResistance = await lossesPercent(
      resistancesPsi.map((psi) => ({ penetrationResistance: `${psi} psi` })),
    );
    return {
      "pan-anthesis": underPan.anthesisM,
      "no-pan-anthesis": free.anthesisM,
      "pan-march": underPan.marchM,
      "pan-loss-wet": 100 * (1 - wetUnderPan.transpirationMm / wetFree.transpirationMm),
      "pan-loss-1.6": byDensity[0]!,
      "pan-loss-1.75": byDensity[3]!,
      "pan-loss-1.9": byDensity.at(-1)!,
      "pan-loss-300": byResistance[1]!,
      "pan-loss-500": byResistance[3]!,
      "pan-loss-800": byResistance.at(-1)!,
      "pan-density-step": greatestStep(byDensity),
      "pan-resistance-step": greatestStep(byResistance),
    };
  },
};

/** A layer as a user would describe it; its kind, if not plain from where it lies, would be said here for every row. */
const panLayer = (name: string, bottom: string, texture: string, hindrance: Written): Written => ({
  name,
  bottom,
  texture,
  ...hindrance,
});

/** Twice the rain of southern England: water does not limit. */
const wetYearMm = 1400;

/** Winter wheat in England on sandy loam, with a pan of 1.8 g/cm3 from 35 to 45 cm or without; rain as it comes, or a total. */
async function englishWheat(hasPan: boolean, annualRainMm?: number) {
  const soil = { bulkDensity: "1.5 g/cm^3" };
  const layers = [
    panLayer("topsoil", "35 cm", "sandy loam", soil),
    panLayer(
      "pan",
      "45 cm",
      "sandy loam",
      hasPan ? { bulkDensity: "1.8 g/cm^3", origin: "tillage pan" } : soil,
    ),
    panLayer("subsoil", "250 cm", "sandy loam", soil),
  ];
  const seasons = await cropSeasons(
    {
      place: "rothamsted",
      crop: "winter wheat",
      sowing: "Oct 10",
      start: 90,
      layers,
      years: 15,
      ...(annualRainMm === undefined
        ? {}
        : { weather: { ...normalsOf(placeNamed("rothamsted")), annualRain: `${annualRainMm} mm` } }),
    },
    ({ ledger, course, firstIndex, totals }, { weather }) => {
      const sown = weather.firstDay + firstIndex + course.sowingDay;
      const march = dayNumber(yearOf(sown) + 1, 3, 1) - weather.firstDay - firstIndex;
      return {
        anthesisM: ledger.frontMm[course.floweringDay]! / 1000,
        marchM: ledger.frontMm[march]! / 1000,
        transpirationMm: totals.transpirationMm,
      };
    },
  );
  return {
    anthesisM: mean(seasons.map((one) => one.anthesisM)),
    marchM: mean(seasons.map((one) => one.marchM)),
    transpirationMm: mean(seasons.map((one) => one.transpirationMm)),
  };
}

/** Yield lost by dryland corn over a layer from 4 to 8 in against loose soil, percent of the mean yield. */
async function lossesPercent(hindrances: readonly Written[]): Promise<number[]> {
  const place = placeNamed("north-platte");
  const loose = { bulkDensity: "1.35 g/cm^3" };
  const written = {
    format: "rootfront-scenario/1",
    name: "a pan, from hardly dense to shut",
    site: siteOf(place),
    soil: {
      layers: [
        panLayer("topsoil", "4 in", "silt loam", loose),
        panLayer("wheel layer", "8 in", "silt loam", loose),
        panLayer("subsoil", "72 in", "silt loam", loose),
      ],
      startingWater: { share: "60 %" },
    },
    weather: normalsOf(place),
    crop: { name: "corn", sowing: "May 5" },
    surface: surfaceOf("tilled", "at planting"),
    cases: [
      { name: "loose" },
      ...hindrances.map((hindrance, h) => ({
        name: `pan ${h + 1}`,
        soil: { layers: [{ name: "wheel layer", ...hindrance }] },
      })),
    ],
    ensemble: { years: 30, seed: 1 },
  };
  const scenario = await resolveScenario(written, { fileName: "pans.json", readText: () => "" });
  const { cases } = runEnsemble(scenario).byRainTotal[0]!;
  const [free, ...others] = cases.map(({ yieldKgPerHaByRun }) => mean([...yieldKgPerHaByRun]));
  return others.map((yieldKgPerHa) => 100 * (1 - yieldKgPerHa / free!));
}

/** The largest change between neighbors, points: a smooth rise has no cliff, and a fall counts like a rise. */
const greatestStep = (losses: readonly number[]): number =>
  Math.max(...losses.slice(1).map((loss, l) => Math.abs(loss - losses[l]!)));
