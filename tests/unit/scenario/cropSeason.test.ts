import { describe, expect, test } from "vitest";
import { prepare } from "../../../src/answer/runs/prepare.ts";
import { readyRun } from "../../../src/answer/runs/readyRun.ts";
import { resolveScenario } from "../../../src/scenario/index.ts";
import type { Scenario } from "../../../src/scenario/scenario.ts";
import { isoDate } from "../../../src/quantity/calendar.ts";
import { withChanges } from "./good-scenario.ts";

const surroundings = {
  fileName: "scenario.json",
  readText: (path: string): string => {
    if (path === "et.csv") return etRecord();
    throw new Error(`no file ${path}`);
  },
};

const resolved = (changes: Readonly<Record<string, unknown>>): Promise<Scenario> =>
  resolveScenario(withChanges(changes), surroundings);
const total = (lengths: readonly number[]): number => lengths.reduce((sum, one) => sum + one, 0);
const whyOf = ({ defaults }: Scenario, field: string) =>
  defaults.find((one) => one.field === field)?.why ?? "";

describe("how long the crop takes", () => {
  test("early, medium and full differ in degree days and days, and say so", async () => {
    const [early, usual, full] = await Promise.all(
      ["early", "medium", "full"].map((maturity) => resolved({ "crop.maturity": maturity })),
    );
    const daysOf = (one: Scenario | undefined) => total(one!.cases[0].crop.stageDaysFallback);
    const heatOf = (one: Scenario | undefined) => total(one!.cases[0].crop.stageLengths);
    expect(daysOf(early)).toBe(Math.round(0.9 * 125));
    expect(daysOf(full)).toBe(Math.round(1.1 * 125));
    expect(heatOf(early)).toBeLessThan(heatOf(usual));
    expect(heatOf(usual)).toBeLessThan(heatOf(full));
    expect(whyOf(early!, "crop.stageLengths")).toMatch(/^early type: .*\(memory\)$/);
    expect(early!.defaults.some(({ field }) => field === "crop.maturity")).toBe(false);
  });

  test("left out: medium, and says so", async () => {
    const { defaults } = await resolved({ crop: { name: "field pea" } });
    expect(defaults.find(({ field }) => field === "crop.maturity")?.value).toBe("medium");
  });

  test("a case may grow another type, and one sown later has the base's", async () => {
    const { cases } = await resolved({
      "crop.ripe": "Sep 25",
      cases: [
        { name: "base" },
        { name: "early", crop: { maturity: "early" } },
        { name: "late", crop: { sowing: "Jun 10" } },
        { name: "ripe later", crop: { ripe: "Oct 5" } },
        { name: "by its days", crop: { stageDays: ["20 days", "30 days", "30 days", "20 days"] } },
      ],
    });
    const days = cases.map(({ crop }) => total(crop.stageDaysFallback));
    expect(days).toEqual([117, 113, 117, 127, 100]);
  });

  test("a harvest is two weeks after sorghum is ripe", async () => {
    const harvest = await resolved({ "crop.harvest": "Oct 5" });
    const ripe = await resolved({ "crop.ripe": "Sep 21" });
    expect(harvest.cases[0].crop).toEqual(ripe.cases[0].crop);
    expect(whyOf(harvest, "crop.stageLengths")).toBe(
      "ripe on Sep 21 in a normal year, 14 days before harvest (common practice, no source)",
    );
  });

  test("on calendar days it is ripe on that very day every year", async () => {
    const scenario = await resolved({ "crop.ripe": "Sep 12", "crop.clock": "days" });
    const preparation = prepare(scenario);
    for (let run = 0; run < 5; run++) {
      const { course, firstIndex } = readyRun(preparation, run)[0]!;
      const { weather } = preparation.weatherYears;
      expect(isoDate(weather.firstDay + firstIndex + course.maturityDay).slice(5)).toBe("09-12");
    }
  });

  test("on its own clock the middle year of many ripens it within four days of it", async () => {
    const scenario = await resolved({ "crop.ripe": "Sep 12", "ensemble.years": 40 });
    const preparation = prepare(scenario);
    const { weather } = preparation.weatherYears;
    const ripe = preparation.yearByRun
      .map((_, run) => {
        const { course, firstIndex } = readyRun(preparation, run)[0]!;
        return isoDate(weather.firstDay + firstIndex + course.maturityDay).slice(5);
      })
      .sort();
    expect(ripe[20]! >= "09-08" && ripe[20]! <= "09-16", ripe[20]).toBe(true);
  });
});

describe("winter wheat", () => {
  const wheat = { "crop.name": "winter wheat", "crop.sowing": "Oct 15", yield: undefined };

  test("from a record of rain and reference ET alone it is ripe in June in the south", async () => {
    const scenario = await resolved({
      ...wheat,
      site: { latitude: "35.2 N", elevation: "1170 m" },
      weather: { record: "et.csv" },
      "ensemble.years": 3,
    });
    const preparation = prepare(scenario);
    const { weather } = preparation.weatherYears;
    const { course, firstIndex } = readyRun(preparation, 0)[0]!;
    expect(weather.hasTemperature).toBe(false);
    expect(isoDate(weather.firstDay + firstIndex + course.maturityDay).slice(5)).toBe("06-14");
    expect(course.ripe).toBe(true);
  });

  test("south of the equator spring begins in September; with stage lengths of its own it waits for nothing", async () => {
    const south = await resolved({
      "crop.name": "winter wheat",
      "crop.sowing": undefined,
      "site.latitude": "35 S",
    });
    expect(south.cases[0].crop.springFrom).toEqual({ month: 9, day: 1 });
    const stageLengths = ["330 C day", "930 C day", "390 C day", "330 C day"];
    expect(
      (await resolved({ ...wheat, "crop.stageLengths": stageLengths })).cases[0].crop.springFrom,
    ).toBeNull();
    const both = await resolved({
      ...wheat,
      "crop.stageLengths": stageLengths,
      "crop.springGrowth": "Feb 15",
    });
    expect(both.cases[0].crop.springFrom).toEqual({ month: 2, day: 15 });
  });
});

test("roots told to end at another stage, and what is said of those that are not", async () => {
  const corn = { "crop.name": "corn", "crop.sowing": "May 10" };
  const told = await resolved({ ...corn, "crop.rootsEnd": "flowering" });
  const { descent } = told.cases[0].crop;
  expect(descent.shape === "points" && descent.points.at(-1)).toEqual([2, 1]);
  const usual = await resolved(corn);
  expect(usual.defaults.find(({ field }) => field === "crop.rootsEnd")?.value).toBe("39 % into mid-season");
  expect(whyOf(usual, "crop.rootsEnd")).toContain("Ordonez et al. 2018");
  const wheat = await resolved({ "crop.name": "spring wheat", "crop.sowing": "Apr 10" });
  expect(wheat.defaults.find(({ field }) => field === "crop.rootsEnd")?.value).toBe("the end of mid-season");
});

/** Nine years of rain and reference ET, no temperatures. */
function etRecord(): string {
  const first = Date.UTC(2001, 0, 1);
  const lines = Array.from({ length: 3287 }, (_, day) => {
    const date = new Date(first + day * 86_400_000).toISOString().slice(0, 10);
    return `${date},${day % 7 === 0 ? 8 : 0},3`;
  });
  return ["date,rain_mm,et0_mm", ...lines, ""].join("\n");
}
