/** What a winter takes from grass where it freezes. Row, source and tolerance: data-reference/winter-checks.json. */
import { describe, expect, test } from "vitest";
import checks from "../../../data-reference/winter-checks.json" with { type: "json" };
import { hasFrosts } from "../../../src/crop/coldGround.ts";
import { sumOver } from "../../../src/season/ledger.ts";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import { bySeason, noSpread } from "../../../truth/seasons.ts";
import { markOf, recordsOf, sourceOf } from "../weather/records.ts";

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

const frost = take<{ asIn: string }, { kc: number }>("fao56-ch11-frost");

/** Means of a winter, October to March. */
interface Winter {
  readonly mmPerDay: number;
  /** Water lost over reference ET, on days of frosty weather without snow. */
  readonly kcInFrost: number;
}

async function winters(): Promise<Winter[]> {
  const { latitude, elevation, rainMm, tMaxC, tMinC, texture, startPercent, fromDay } = winter.inputs;
  return bySeason(
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
      if (first !== course.sowingDay || last > course.maturityDay) throw new Error("not the winter's days");
      const lostMm = (from: number, to: number) =>
        sumOver(ledger.evaporationMm, from, to) + sumOver(ledger.transpirationMm, from, to);
      let [inFrostMm, et0Mm] = [0, 0];
      for (let day = first; day <= last; day++) {
        if (!hasFrosts(weather, firstIndex + day) || ledger.snowOnGroundMm[day]! > 0) continue;
        inFrostMm += lostMm(day, day);
        et0Mm += weather.et0Mm[firstIndex + day]!;
      }
      return { mmPerDay: lostMm(first, last) / (last - first + 1), kcInFrost: inFrostMm / et0Mm };
    },
  );
}

describe(`${sourceOf(winter)} (${markOf(winter)}): 20 winters of grass on ${winter.inputs.texture}`, async () => {
  const found = await winters();
  const mean = (of: (one: Winter) => number) => found.reduce((sum, one) => sum + of(one), 0) / found.length;

  test("20 winters", () => expect(found.length).toBe(20));

  test(`${winter.what}; within ${winter.tolerance} mm: ${winter.because}`, () => {
    const mm = mean(({ mmPerDay }) => mmPerDay);
    expect(Math.abs(mm - winter.expected.mmPerDay), `${mm} mm a day`).toBeLessThanOrEqual(winter.tolerance);
  });

  test(`${frost.what}; within ${frost.tolerance}: ${frost.because}`, () => {
    const kc = mean(({ kcInFrost }) => kcInFrost);
    expect(Math.abs(kc - frost.expected.kc), `${kc}`).toBeLessThanOrEqual(frost.tolerance);
  });
});

noneLeft();
