import { describe, expect, test } from "vitest";
import { rootingOfFirst, rootingOfLater } from "../../../src/answer/rootingOfCase.ts";
import type { CropCourse } from "../../../src/crop/course.ts";

const first = {
  frontMmByDay: Float64Array.of(0, 0, 30, 100, 400),
  sowingDay: 2,
  maturityDay: 4,
  finalDepthMm: 400,
};

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

describe("rooting of the first case", () => {
  test("grown", () => expect(rootingOfFirst({ kind: "grown" })).toEqual({ kind: "grown" }));
  test("a stated depth stops it", () => {
    expect(rootingOfFirst({ kind: "absolute", depthMm: 600 })).toEqual({ kind: "stops", depthMm: 600 });
  });
});

describe("rooting of a later case", () => {
  test.each([
    ["two inches deeper", { kind: "relative", extraMm: 50.8 }, (400 + 50.8) / 400],
    ["shallower", { kind: "relative", extraMm: -100 }, 0.75],
    ["never above the surface", { kind: "relative", extraMm: -900 }, 0],
    ["an absolute depth", { kind: "absolute", depthMm: 500 }, 1.25],
    ["never below the column", { kind: "absolute", depthMm: 5000 }, 2.5],
  ] as const)("%s", (_, rooting, factor) => {
    const out = new Float64Array(5);
    expect(rootingOfLater(rooting, first, course(2, 4), 1000, out)).toEqual({
      kind: "stretched",
      frontMmByDay: out,
      factor,
    });
    expect([...out]).toEqual([...first.frontMmByDay]);
  });

  test("with less fallow and a longer season the front is matched at sowing and then stays", () => {
    const out = new Float64Array(5);
    rootingOfLater({ kind: "relative", extraMm: 0 }, first, course(1, 4), 1000, out);
    expect([...out]).toEqual([0, 30, 100, 400, 400]);
  });

  test("a front that never left the surface is not stretched", () => {
    const none = { ...first, frontMmByDay: new Float64Array(5), finalDepthMm: 0 };
    expect(
      rootingOfLater({ kind: "relative", extraMm: 50 }, none, course(2, 4), 1000, new Float64Array(5)),
    ).toMatchObject({
      factor: 0,
    });
  });
});
