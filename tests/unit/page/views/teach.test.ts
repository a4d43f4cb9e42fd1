import { describe, expect, test } from "vitest";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { rootSystemOf, strokesTo, type Strokes } from "../../../../web/pictures/roots/rootSystem.ts";
import { layerSaid, numberTop, twoRootsLayout } from "../../../../web/pictures/roots/twoRootsLayout.ts";
import { stripOn } from "../../../../web/pictures/roots/twoRootsStrip.ts";
import type { Json } from "../../../../web/state/json.ts";
import { getAt, setAt } from "../../../../web/state/path.ts";
import {
  densityPath,
  fittedPassage,
  layerNamed,
  movedTo,
  slowestLayer,
  topRange,
} from "../../../../web/views/teach/denseLayer.ts";
import { guessSaid, saidMore } from "../../../../web/views/teach/guessWords.ts";
import { ownRain, rainSlid, sayRain } from "../../../../web/views/teach/rainSlid.ts";
import { questionsFor, subjectOf } from "../../../../web/views/teach/subject.ts";
import type { LayerShown } from "../../../../web/worker/protocol.ts";

const inch = 25.4;

/** A silt loam; roots begin to slow at 1.40 g/cm³ or so. */
function layer(name: string, topIn: number, bottomIn: number, density: number, usual: number): LayerShown {
  return {
    name,
    texture: "silt loam",
    topMm: topIn * inch,
    bottomMm: bottomIn * inch,
    sandFraction: 0.17,
    clayFraction: 0.21,
    organicMatterPercent: 1,
    bulkDensityKgPerM3: density * 1000,
    gravelVolumeFraction: 0,
    wiltingPoint: 0.1,
    fieldCapacity: 0.3,
    saturation: 0.45,
    saturatedConductivityMmPerDay: 100,
    conductivityMeasured: false,
    drainExponent: 10,
    hindrance: { strict: usual, usual, lenient: usual, basis: "bulk density" },
    availableWaterSd: 0.05,
    origin: "tillage pan",
    originAssumed: false,
    openShare: { low: 0, middle: 0, high: 0 },
  };
}
const soilWith = (panDensity: number, pace: number) => ({
  layers: [
    layer("topsoil", 0, 6, 1.32, 1),
    layer("pan", 6, 10, panDensity, pace),
    layer("subsoil", 10, 40, 1.36, 1),
  ],
});

