/** Generated rain beside every long open gauge, each from its own monthly normals. */
import file from "../../data-reference/scoreboard/rain.json" with { type: "json" };
import { generateYears } from "../../src/weather/generate/generate.ts";
import { rainCharacter } from "../../src/weather/generate/rainCharacter.ts";
import { gauges, longGauge, spanOf } from "../../tests/support/openGauges.ts";
import type { Row, Topic } from "../row.ts";

const rows = file.rows as unknown as readonly Row[];
const site = { latitudeDeg: 40, elevationM: 1000, setting: "inland" } as const;
const plan = { years: 2000, firstYear: 2001, seed: 20 };

export const rain: Topic = {
  file: { title: file.title, rows },
  isFallow: false,
  ours() {
    const ours: Record<string, number> = {};
    for (const gauge of gauges.filter(longGauge)) {
      const { shareAbove, wetDays, longestDrySpellDays, yearlySdMm } = rainCharacter(
        generateYears(gauge.normals, site, plan),
        [20, 30],
        spanOf(gauge),
      );
      ours[`${gauge.id}-above-20`] = 100 * shareAbove[0]!;
      ours[`${gauge.id}-above-30`] = 100 * shareAbove[1]!;
      ours[`${gauge.id}-wet-days`] = wetDays;
      ours[`${gauge.id}-dry-spell`] = longestDrySpellDays;
      ours[`${gauge.id}-sd`] = yearlySdMm!;
    }
    return Promise.resolve(ours);
  },
};
