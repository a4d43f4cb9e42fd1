/** The open grass stations, one sod for all, beside two forecasts that need no model. The harness: tests/support/grassSeason.ts. */
import file from "../../data-reference/scoreboard/grass.json" with { type: "json" };
import {
  drySpells,
  meanOf,
  rootMeanSquare,
  season,
  type DrySpell,
  type GrassSeason,
} from "../../tests/support/grassSeason.ts";
import { stations } from "../../tests/support/grassStation.ts";
import { digitsOf, type Row, type Topic } from "../row.ts";

const rows = file.rows as unknown as readonly Row[];

export const grass: Topic = {
  file: { title: file.title, rows },
  isFallow: false,
  async ours(openData) {
    if (openData === null) return {};
    const seasons = await Promise.all(stations.map((station) => season(station)));
    const spells = (await Promise.all(stations.map((station) => drySpells(station)))).flat();
    holdNaiveFigures(seasons, spells);
    const rmse = pooled(seasons, ({ ours }) => ours.rmse);
    const deepRmse = pooled(seasons, ({ ours }) => ours.deepRmse);
    const lossTimes = lossRatio(spells, ({ modelledMm }) => modelledMm);
    const deepLossMm = meanOf(spells.map(({ modelledDeepMm }) => modelledDeepMm));
    return {
      "grass-storage": rmse,
      "grass-storage-against-unchanged": rmse,
      "grass-storage-against-bucket": rmse,
      "grass-deep-storage-against-unchanged": deepRmse,
      "grass-deep-storage-against-bucket": deepRmse,
      "grass-dry-spells": lossTimes,
      "grass-dry-spells-against-bucket": Math.abs(lossTimes - 1),
      "grass-dry-spells-against-unchanged": Math.abs(lossTimes - 1),
      "grass-deep-loss": deepLossMm / meanOf(spells.map(({ measuredDeepMm }) => measuredDeepMm)),
    };
  },
};

const pooled = (seasons: readonly GrassSeason[], of: (season: GrassSeason) => number): number =>
  rootMeanSquare(seasons.map(of));

const lossRatio = (spells: readonly DrySpell[], of: (spell: DrySpell) => number): number =>
  meanOf(spells.map(of)) / meanOf(spells.map(({ measuredMm }) => measuredMm));

/** The naive forecasts stand in the file as figures; they depend on the readings alone, and are worked out again here. */
function holdNaiveFigures(seasons: readonly GrassSeason[], spells: readonly DrySpell[]): void {
  const naive = {
    "grass-storage-against-unchanged": pooled(seasons, ({ unchanged }) => unchanged.rmse),
    "grass-storage-against-bucket": pooled(seasons, ({ bucket }) => bucket.rmse),
    "grass-deep-storage-against-unchanged": pooled(seasons, ({ unchanged }) => unchanged.deepRmse),
    "grass-deep-storage-against-bucket": pooled(seasons, ({ bucket }) => bucket.deepRmse),
    "grass-dry-spells-against-bucket": Math.abs(lossRatio(spells, ({ bucketMm }) => bucketMm) - 1),
  };
  for (const [id, value] of Object.entries(naive)) {
    const row = rows.find((one) => one.id === id)!;
    if (Number(value.toFixed(digitsOf(row))) !== row.figure)
      throw new Error(`${id}: the naive forecast misses by ${value}, the file says ${String(row.figure)}`);
  }
}
