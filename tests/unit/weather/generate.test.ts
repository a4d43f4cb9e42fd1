import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { isoDate } from "../../../src/quantity/calendar.ts";
import { toDailyWeather } from "../../../src/weather/et/dailyWeather.ts";
import { assumedWetDays, daysOf, generateYears } from "../../../src/weather/generate/generate.ts";
import { drawDays } from "../../../src/weather/generate/generatorDraws.ts";
import { amountShape, wetDayAmounts, wetDayRainMm } from "../../../src/weather/generate/rainAmounts.ts";
import { usualRainPerWetDayMm } from "../../../src/weather/generate/rainChain.ts";
import { plains, plainsNormals } from "./sampleRecord.ts";

const plan = { years: 4, firstYear: 2001, seed: 1 };

describe("generated years", () => {
  test("are whole calendar years with leap days", () => {
    const record = generateYears(plainsNormals, plains, plan);
    expect(isoDate(record.firstDay)).toBe("2001-01-01");
    expect(record.days).toBe(3 * 365 + 366);
    expect(record.station.latitudeDeg).toBe(39);
  });

  test("are the same for the same seed, others for another, and the first ones however many are asked", () => {
    const first = generateYears(plainsNormals, plains, plan);
    const more = generateYears(plainsNormals, plains, { ...plan, years: 9 });
    const other = generateYears(plainsNormals, plains, { ...plan, seed: 2 });
    for (const series of ["rainMm", "tMaxC", "tMinC"] as const) {
      expect(more[series]!.subarray(0, first.days)).toEqual(first[series]);
      expect(other[series]).not.toEqual(first[series]);
    }
  });

  test("serve reference ET: 1,000 to 1,700 mm a year on the dry plains, no gap anywhere", () => {
    const record = generateYears(plainsNormals, plains, { ...plan, years: 50 });
    const weather = toDailyWeather(record, plains, { method: "penman-monteith", normals: plainsNormals });
    const yearly = weather.et0Mm.reduce((sum, mm) => sum + mm, 0) / 50;
    expect(yearly).toBeGreaterThan(1000);
    expect(yearly).toBeLessThan(1700);
    expect(weather.referenceEt).toContain("dry climate");
  });

  test("a month without rain stays dry, and wet days are fewer where fewer are given", () => {
    const dryJuly = { ...plainsNormals, rainMm: plainsNormals.rainMm.map((mm, m) => (m === 6 ? 0 : mm)) };
    const record = generateYears(dryJuly, plains, { ...plan, years: 1 });
    expect(record.rainMm.subarray(181, 212).every((mm) => mm === 0)).toBe(true);
    const wetDays = (days: readonly number[]) =>
      generateYears({ ...plainsNormals, wetDays: days }, plains, { ...plan, years: 30 }).rainMm.filter(
        (mm) => mm > 0,
      ).length / 30;
    expect(Math.abs(wetDays(Array<number>(12).fill(4)) - 48)).toBeLessThan(4);
    expect(Math.abs(wetDays(Array<number>(12).fill(10)) - 120)).toBeLessThan(6);
  });

  test("rain without a wet day, or a wet day every day, still brings the rain", () => {
    for (const wetDays of [Array<number>(12).fill(0), Array<number>(12).fill(31)]) {
      const record = generateYears({ ...plainsNormals, wetDays }, plains, { ...plan, years: 60 });
      const yearly = record.rainMm.reduce((sum, mm) => sum + mm, 0) / 60;
      expect(Math.abs(yearly / 340 - 1)).toBeLessThan(0.1);
    }
  });

  test("wet days are about 3 C cooler by day than dry ones", () => {
    const record = generateYears(plainsNormals, plains, { ...plan, years: 200 });
    const july: { wet: number[]; dry: number[] } = { wet: [], dry: [] };
    for (let day = 0; day < record.days; day++) {
      if (isoDate(record.firstDay + day).slice(5, 7) !== "07") continue;
      july[record.rainMm[day]! > 0 ? "wet" : "dry"].push(record.tMaxC![day]!);
    }
    const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(Math.abs(mean(july.dry) - mean(july.wet) - 3)).toBeLessThan(0.6);
  });

  test("say what they are, and which wet days were assumed", () => {
    const { notes } = generateYears({ ...plainsNormals, wetDays: null }, plains, plan);
    expect(notes[0]).toContain("4 years generated from monthly normals (seed 1)");
    expect(notes[1]).toMatch(/^Wet days a month were not given; assumed from rain and temperature: 3, /);
  });

  test("refuse normals that cannot be", () => {
    const normals = {
      ...plainsNormals,
      rainMm: [...plainsNormals.rainMm.slice(1), Number.POSITIVE_INFINITY],
    };
    expect(() => generateYears(normals, plains, plan)).toThrow(InputError);
  });
});