describe("the dense layer", () => {
  test("is the one that slows roots most, of the cases looked at", () => {
    const cases = [soilWith(1.36, 1), soilWith(1.62, 0.4), soilWith(1.7, 0.2)];
    expect(slowestLayer(cases, [0, 1])).toEqual({ caseIndex: 1, index: 1 });
    expect(slowestLayer(cases, [0, 1, 2])).toEqual({ caseIndex: 2, index: 1 });
    expect(slowestLayer([cases[1]!, cases[1]!], [0, 1])).toEqual({ caseIndex: 0, index: 1 });
  });
  test("is the one nearest to slowing them where none does", () =>
    expect(slowestLayer([soilWith(1.37, 1)], [0])).toEqual({ caseIndex: 0, index: 1 }));
  test("is the one that any case has slow, where none of those looked at has", () =>
    expect(slowestLayer([soilWith(1.3, 1), soilWith(1.3, 1), soilWith(1.63, 0.4)], [0, 1])).toEqual({
      caseIndex: 0,
      index: 1,
    }));
  test("is one that can be moved, where none slows roots and the last is the densest", () => {
    const { layers } = soilWith(1.33, 1);
    expect(slowestLayer([{ layers }], [0])).toEqual({ caseIndex: 0, index: 1 });
    expect(slowestLayer([{ layers: layers.slice(1) }], [0])).toEqual({ caseIndex: 0, index: 1 });
  });
  test("is what a dig that decides has found slow, though its density says nothing of it", () => {
    const cases = [
      { name: "left", ...soilWith(1.34, 1) },
      { name: "track", ...soilWith(1.34, 1) },
    ];
    const fit = (decides: boolean, layer: string | null, verdict = "meets", as: string | null = null) =>
      ({
        decides,
        layer,
        cases: [{ case: "track", value: 0.55, verdict }],
        undug: [{ case: "left", as }],
      }) as unknown as Parameters<typeof fittedPassage>[0];
    const found = (from: ReturnType<typeof fit>) => slowestLayer(cases, [0, 1], fittedPassage(from, cases))!;
    expect(found(fit(true, "topsoil"))).toEqual({ caseIndex: 1, index: 0 });
    // The very same layer of a case that was not dug is as slow, and the first case goes first.
    expect(found(fit(true, "topsoil", "meets", "track"))).toEqual({ caseIndex: 0, index: 0 });
    for (const other of [
      fit(false, "topsoil"),
      fit(true, null),
      fit(true, "topsoil", "no passage is shut enough"),
      null,
    ])
      expect(found(other)).toEqual({ caseIndex: 0, index: 1 });
  });
  test("is none without layers, and another by its name", () => {
    expect(slowestLayer([{ layers: [] }], [0])).toBeNull();
    expect(layerNamed([soilWith(1.62, 0.4)], [0], "subsoil")).toEqual({ caseIndex: 0, index: 2 });
    expect(layerNamed([soilWith(1.62, 0.4)], [0], "rock")).toBeNull();
  });

  const written: Json = {
    soil: { layers: [{ name: "topsoil" }, { name: "pan", bulkDensity: "1.3 g/cm^3" }] },
    cases: [{ name: "a" }, { name: "b", soil: { layers: [{ name: "pan", bulkDensity: "1.6 g/cm^3" }] } }],
  };
  test("has its density where the case's own word stands, otherwise in the soil of all", () => {
    expect(densityPath(written, { caseIndex: 0, index: 1 }, "pan")).toBe("soil.layers[1].bulkDensity");
    expect(densityPath(written, { caseIndex: 1, index: 1 }, "pan")).toBe(
      "cases[1].soil.layers[0].bulkDensity",
    );
    expect(densityPath({ soil: { horizons: {} } }, { caseIndex: 0, index: 1 }, "pan")).toBeNull();
  });
});

describe("a dense layer that is moved", () => {
  const { layers } = soilWith(1.62, 0.4);
  const dense = { caseIndex: 0, index: 1 };
  const after = (scenario: Json, topIn: number) =>
    (movedTo(scenario, layers, dense, topIn * inch, "us") ?? []).reduce(
      (next, [path, value]) => setAt(next, path, value!),
      scenario,
    );

  test.each([3, 8, 20])("to %d in is as thick as before, told by bottoms", (topIn) => {
    const scenario = {
      soil: {
        layers: [{ name: "topsoil", bottom: "6 in" }, { name: "pan", bottom: "10 in" }, { bottom: "40 in" }],
      },
    };
    const moved = after(scenario, topIn);
    expect(getAt(moved, "soil.layers[0].bottom")).toBe(`${topIn} in`);
    expect(getAt(moved, "soil.layers[1].bottom")).toBe(`${topIn + 4} in`);
    expect(getAt(moved, "soil.layers[2].bottom")).toBe("40 in");
  });
  test.each([3, 8, 20])("to %d in is as thick as before, told by thicknesses", (topIn) => {
    const scenario = {
      soil: {
        layers: [
          { name: "topsoil", thickness: "6 in" },
          { name: "pan", thickness: "4 in" },
          { name: "subsoil", thickness: "30 in" },
        ],
      },
    };
    const moved = after(scenario, topIn);
    expect([0, 1, 2].map((i) => getAt(moved, `soil.layers[${i}].thickness`))).toEqual([
      `${topIn} in`,
      "4 in",
      `${36 - topIn} in`,
    ]);
  });
  test("stays between its neighbours, and goes nowhere without them", () => {
    expect(topRange(layers, 1, "us")).toEqual({ fromMm: 0.5 * inch, toMm: 35.5 * inch });
    expect(topRange(layers, 0, "us")).toBeNull();
    expect(topRange(layers, 2, "us")).toBeNull();
    expect(movedTo({ soil: { horizons: {} } }, layers, dense, 200, "us")).toBeNull();
  });
});

