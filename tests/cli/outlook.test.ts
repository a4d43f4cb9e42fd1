import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Outlook } from "../../src/answer/outlook/outlook.ts";
import { call, ownFolder, smallScenario, writeJson } from "./callCli.ts";

const folder = ownFolder();
copyFileSync(
  join(import.meta.dirname, "../../shared/scenarios/invented-station.csv"),
  join(folder, "station.csv"),
);
const onRecord = { ...smallScenario, weather: { record: "station.csv" } };
writeJson(folder, "normals.json", smallScenario);
writeJson(folder, "field.json", onRecord);
writeJson(folder, "measured.json", {
  ...onRecord,
  outlook: { date: "2012-07-15", moistDepth: "30 in", shareBelow: "20 %" },
  cases: [
    { name: "as dug" },
    { name: "deeper", rootingDepth: "+2 in", outlook: { moistDepth: "20 in", shareBelow: "0 %" } },
  ],
  evidence: { rootDepths: [{ case: "as dug", date: "2012-07-15", depths: ["20 in", "24 in", "22 in"] }] },
});

const json = async (...args: readonly string[]) =>
  JSON.parse((await call(folder, "outlook", ...args, "--json")).out) as Outlook;

describe("outlook", () => {
  test("a plain sentence first, 80 columns, ranges and cautions", async () => {
    const { code, out, err } = await call(folder, "outlook", "field.json", "--date", "2012-07-15");
    expect([code, err]).toEqual([0, ""]);
    expect(out.split("\n").every((line) => line.length <= 80)).toBe(true);
    const text = out.replaceAll("\n", " ");
    expect(text).toMatch(
      /^On 2012-07-15 the roots of "as dug" are at [\d.]+ in and have [\d.]+ in of available water within reach, (less than a day|\d+ days?) at the usual demand, with [\d.]+ in below them; those of "deeper" are at/,
    );
    expect(text).toMatch(
      /Grain sorghum sown 2012-06-01 is [a-z ,-]+ \(day 45; about \d+ more until it is ripe/,
    );
    expect(text).toMatch(
      /With the rest of the season from each of 29 other years, "as dug" ends at about \d+ bu\/ac/,
    );
    expect(text).toContain("not a basis for insurance or credit");
    expect(text).toContain("buried lines");
  });

  test("--json: each case now and at the end, the differences, the years", async () => {
    const answer = await json("field.json", "--date", "2012-07-15");
    expect(answer).toMatchObject({
      format: "rootfront-outlook/1",
      date: "2012-07-15",
      otherYears: { count: 29, first: 1990, last: 2019 },
    });
    expect(answer.now.map(({ name }) => name)).toEqual(["as dug", "deeper"]);
    for (const { layers, availableInRootsMm, availableBelowRootsMm } of answer.now) {
      // Medians need not add up, but nearly do.
      const all = layers.reduce((sum, { availableMm }) => sum + availableMm, 0);
      expect(Math.abs(all - availableInRootsMm.p50 - availableBelowRootsMm.p50)).toBeLessThan(0.05 * all);
    }
    expect(answer.differences).toHaveLength(1);
    expect(answer.method.runs).toBe(29);
  });

  test("the record's last day where none is told: a winter crop stands in it", async () => {
    writeJson(folder, "wheat.json", { ...onRecord, crop: { name: "winter wheat" } });
    const answer = await json("wheat.json");
    expect(answer.date).toBe("2019-12-31");
    // From New Year's Day on: each spring of the record, 1990 to 2019, the last one included.
    expect(answer.otherYears).toEqual({ count: 30, first: 1990, last: 2019 });
  });

  test("water and roots as measured, each case its own", async () => {
    const { now, cautions } = await json("measured.json");
    expect(now.map(({ waterMeasuredOn }) => waterMeasuredOn)).toEqual(["2012-07-15", "2012-07-15"]);
    expect(now.map(({ dugOn }) => dugOn)).toEqual(["2012-07-15", null]);
    expect(now[0]!.rootFrontMm).toEqual({ p10: 558.8, p50: 558.8, p90: 558.8 });
    const [as, deeper] = now.map(({ layers }) => layers[2]!.availableMm);
    expect(as).toBeGreaterThan(deeper!);
    expect(cautions.join(" ")).not.toContain("Water measured in one stand");
    // It was measured: nobody is sent to probe what the scenario assumed.
    expect(cautions.join(" ")).not.toContain("a stated share");
  });

  test("metric, and into a file", async () => {
    const { out } = await call(folder, "outlook", "field.json", "--date", "2012-07-15", "--units", "metric");
    expect(out).toContain("kg/ha");
    const written = await call(folder, "outlook", "field.json", "--date", "2012-07-15", "--out", "o.txt");
    expect(written.out).toBe("");
  });

  test.each([
    [["field.json", "--date", "July"], 2, /It is a date such as "2020-06-01"/],
    [
      ["field.json", "--date", "2020-07-15"],
      2,
      /^--date: expected a day of the record, 1990-01-01 to 2019-12-31, found 2020-07-15; give one of these/,
    ],
    [
      ["field.json", "--date", "2012-12-01"],
      2,
      /^--date: expected a day from sowing to maturity of grain sorghum sown 2012-06-01 and ripe 2012-\d\d-\d\d, found 2012-12-01;/,
    ],
    [
      ["field.json"],
      1,
      /^field\.json: outlook\.date: expected a day from sowing to maturity of grain sorghum sown 2019-06-01 and ripe 2019-\d\d-\d\d, found nothing, so 2019-12-31, the last day of the record;/,
    ],
    [
      ["normals.json", "--date", "2012-07-15"],
      1,
      /^normals\.json: weather\.record: expected a station record up to the day/,
    ],
  ])("%j ends with %i and one line", async (args, code, line) => {
    const called = await call(folder, "outlook", ...args);
    expect(called.code).toBe(code);
    expect(called.out).toBe("");
    expect(called.err).toMatch(line);
    expect(called.err.trimEnd().split("\n")).toHaveLength(1);
  });
});
