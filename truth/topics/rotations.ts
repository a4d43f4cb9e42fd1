/** Rotations year after year, the start left to the years before: what their fallows store and what is there at sowing. */
import file from "../../data-reference/scoreboard/rotations.json" with { type: "json" };
import { chainMeans, type ChainCase } from "../chainRun.ts";
import type { Row, Topic } from "../row.ts";

const wheat = "winter wheat";

export const rotations: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours() {
    const at = (place: string, rotation: string, crop: string, more: Partial<ChainCase> = {}) =>
      chainMeans({ place, rotation, crop, ...more });
    const noTill = await at("akron", "wheat-fallow", wheat);
    const tilled = await at("akron", "wheat-fallow", wheat, { system: "tilled" });
    const preCorn = await at("akron", "wheat-corn-fallow", "corn");
    const afterSorghum = await at("tribune", "wheat-sorghum-fallow", wheat);
    const continuous = await at("tribune", "every year", wheat);
    const cleanTilled = await at("tribune", "wheat-sorghum-fallow", wheat, { system: "tilled" });
    return {
      "chain-akron-no-till": noTill.percent,
      "chain-akron-tilled": tilled.percent,
      "chain-akron-more": noTill.sowingIn - tilled.sowingIn,
      "chain-pre-corn": preCorn.percent,
      "chain-tribune-wheat": afterSorghum.sowingIn,
      "chain-tribune-tillage": afterSorghum.sowingIn - cleanTilled.sowingIn,
      "chain-tribune-continuous": (100 * continuous.yieldKgPerHa) / afterSorghum.yieldKgPerHa,
    };
  },
};