describe("what the lesson asks", () => {
  const base = {
    ...soilWith(1.36, 1),
    rooting: { kind: "grown" },
    ground: { residueCoverCrop: 0.4 },
    startingWater: { kind: "share", share: 0.5 },
    crop: { name: "sorghum" },
    fallowDays: 0,
  } as unknown as NonNullable<Parameters<typeof subjectOf>[0]>;
  const other = (change: object) => ({ ...base, ...change }) as unknown as typeof base;
  const deeper = { rooting: { kind: "relative", extraMm: 50 } };
  const bare = { ground: { residueCoverCrop: 0.05 } };
  const coarser = { layers: base.layers.map((one) => ({ ...one, sandFraction: 0.6 })) };

  test.each([
    ["density", soilWith(1.62, 0.4)],
    ["depth", deeper],
    ["surface", bare],
    ["water", { startingWater: { kind: "share", share: 0.2 } }],
    ["else", { crop: { name: "sunflower" } }],
    ["else", coarser],
    ["else", { ...deeper, ...bare }],
    ["else", {}],
  ] as const)("is of %s where that sets the cases apart", (subject, change) =>
    expect(subjectOf(base, other(change))).toBe(subject),
  );
  test("is of density still where only the curve numbers follow from it", () =>
    expect(
      subjectOf(
        base,
        other({ ...soilWith(1.7, 0.2), ground: { residueCoverCrop: 0.4, curveNumberCrop: 80 } }),
      ),
    ).toBe("density"));
  test("is of density still where the water told by layer follows from it", () => {
    const byLayer = (volumeFraction: readonly number[]) => ({
      startingWater: { kind: "by layer", volumeFraction },
    });
    expect(
      subjectOf(
        other(byLayer([0.2, 0.2, 0.2])),
        other({ ...soilWith(1.62, 0.4), ...byLayer([0.2, 0.18, 0.2]) }),
      ),
    ).toBe("density");
  });
  test("is how deep roots get where there is one case", () => expect(subjectOf(base, undefined)).toBe("one"));
  test("is never what lies below the last layer, nor of a layer where none sets them apart", () => {
    const asked = (subject: Parameters<typeof questionsFor>[0], isLast: boolean) =>
      questionsFor(subject, { name: "pan", isLast }).join(" ");
    expect(asked("density", false)).toContain("below “pan”");
    expect(asked("density", true)).not.toContain("pan");
    for (const subject of ["one", "depth", "surface", "water", "else"] as const) {
      expect(asked(subject, false)).not.toContain("pan");
      expect(questionsFor(subject, null)).toHaveLength(3);
    }
  });
});

describe("rain that is slid", () => {
  const weather = (rainTotalsMm: readonly number[], rainTotalOver: "year" | "season" = "year") =>
    ({ pattern: false, weather: { rainTotalsMm, rainTotalOver } }) as unknown as Parameters<
      typeof rainSlid
    >[0];
  const told = (rainTotalMm: number | null) =>
    ({
      rainTotalMm,
      annualRainMm: { p10: 250, p50: 361, p90: 500 },
      cases: [{ seasonRainMm: 201 }],
    }) as unknown as Parameters<typeof rainSlid>[1];

  const slid = (
    totals: readonly number[],
    total: number | null,
    units: "us" | "metric",
    over: "year" | "season" = "year",
  ) => rainSlid(weather(totals, over), told(total), ownRain(weather(totals, over), told(total)), units);

  test("is the total asked for, of the year or of the season", () => {
    expect(slid([330.2], 330.2, "us")).toMatchObject({
      path: "weather.annualRain",
      value: 13,
      from: 8,
      to: 20,
      isAsItCame: false,
    });
    expect(slid([200], 200, "metric", "season")).toMatchObject({
      path: "weather.seasonRain",
      value: 200,
      step: 5,
    });
  });
  test("stands at the middle year where rain is as it came", () =>
    expect(slid([], null, "us")).toMatchObject({ value: 14.2, from: 7.4, to: 24.6, isAsItCame: true }));
  test("has room for a total beyond the usual", () =>
    expect(slid([762], 762, "us")).toMatchObject({ value: 30, to: 37.5 }));
  test("keeps its scale while it is slid", () =>
    expect(
      rainSlid(weather([457.2]), told(457.2), ownRain(weather([330.2]), told(330.2)), "us"),
    ).toMatchObject({ value: 18, to: 20 }));
  test.each([
    [13, "us", "13.0 in"],
    [335, "metric", "335 mm"],
  ] as const)("%d is written %s as %s", (value, units, text) => expect(sayRain(value, units)).toBe(text));
});

