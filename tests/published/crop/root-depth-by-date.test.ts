/**
 * The unhindered front of five crops beside published depths by date, each within 15 %. A record says whether the crop table took
 * its numbers from the same study ("parameter": then this holds the arithmetic from paces and stages to depths in another climate)
 * or not ("check"). What is left out, and why, stands in the file. The scoreboard holds the front of the whole model, soil and rain.
 */
import { describe, expect, test } from "vitest";
import table from "../../../data-reference/root-depth-by-date.json";
import { stagesOfType } from "../../../src/crop/cropCalendar.ts";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import { degreeDays } from "../../../src/crop/stages.ts";
import { placeNamed } from "../../../truth/places.ts";
import { normalWeather, sowingIndexOf } from "../../unit/crop/siteWeather.ts";

const { records, within, leftOut } = table;
type Depth = (typeof records)[number];
const daysToEmerge = 7;

/** The crop as a scenario for that place would have it, its descent perhaps another. */
function depthM(
  { crop, place: id, sowing: day, at }: Depth,
  descent?: (plan: CropPlan) => CropPlan["descent"],
): number {
  const [month, dayOfMonth] = day.split("-").map(Number);
  const sowing = { month: month!, day: dayOfMonth! };
  const defaults = findCrop(crop);
  const usual = defaultPlan(defaults);
  const place = placeNamed(id);
  const normals = { tMaxC: place.tMaxC, tMinC: place.tMinC, rainMm: [], wetDays: null };
  const fitsSite = defaults.heatNeedFitsSite;
  const wishes = {
    sowing,
    factor: 1,
    ripe: null,
    fitsSite,
    ripeByFreeze: fitsSite,
    normals,
    latitudeDeg: null,
  };
  const plan = { ...usual, ...stagesOfType(usual, wishes), sowing };
  const weather = normalWeather(normals);
  const sown = sowingIndexOf(plan, weather);
  const { descentMmByDay, maturityDay } = cropCourse(
    { ...plan, descent: descent?.(plan) ?? plan.descent },
    weather,
    sown,
    sown,
  );
  const until =
    typeof at === "string"
      ? maturityDay
      : "degreeDays" in at && at.degreeDays !== undefined
        ? dayOfHeat(weather.tMeanC.subarray(sown), at.degreeDays, at.baseC)
        : daysToEmerge + (at.daysAfterEmergence ?? NaN);
  const goneMm = descentMmByDay
    .subarray(0, Math.min(until, maturityDay) + 1)
    .reduce((sum, mm) => sum + mm, 0);
  return (plan.sowingDepthMm + goneMm) / 1000;
}

function dayOfHeat(tMeanC: Float64Array, wanted: number, baseC: number): number {
  let heat = 0;
  return tMeanC.findIndex((meanC) => (heat += degreeDays(meanC, baseC)) >= wanted);
}

const off = (record: Depth, ours: number): number => Math.abs(ours / record.depthM - 1);

describe.each(["parameter", "check"])("depth of roots by date, standing: %s", (standing) => {
  const those = records.filter((record) => record.standing === standing);
  test("there are some", () => expect(those.length).toBeGreaterThanOrEqual(3));
  test.each(those.map((record) => [record.what, record.depthM, record.provenance, record] as const))(
    `%s: %d m (%s), within ${100 * within} %`,
    (_what, _depth, _mark, record) => expect(off(record, depthM(record))).toBeLessThanOrEqual(within),
  );
});

test("five crops, every record and every one left out with its source", () => {
  expect(new Set(records.map(({ crop }) => crop)).size).toBe(5);
  for (const { source, provenance } of [...records, ...leftOut]) {
    expect(source.length).toBeGreaterThan(15);
    expect(provenance).toBe("read");
  }
  for (const { why } of leftOut) expect(why.length).toBeGreaterThan(20);
});

test("one curve to maturity for all crops would miss them: the check can fail", () => {
  const sine = (): CropPlan["descent"] => ({ shape: "sine", endStage: 4 });
  const missed = records.filter((record) => off(record, depthM(record, sine)) > within).map(({ id }) => id);
  expect(missed).toEqual(
    expect.arrayContaining(["corn-leaf-18", "sorghum-20", "sunflower-20", "sunflower-60"]),
  );
});
