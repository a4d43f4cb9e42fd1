import { describe, expect, test } from "vitest";
import { rootingOfCase, type FirstFront } from "../../../src/answer/runs/rootingOfCase.ts";
import type { CropCourse } from "../../../src/crop/course.ts";

const first: FirstFront = {
  rooting: { kind: "grown" },
  frontMmByDay: Float64Array.of(0, 0, 30, 100, 400),
  sowingDay: 2,
  maturityDay: 4,
  finalDepthMm: 400,
};
const stated: FirstFront = { ...first, rooting: { kind: "absolute", depthMm: 600 } };

function course(sowingDay: number, maturityDay: number): CropCourse {
  const days = maturityDay + 1;
  const column = new Float64Array(days);
  return {
    kcbByDay: column,
    kcMaxByDay: column,
    coverByDay: column,
    descentMmByDay: column,
    stageByDay: new Uint8Array(days),
    sowingDay,
    sowingDepthMm: 30,
    floweringDay: maturityDay,
    ripe: true,
    maturityDay,
  };
}

const of = (rooting: Parameters<typeof rootingOfCase>[0], before: FirstFront | null) =>
  rootingOfCase(rooting, before, course(2, 4), 1000, new Float64Array(5));

describe.each([
  ["the first case", null],
  ["a later case whose first grows", first],
  ["a later case whose first has a stated depth", stated],
])("%s", (_, before) => {
  test("grown", () => expect(of({ kind: "grown" }, before)).toEqual({ kind: "grown" }));
  test("a stated depth is where its own roots stop", () => {
    expect(of({ kind: "absolute", depthMm: 650 }, before)).toEqual({ kind: "stops", depthMm: 650 });
  });
});

describe("against a first case with a stated depth it is that depth and the extra", () => {
  test.each([
    ["deeper", 50.8, 650.8],
    ["shallower", -100, 500],
    ["nothing", 0, 600],
    ["never above the surface", -900, 0],
  ])("%s", (_, extraMm, depthMm) => {
    expect(of({ kind: "relative", extraMm }, stated)).toEqual({ kind: "stops", depthMm });
  });

  test("to the bit as if it were written whole: 38.7 in and 1.1 in are 39.8 in", () => {
    const inMm = (inches: number) => Number((inches * 25.4).toPrecision(13));
    const sum = inMm(38.7) + inMm(1.1);
    expect(sum).not.toBe(inMm(39.8));
    const before: FirstFront = { ...first, rooting: { kind: "absolute", depthMm: inMm(38.7) } };
    expect(of({ kind: "relative", extraMm: inMm(1.1) }, before)).toEqual({
      kind: "stops",
      depthMm: inMm(39.8),
    });
  });
});

describe("against grown roots it is their front, stretched", () => {
  test.each([
    ["two inches deeper", 50.8, (400 + 50.8) / 400],
    ["nothing", 0, 1],
    ["shallower", -100, 0.75],
    ["never above the surface", -900, 0],
    ["never below the column", 5000, 2.5],
  ] as const)("%s", (_, extraMm, factor) => {
    const out = new Float64Array(5);
    expect(rootingOfCase({ kind: "relative", extraMm }, first, course(2, 4), 1000, out)).toEqual({
      kind: "stretched",
      frontMmByDay: out,
      factor,
    });
    expect([...out]).toEqual([...first.frontMmByDay]);
  });

  test("with less fallow and a longer season it is matched at sowing and then stays", () => {
    const out = new Float64Array(5);
    rootingOfCase({ kind: "relative", extraMm: 0 }, first, course(1, 4), 1000, out);
    expect([...out]).toEqual([0, 30, 100, 400, 400]);
  });

  test("a front that never left the surface is not stretched", () => {
    const none = { ...first, frontMmByDay: new Float64Array(5), finalDepthMm: 0 };
    expect(of({ kind: "relative", extraMm: 50 }, none)).toMatchObject({ factor: 0 });
  });
});
