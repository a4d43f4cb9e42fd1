/** What a winter takes from grass where it freezes. Row, source and tolerance: data-reference/winter-checks.json. */
import { describe, expect, test } from "vitest";
import checks from "../../data-reference/winter-checks.json" with { type: "json" };
import { sumOver } from "../../src/season/ledger.ts";
import { dayNumber } from "../../src/weather/calendar.ts";
import { bySeason, noSpread } from "../../truth/seasons.ts";
import { closenessOf, markOf, recordsOf, sourceOf } from "./records.ts";

const { take, noneLeft } = recordsOf(checks);

const winter = take<
  {
    latitude: string;
    elevation: string;
    rainMm: number[];
    tMaxC: number[];
    tMinC: number[];
    texture: string;
    startPercent: number;
    fromDay: string;
    toDay: string;
  },
  { mmPerDay: number }
>("fao56-ch11-winter");

describe(`${sourceOf(winter)} (${markOf(winter)}; within ${winter.tolerance} mm: ${closenessOf(winter).because})`, () => {
  test(`${winter.what}: grass on ${winter.inputs.texture}`, async () => {
    const { latitude, elevation, rainMm, tMaxC, tMinC, texture, startPercent, fromDay } = winter.inputs;
    const meansMm = await bySeason(
      {
        site: { latitude, elevation },
        soil: {
          layers: [{ name: texture, thickness: "72 in", texture }],
          startingWater: { share: `${startPercent} %` },
        },
        weather: {
          monthlyNormals: {
            rain: rainMm.map((mm) => `${mm} mm`),
            tMax: tMaxC.map((c) => `${c} C`),
            tMin: tMinC.map((c) => `${c} C`),
          },
        },
        crop: { name: "perennial grass", sowing: fromDay },
        ensemble: { years: 20, seed: 1, ...noSpread },
      },
      {},
      ({ ledger, course, firstIndex }, { weather, year }) => {
        // The grass stands from the run's first day; the months are told by the calendar.
        const first = dayNumber(year, 10, 1) - weather.firstDay - firstIndex;
        const last = dayNumber(year + 1, 3, 31) - weather.firstDay - firstIndex;
        expect(first).toBe(course.sowingDay);
        expect(last).toBeLessThanOrEqual(course.maturityDay);
        const lostMm =
          sumOver(ledger.evaporationMm, first, last) + sumOver(ledger.transpirationMm, first, last);
        return lostMm / (last - first + 1);
      },
    );
    expect(meansMm.length).toBe(20);
    const mean = meansMm.reduce((sum, mm) => sum + mm, 0) / meansMm.length;
    expect(Math.abs(mean - winter.expected.mmPerDay), `${mean} mm a day`).toBeLessThanOrEqual(
      winter.tolerance,
    );
  });
});

noneLeft();