describe("a guess", () => {
  const shown = shownIn("us");
  const truth = {
    water: { p10: 0.1 * inch, p50: 0.3 * inch, p90: 0.7 * inch },
    ruleOfThumbMm: 1.2 * inch,
    runs: 200,
  };
  const said = (inches: number, how = truth) =>
    guessSaid(inches * inch, how, shown.fineWater, shown).join(" ");

  test.each([
    [0.3, /as good as a typical year itself/],
    [0.5, /0\.20 in above .* within the range/],
    [0.15, /0\.15 in below .* within the range/],
    [0.9, /0\.60 in above .* fewer than one year in ten/],
    [0, /0\.30 in below .* nine years in ten or more bring more/],
    [1.25, /close to the rule of thumb/],
  ])("of %d in is told how close it came", (inches, words) => expect(said(inches)).toMatch(words));
  test("is not set against a range where there is one run only", () =>
    expect(said(0.6, { ...truth, runs: 1 })).toBe("The guess lies 0.30 in above the one season run."));
  test.each([
    [0.6, "0.60 in more"],
    [-0.25, "0.25 in less"],
    [0.001, "no difference"],
  ])("of %d in is said as %s", (inches, words) =>
    expect(saidMore(inches * inch, shown.fineWater, shown.length)).toBe(words),
  );
});

describe("words on two root systems", () => {
  const name = "two and a half inches deeper than they grow beside it";
  test.each([1920, 828, 390, 320])("at %d px have a name whole, above the sky", (width) => {
    const { names, namesPx, nameSizePx, skyPx, panels } = twoRootsLayout(width, 450, ["as they grow", name]);
    expect(names[1]!.join(" ")).toBe(name);
    expect(namesPx).toBeGreaterThanOrEqual(names[1]!.length * nameSizePx);
    expect(skyPx).toBeGreaterThan(namesPx + 45);
    expect(panels[0]!.height).toBeGreaterThan(200);
  });
  test("say that a name has more than there is room for", () =>
    expect(twoRootsLayout(390, 450, [`${name} `.repeat(6).trim(), name]).names[0]!.at(-1)).toMatch(/…$/));
  test("grow with the drawing", () => {
    expect(twoRootsLayout(828, 450, ["a", "b"]).sizePx).toBeCloseTo(17, 0);
    expect(twoRootsLayout(1200, 735, ["a", "b"]).sizePx).toBeGreaterThan(23);
  });
  test("are no smaller than asked for, and leave the soil its room", () => {
    for (const [width, height, least] of [
      [1350, 790, 38.9],
      [880, 520, 25.9],
      [704, 570, 27.6],
    ] as const) {
      const layout = twoRootsLayout(width, height, ["over the pan", "pan loosened"], least);
      for (const px of [layout.sizePx, layout.slipSizePx, layout.numberSizePx, layout.nameSizePx])
        expect(px).toBeGreaterThanOrEqual(least);
      const [one, two] = layout.panels;
      expect(one!.width).toBeGreaterThan(5.5 * least);
      expect(layout.gutters[0]!.x + layout.gutters[0]!.width).toBeCloseTo(one!.x, 6);
      expect(layout.gutters[1]!.x).toBeCloseTo(two!.x + two!.width, 6);
    }
  });
  test("put a front's number under its line, over it at the end of the soil", () => {
    const soil = { x: 0, y: 100, width: 200, height: 300 };
    expect(numberTop(200, 20, soil)).toBe(205);
    expect(numberTop(395, 20, soil)).toBe(370);
  });
  test("say what a layer is and does, in lines that fit", () => {
    const pan = { name: "plough pan", bulkDensityKgPerM3: 1800 };
    const said = (isSlow: boolean, showsDensity: boolean, letters: number) =>
      layerSaid(pan, { isSlow, showsDensity }, letters * 5.7, 10);
    expect(said(true, true, 12)).toEqual(["plough pan", "1.80 g/cm³", "slows roots"]);
    expect(said(true, true, 7)).toEqual(["plough", "pan", "1.80", "g/cm³", "slows", "roots"]);
    expect(said(false, false, 12)).toEqual(["plough pan"]);
  });
});

