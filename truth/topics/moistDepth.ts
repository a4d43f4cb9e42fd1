/** Winter wheat in western Kansas by the moist soil at seeding: the old station bulletins' rule, and the whole model in one row. */
import file from "../../data-reference/scoreboard/moist-depth.json" with { type: "json" };
import { westernKansasRecord } from "../dryRecord.ts";
import type { Row, Topic } from "../row.ts";
import type { Written } from "../seasons.ts";
import { mean } from "../water.ts";
import { yieldSeasons } from "../yieldRuns.ts";

/** A crop below this was not worth its harvest: seed, cutting and threshing took about so much (ours). */
const failsBelowBuPerAc = 5;

const wheat = { crop: "winter wheat", sowing: "Sep 25", system: "tilled" } as const;

export const moistDepth: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours(openData) {
    const [low, middle, high] = await Promise.all([2.7, 4.2, 8.8].map(haysBuPerAc));
    const ours: Record<string, number> = {
      "hays-times": high! / low!,
      "hays-per-percent": (high! - low!) / (8.8 - 2.7),
      "hays-proportion": middle! / (low! + ((high! - low!) * (4.2 - 2.7)) / (8.8 - 2.7)),
    };
    if (openData === null) return ours;
    const files = { "kansas.csv": westernKansasRecord(openData) };
    for (const feet of [0, 1, 2, 3]) {
      const seasons = await yieldSeasons({
        ...wheat,
        place: "tribune",
        files,
        weather: { record: "kansas.csv" },
        years: 54,
        startingWater: moistTo(feet),
      });
      const failed = seasons.filter(({ buPerAc }) => buPerAc < failsBelowBuPerAc);
      ours[`failed-${feet}-ft`] = (100 * failed.length) / seasons.length;
    }
    return ours;
  },
};

const moistTo = (feet: number): Written =>
  feet === 0 ? { share: "0 %" } : { moistDepth: `${feet} ft`, shareBelow: "0 %" };

/** Available water as percent by weight of six feet at 1.3 g/cm3, spread evenly. */
async function haysBuPerAc(availablePercent: number): Promise<number> {
  const inches = (availablePercent / 100) * 1.3 * 72;
  const water = `${inches.toFixed(2)} in available`;
  const seasons = await yieldSeasons({
    ...wheat,
    place: "hays",
    years: 40,
    layers: [{ name: "silt loam", thickness: "72 in", texture: "silt loam", water }],
  });
  return mean(seasons.map(({ buPerAc }) => buPerAc));
}
