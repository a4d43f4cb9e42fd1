import { expect, test } from "vitest";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import { resolveScenario } from "../../../src/scenario/index.ts";
import { withChanges } from "./good-scenario.ts";

const resolved = (changes: Readonly<Record<string, unknown>>) =>
  resolveScenario(withChanges(changes), {
    fileName: "good.json",
    readText: () => {
      throw new Error("it has no files");
    },
  });
const date = "2024-07-03";
const day = dayNumber(2024, 7, 3);

test("no outlook told: none", async () => expect((await resolved({})).outlook).toBeNull());

test("a date alone measures nothing", async () => {
  expect((await resolved({ outlook: { date } })).outlook).toEqual({ day, waterByCase: [null, null] });
});

test("a probe holds for every case but one with a probe of its own", async () => {
  const { outlook } = await resolved({
    outlook: { date, moistDepth: "20 in", shareBelow: "30 %" },
    "cases[1].outlook": { moistDepth: "10 in", shareBelow: "5 %" },
  });
  expect(outlook?.waterByCase).toEqual([
    { kind: "moist depth", moistDepthMm: 508, shareBelow: 0.3 },
    { kind: "moist depth", moistDepthMm: 254, shareBelow: 0.05 },
  ]);
});

test("layers are met by name, in any order, as soil.startingWater takes their water", async () => {
  const { outlook, cases } = await resolved({
    outlook: {
      date,
      layers: [
        { name: "subsoil", water: "20 % by volume" },
        { name: "topsoil", water: "0.5 in available" },
        { name: "pan", water: "50 % of available" },
      ],
    },
  });
  const [top, pan] = cases[0].layers;
  const water = outlook?.waterByCase[0];
  if (water?.kind !== "by layer") throw new Error("it is told by layer");
  const expected = [
    top!.wiltingPoint + 0.5 / 5,
    pan!.wiltingPoint + 0.5 * (pan!.fieldCapacity - pan!.wiltingPoint),
    0.2,
  ];
  expected.forEach((fraction, l) => expect(water.volumeFraction[l]).toBeCloseTo(fraction, 12));
  expect(cases[0].startingWater).toEqual({ kind: "share", share: 0.4 });
});