describe("amounts of a wet day", () => {
  const grid = Array.from({ length: 20_000 }, (_, at) => (at + 0.5) / 20_000);

  test.each([0.25, 0.3, 1.1, 2.6, 8, 40])(
    "keep their mean at %d mm a wet day, in cold and warm months",
    (meanMm) => {
      for (const monthMeanC of [-10, 5, 11, 30]) {
        const amounts = wetDayAmounts(meanMm, amountShape(monthMeanC));
        const mean = grid.reduce((sum, drawn) => sum + wetDayRainMm(amounts, drawn), 0) / grid.length;
        expect(Math.abs(mean / meanMm - 1)).toBeLessThan(0.002);
      }
    },
  );

  test("are never below the 0.25 mm that makes a wet day, even where the normals say less", () => {
    for (const meanMm of [0.1, 0.25, 5]) {
      const amounts = wetDayAmounts(meanMm, amountShape(20));
      for (const drawn of [0, 0.2, 0.44, 0.7, 1 - 2 ** -53]) {
        const mm = wetDayRainMm(amounts, drawn);
        expect(mm).toBeGreaterThanOrEqual(0.25);
        expect(Number.isFinite(mm)).toBe(true);
      }
    }
    expect(wetDayRainMm({ smallShare: 0.5, smallMm: 1, largeMm: 8 }, 0.75)).toBeCloseTo(5.795, 3);
  });

  test("have no step between cold and warm months", () => {
    for (let celsius = 0; celsius < 20; celsius += 0.1) {
      const [a, b] = [amountShape(celsius), amountShape(celsius + 0.1)];
      expect(Math.abs(a.largeTimes - b.largeTimes)).toBeLessThan(0.005);
    }
  });

  test("assumed wet days bring least where it is cold, more where it is wet, and never fill a month", () => {
    expect(usualRainPerWetDayMm(-60, 30)).toBe(1.5);
    expect(usualRainPerWetDayMm(10, 30)).toBeCloseTo(5.1, 6);
    expect(usualRainPerWetDayMm(10, 60)).toBeGreaterThan(usualRainPerWetDayMm(10, 30));
    expect(usualRainPerWetDayMm(40, 2000)).toBe(20);
    const drenched = assumedWetDays({ ...plainsNormals, rainMm: Array<number>(12).fill(900) });
    expect(Math.max(...drenched)).toBeCloseTo(27.9);
    expect(assumedWetDays({ ...plainsNormals, rainMm: Array<number>(12).fill(0) })).toEqual(
      Array(12).fill(0),
    );
  });
});

test("every drawn wet day brings 0.25 mm or more, and other normals keep the days' draws", () => {
  const draws = drawDays(3, daysOf(plan));
  const wetter = { ...plainsNormals, rainMm: plainsNormals.rainMm.map((mm) => 2 * mm) };
  const [one, two] = [plainsNormals, wetter].map((normals) =>
    generateYears(normals, plains, { ...plan, seed: 3 }, draws),
  );
  expect(one!.rainMm.filter((mm) => mm > 0 && mm < 0.25)).toHaveLength(0);
  expect([...two!.rainMm].map((mm) => mm > 0)).toEqual([...one!.rainMm].map((mm) => mm > 0));
  expect(generateYears(wetter, plains, { ...plan, seed: 3 }).rainMm).toEqual(two!.rainMm);
});

test("rain below 0 in the normals is refused before a year is made", () => {
  const normals = {
    rainMm: [-1, ...Array.from({ length: 11 }, () => 30)],
    wetDays: null,
    tMaxC: Array.from({ length: 12 }, () => 20),
    tMinC: Array.from({ length: 12 }, () => 5),
  };
  const site = { latitudeDeg: 40, elevationM: 1000, setting: "inland" as const };
  expect(() => generateYears(normals, site, { years: 1, firstYear: 2001, seed: 1 })).toThrow(
    "weather.monthlyNormals.rain[0]",
  );
});
