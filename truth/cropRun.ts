/** A crop in a deep profile of one soil, sown into a given share of its available water. */
import type { CaseAfterRun } from "../src/answer/runs/run.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "./places.ts";
import { surfaceOf, type FallowSystem } from "./residue.ts";
import { bySeason, type Files, type Season, type Written } from "./seasons.ts";

export interface CropRun {
  readonly place: string;
  readonly crop: string;
  readonly sowing: string;
  /** Of the available water at sowing, percent. */
  readonly start: number;
  readonly depth?: string;
  readonly texture?: string;
  /** In place of one layer of the texture. */
  readonly layers?: readonly Written[];
  readonly weather?: Written;
  readonly files?: Files;
  readonly system?: FallowSystem;
  /** Time without a crop before sowing; `start` is then the share when it begins. */
  readonly fallow?: string;
  readonly years?: number;
}

export function cropSeasons<T>(
  {
    place: id,
    crop,
    sowing,
    start,
    depth = "72 in",
    texture,
    layers,
    weather,
    files,
    system,
    fallow,
    years,
  }: CropRun,
  of: (run: CaseAfterRun, season: Season) => T,
): Promise<T[]> {
  const place = placeNamed(id);
  const oneLayer = layersOf(texture === undefined ? place : { ...place, texture }, depth);
  const hasOwnWater = layers?.some((layer) => layer["water"] !== undefined) ?? false;
  const written = {
    site: siteOf(place),
    soil: {
      layers: layers ?? oneLayer,
      ...(hasOwnWater ? {} : { startingWater: { share: `${start} %` } }),
    },
    weather: weather ?? normalsOf(place),
    crop: { name: crop, sowing },
    ...(fallow === undefined ? {} : { fallow: { length: fallow } }),
    surface: surfaceOf(system ?? "tilled", fallow === undefined ? "at planting" : "with fallow"),
    ensemble: { years: years ?? 20, seed: 1 },
  };
  return bySeason(written, files ?? {}, of);
}