describe("the soil between both fronts", () => {
  const one = (frontMm: readonly number[], transpirationMm: readonly number[]) => ({
    startsAt: 0,
    sowingDay: 0,
    maturityDay: 3,
    days: 4,
    frontMm: Float32Array.from(frontMm),
    transpirationMm: Float32Array.from(transpirationMm),
  });
  const season = {
    cases: [one([50, 100, 150, 200], [1, 1, 1, 1]), one([50, 110, 180, 260], [1, 1, 2, 4])],
  } as unknown as Parameters<typeof stripOn>[0];

  test("is that which only the deeper roots reach, and what their crop took up more until then", () => {
    expect(stripOn(season, [0, 1], 0)).toBeNull();
    expect(stripOn(season, [0, 1], 2)).toEqual({ deeper: 1, topMm: 150, bottomMm: 180, moreWaterMm: 1 });
    expect(stripOn(season, [0, 1], 3)).toEqual({ deeper: 1, topMm: 200, bottomMm: 260, moreWaterMm: 4 });
    expect(stripOn(season, [1, 0], 3)).toEqual({ deeper: 1, topMm: 200, bottomMm: 260, moreWaterMm: 4 });
    expect(stripOn(season, [0], 3)).toBeNull();
  });
});

describe("a root system", () => {
  const room = { width: 300, height: 400, crown: 180 };
  const open = rootSystemOf(room, () => 1);
  const overPan = rootSystemOf(room, (px) => (px > 60 && px < 100 ? 0.2 : 1));
  const points = (strokes: Strokes, frontPx: number) =>
    [...strokesTo(strokes, frontPx).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    );

  test("is drawn alike every time", () => expect(rootSystemOf(room, () => 1)).toEqual(open));
  test("is not there before the front is, and never below it", () => {
    for (const system of [open, overPan]) {
      expect(system.map((strokes) => strokesTo(strokes, -1))).toEqual(["", "", "", ""]);
      for (const front of [20, 75, 150, 333])
        for (const strokes of system)
          for (const [, y] of points(strokes, front)) expect(y).toBeLessThanOrEqual(front + 0.11);
    }
  });
  test("only grows, and its tip is at the front", () => {
    for (const system of [open, overPan]) {
      for (const strokes of system)
        expect(strokesTo(strokes, 300).startsWith(strokesTo(strokes, 200))).toBe(true);
      const deepest = Math.max(...points(system[1], 300).map(([, y]) => y));
      expect(300 - deepest).toBeLessThan(5.1);
    }
  });
  test("runs sideways on a dense layer, and fewer roots come out below it", () => {
    const crossing = (strokes: Strokes) => points(strokes, 400).filter(([, y]) => y > 103 && y < 108).length;
    const onTop = (strokes: Strokes) => points(strokes, 400).filter(([, y]) => y > 59 && y < 67).length;
    expect(crossing(overPan[1])).toBeLessThan(crossing(open[1]));
    expect(onTop(overPan[1])).toBeGreaterThan(2 * onTop(open[1]));
    for (const strokes of overPan)
      for (const [x] of points(strokes, 400)) expect(x > -25 && x < 325).toBe(true);
  });
});
