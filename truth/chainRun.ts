/** A rotation, year after year, at a place of the scoreboard: water at sowing and what the fallow before it stored. */
import { prepareChains } from "../src/answer/chain/prepareChains.ts";
import type { SeasonRow } from "../src/answer/chain/rows.ts";
import { runChains } from "../src/answer/chain/runChains.ts";
import { resolveScenario } from "../src/scenario/index.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "./places.ts";
import { surfaceOf, type FallowSystem } from "./residue.ts";
import { mean } from "./water.ts";

export interface ChainCase {
  readonly place: string;
  readonly rotation: string;
  /** That it is asked about. */
  readonly crop: string;
  /** The crop whose seasons are looked at; left out: the same. */
  readonly of?: string;
  /** Left out: straw as each crop leaves it, not tilled. */
  readonly system?: FallowSystem;
}

export interface ChainMeans {
  readonly sowingIn: number;
  readonly gainMm: number;
  /** Stored of a hundred fallen between crops, over all years together. */
  readonly percent: number;
  readonly yieldKgPerHa: number;
}

/** Enough for a mean good to about 2 points. */
const years = 60;

/** Means of all years under the crop's own roots, the start left to the years before. */
export async function chainMeans({
  place: id,
  rotation,
  crop,
  of = crop,
  system,
}: ChainCase): Promise<ChainMeans> {
  const place = placeNamed(id);
  const scenario = await resolveScenario(
    {
      format: "rootfront-scenario/1",
      name: "a row of the scoreboard",
      site: siteOf(place),
      soil: { layers: layersOf(place) },
      weather: normalsOf(place),
      crop: { name: crop },
      rotation,
      ...(system === undefined ? {} : { surface: surfaceOf(system) }),
      ensemble: { years, seed: 1 },
    },
    { fileName: "scoreboard.json", readText: () => "" },
  );
  const plan = scenario.rotation!;
  const rows: SeasonRow[] = runChains(prepareChains(scenario, plan))[0]!.links.flatMap((link) =>
    link.sinceChange >= 1 && plan.entries[link.entry]!.crop === of ? [link.own[0]!] : [],
  );
  const ofRows = (value: (row: SeasonRow) => number) => mean(rows.map(value));
  const gainMm = ofRows(({ totals }) => totals.fallowGainMm);
  return {
    sowingIn: ofRows(({ totals }) => totals.storedAtSowingMm) / 25.4,
    gainMm,
    percent: (100 * gainMm) / ofRows(({ totals }) => totals.fallowRainMm),
    yieldKgPerHa: ofRows(({ yieldKgPerHa }) => yieldKgPerHa),
  };
}
