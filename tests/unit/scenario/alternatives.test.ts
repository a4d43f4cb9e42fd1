/** The table of what makes what void: its keys are fields, and it holds for cases as for forms. */
import { describe, expect, test } from "vitest";
import {
  alternatives,
  coredLayerOverBase,
  isSaidTwice,
  type Voids,
} from "../../../src/scenario/fields/facts/alternatives.ts";
import { formFields } from "../../../src/scenario/index.ts";
import { takesOut } from "../../../web/forms/fieldsOf.ts";

const places: Readonly<Record<keyof typeof alternatives, string>> = {
  layer: "soil.layers[]",
  core: "soil.layers[].cores[]",
  startingWater: "soil.startingWater",
  surface: "surface",
  cropLength: "crop",
  crop: "crop",
  weather: "weather",
  countedRows: "rowPositions",
  countedGround: "evidence.counts[]",
  kernelWeight: "evidence.counts[]",
};
const tables: readonly (readonly [place: string, voids: Voids])[] = [
  ...(Object.keys(places) as (keyof typeof alternatives)[]).map(
    (key) => [places[key], alternatives[key]] as const,
  ),
  ["soil.layers[]", coredLayerOverBase],
];

describe("every key of the table is a field of its group", () => {
  const fields = Object.keys(formFields());
  test.each(tables)("%s", (place, voids) => {
    for (const [key, others] of Object.entries(voids))
      for (const one of [key, ...(others ?? [])]) {
        const at = `${place}.${one}`;
        expect(
          fields.some((path) => path === at || path.startsWith(`${at}[`)),
          at,
        ).toBe(true);
        expect(others).not.toContain(key);
      }
  });
});

test("a form that writes a key takes out the others, and emptied takes out nothing", () => {
  const also = takesOut("crop", "ripe", alternatives.crop);
  expect(also("Jun 25").map(([path, value]) => [path, value])).toEqual(
    ["harvest", "maturity", "stageLengths", "stageDays"].map((key) => [`crop.${key}`, undefined]),
  );
  expect(also(undefined)).toEqual([]);
  expect(takesOut("crop", "height", alternatives.crop)("4 ft")).toEqual([]);
});

test("ways of several keys stand together; two ways do not", () => {
  const lengths = alternatives.cropLength;
  expect(isSaidTwice({ stageLengths: [1], stageDays: [2] }, "stageLengths", lengths)).toBe(false);
  expect(isSaidTwice({ stageLengths: [1], ripe: "Jun 25" }, "stageLengths", lengths)).toBe(true);
  expect(isSaidTwice({ ripe: "Jun 25" }, "stageLengths", lengths)).toBe(false);
});
