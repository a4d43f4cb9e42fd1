import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { newRecordCache } from "../../../src/scenario/read/recordCache.ts";
import { resolveScenario } from "../../../src/scenario/resolve/resolve.ts";

const folder = new URL("../../../shared/scenarios/", import.meta.url);
const wheat = JSON.parse(readFileSync(new URL("wheat-after-fallow.json", folder), "utf8")) as {
  weather: { record: string };
};
const recordText = readFileSync(new URL(wheat.weather.record, folder), "utf8");

test("a record is read anew only when its text or the way to read it is another", async () => {
  const recordCache = newRecordCache();
  const recordOf = async (weather: object, text = recordText) => {
    const scenario = { ...wheat, weather: { ...wheat.weather, ...weather } };
    const surroundings = { fileName: "wheat.json", readText: () => text };
    const read = await resolveScenario(scenario, { ...surroundings, recordCache });
    expect(read).toEqual(await resolveScenario(scenario, surroundings));
    if (read.weather.source.kind !== "record") throw new Error("no record");
    return read.weather.source.record;
  };
  const first = await recordOf({});
  expect(await recordOf({})).toBe(first);
  expect(await recordOf({ maxGapDays: 9 })).not.toBe(first);
  const wetter = recordText.replace("1990-01-01,0,", "1990-01-01,7,");
  expect(wetter).not.toBe(recordText);
  expect((await recordOf({}, wetter)).rainMm).not.toEqual(first.rainMm);
  expect((await recordOf({})).rainMm).toEqual(first.rainMm);
});
