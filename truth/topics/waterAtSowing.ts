/** Available water at sowing after a fallow, after a crop, by tillage and straw. */
import file from "../../data-reference/scoreboard/water-at-sowing.json" with { type: "json" };
import { fallowOf, type FallowCase } from "../fallowRun.ts";
import type { FallowSystem } from "../residue.ts";
import type { Row, Topic } from "../row.ts";

/** Sorghum stover lies like half its mass of wheat straw (Unger & Parker 1976, read); 4 t/ha of it are ours. */
const sorghumStubble: FallowSystem = { strawTPerHa: 2 };

export const waterAtSowing: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours(openData) {
    const inches = async (one: FallowCase) => (await fallowOf(one, openData)).availableAtSowingMm / 25.4;
    const wheat = (months: number, system: FallowSystem) =>
      inches({ ...tribune(system), crop: "winter wheat", sowing: "Sep 25", months });
    const sorghum = (months: number, system: FallowSystem) =>
      inches({ ...tribune(system), crop: "grain sorghum", sowing: "Jun 1", months });
    const afterSorghum = await wheat(11, sorghumStubble);
    const firstSorghum = await sorghum(11, "no-till");
    const akron = (weather: FallowCase["weather"], system: FallowSystem): FallowCase => ({
      place: "akron",
      weather,
      system,
      crop: "winter wheat",
      sowing: "Sep 20",
      months: 14,
      splits: ["09-15", "05-01"],
    });
    const moreAtAkron = async (weather: FallowCase["weather"]) =>
      (await inches(akron(weather, "no-till"))) - (await inches(akron(weather, "tilled")));
    const bushland = (strawTPerHa: number) =>
      inches({
        place: "bushland",
        weather: "generated",
        system: { strawTPerHa },
        crop: "grain sorghum",
        sowing: "Jun 10",
        months: 11,
      });
    const gainMm = async (system: FallowSystem) =>
      (await fallowOf(akron("generated", system), openData)).whole;
    return {
      "tribune-wheat": afterSorghum,
      "tribune-second-wheat": afterSorghum - (await wheat(2.5, "no-till")),
      "tribune-second-sorghum": firstSorghum - (await sorghum(7, sorghumStubble)),
      "tribune-wheat-tillage": (await wheat(11, sorghumStubble)) - (await wheat(11, "tilled")),
      "tribune-sorghum-tillage": firstSorghum - (await sorghum(11, "tilled")),
      "akron-more-generated": await moreAtAkron("generated"),
      ...(openData === null ? {} : { "akron-more-record": await moreAtAkron("dry record") }),
      "akron-gain-tilled": (await gainMm("tilled")).gainMm,
      "akron-gain-no-till": (await gainMm("no-till")).gainMm,
      "bushland-bare": await bushland(0),
      "bushland-straw": await bushland(12),
    };
  },
};

const tribune = (system: FallowSystem) => ({ place: "tribune", weather: "generated", system }) as const;
