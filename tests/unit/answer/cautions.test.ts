import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../../src/answer/comparison/compare.ts";
import { runEnsemble } from "../../../src/answer/runs/ensemble.ts";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { resolveLayer } from "../../../src/soil/layers/resolveLayer.ts";
import type { Scenario } from "../../../src/scenario/scenario.ts";
import { asDug, someRecord, someScenario } from "./someScenario.ts";

const cautionsOf = (change: Partial<Scenario>) =>
  comparisonOf(runEnsemble(someScenario(change)), "us").cautions.join("\n");
const { ensemble, site, weather, yieldLine } = someScenario();
const measured = asDug.layers.map(({ wiltingPoint }) => wiltingPoint + 0.08);
const unhindered = asDug.layers.map((layer) => ({
  ...layer,
  hindrance: { ...layer.hindrance, strict: 1, usual: 1, lenient: 1 },
}));

const stated = (depthMm: number) => ({ ...asDug, rooting: { kind: "absolute", depthMm } }) as const;

/** Only the last 100 mm are dense. */
const deepest = { ...asDug.layers[1]!, name: "deep pan", topMm: 2500, bottomMm: 2600 };
const denseOnlyBelow = [...unhindered.slice(0, 2), { ...unhindered[2]!, bottomMm: 2500 }, deepest];

/** A foot of loose soil, then a dense subsoil of which nothing more is said. */
const denseSubsoil = [
  { ...unhindered[0]!, bottomMm: 310 },
  resolveLayer(
    { name: "subsoil", topMm: 310, bottomMm: 2600, texture: "silt loam", bulkDensityKgPerM3: 1620 },
    "soil.layers[1]",
  ).layer,
];

const sownLate = (crop: CropPlan) => ({ ...asDug, crop: { ...crop, sowing: { month: 8, day: 10 } } });
const earlyOf = (crop: CropPlan): CropPlan => {
  const [a, b, c, d] = crop.stageDaysFallback.map((days) => Math.floor(0.9 * days)) as [
    number,
    number,
    number,
    number,
  ];
  return { ...crop, stageDaysFallback: [a, b, c, d] };
};

/** what is said, a scenario that calls for it, one that does not */
const cases: readonly (readonly [string, string | RegExp, Partial<Scenario>, Partial<Scenario>])[] = [
  ["invented data", "are invented", { invented: true }, { invented: false }],
  [
    "a subsoil assumed, which sends to the field",
    "probe or core the subsoil",
    {},
    { cases: [{ ...asDug, startingWater: { kind: "by layer", volumeFraction: measured } }] },
  ],
  [
    "digging, only where it shows up",
    "have buried lines located",
    {},
    { cases: [{ ...asDug, startingWater: { kind: "by layer", volumeFraction: measured } }] },
  ],
  [
    "the reading of density as a range",
    "span a strict to a lenient",
    {},
    { cases: [{ ...asDug, layers: unhindered }] },
  ],
  [
    "one reading of density",
    "the strict reading alone",
    { ensemble: { ...ensemble, densityReading: "strict" } },
    { ensemble: { ...ensemble, densityReading: "range" } },
  ],
  [
    "one season only",
    "holds one season only",
    { weather: { ...weather, source: { kind: "record", record: someRecord(1), normals: null } } },
    { weather: { ...weather, source: { kind: "record", record: someRecord(12), normals: null } } },
  ],
  [
    "few seasons",
    "holds 3 seasons only",
    { weather: { ...weather, source: { kind: "record", record: someRecord(3), normals: null } } },
    { weather: { ...weather, source: { kind: "record", record: someRecord(12), normals: null } } },
  ],
  [
    "roots at the end of the soil described",
    'The roots of "deep" came to the bottom of the soil described',
    { cases: [asDug, { ...asDug, name: "deep", rooting: { kind: "relative", extraMm: 5000 } }] },
    { cases: [asDug, { ...asDug, name: "deep", rooting: { kind: "absolute", depthMm: 2600 } }] },
  ],
  [
    "roots at the rock stated",
    'The roots of "deep" came to the rock stated',
    {
      cases: [
        asDug,
        { ...asDug, name: "deep", endsOn: "rock", rooting: { kind: "relative", extraMm: 5000 } },
      ],
    },
    { cases: [asDug, { ...asDug, name: "deep", rooting: { kind: "relative", extraMm: 5000 } }] },
  ],
  [
    "no roots left",
    'No roots are left below the seed of "none"',
    { cases: [asDug, { ...asDug, name: "none", rooting: { kind: "relative", extraMm: -5000 } }] },
    { cases: [asDug, { ...asDug, name: "none", rooting: { kind: "relative", extraMm: -50 } }] },
  ],
  [
    "a built-in pattern far from its latitude",
    "The field lies at 45 N, but the built-in rain pattern has the temperatures of an invented place at 39 N",
    {
      site: { ...site, latitudeDeg: 45 },
      weather: { ...weather, source: { ...weather.source, ofPattern: true } as typeof weather.source },
    },
    {
      site: { ...site, latitudeDeg: 42 },
      weather: { ...weather, source: { ...weather.source, ofPattern: true } as typeof weather.source },
    },
  ],
  [
    "unripe, of a medium type",
    "sow earlier, or choose an earlier maturity",
    { cases: [sownLate(asDug.crop)] },
    { cases: [sownLate(earlyOf(asDug.crop))] },
  ],
  [
    "unripe, of an early type, which has no earlier one",
    /ran out of time before it was ripe, .*: it is an early type already, so sow earlier/,
    { cases: [sownLate(earlyOf(asDug.crop))] },
    { cases: [sownLate(asDug.crop)] },
  ],
  [
    "a typical year at the line's cap",
    /In a typical year .*"as dug".* at the line's cap, \d+ bu\/ac: more water adds no yield/,
    { yieldLine: { ...yieldLine, capKgPerHa: 100 } },
    { yieldLine: { ...yieldLine, capKgPerHa: 100_000 } },
  ],
  ["few runs", "12 runs only", {}, { ensemble: { ...ensemble, years: 20 } }],
  ["one run", "One run only", { ensemble: { ...ensemble, years: 1 } }, {}],
  [
    "a dense layer that stands in the way, not one that roots never reach",
    "slows roots is not well known",
    { cases: [asDug] },
    { cases: [{ ...asDug, layers: denseOnlyBelow }] },
  ],
  [
    "a dense layer taken for a pan, not one that is said to be one",
    '"pan" is taken to be a pan, in which 20 % of the roots find cracks',
    {},
    { cases: [{ ...asDug, layers: asDug.layers.map((layer) => ({ ...layer, originAssumed: false })) }] },
  ],
  [
    "a dense subsoil taken as natural",
    '"subsoil" is taken to be natural dense soil, in which 50 % of the roots find cracks',
    { cases: [{ ...asDug, layers: denseSubsoil }] },
    {},
  ],
  [
    "most of the extra water after flowering, and of which case",
    'the extra water of "two inches deeper" was taken up after flowering',
    {},
    { cases: [asDug, { ...asDug, name: "shallow", rooting: { kind: "relative", extraMm: -200 } }] },
  ],
  [
    "a stated depth not reached, with the depth reached",
    /The roots of "as dug" ended above the 98\.4 in \(2500 mm\) stated for them in every season, in a typical year at 8\d\.\d in \(2[01]\d\d mm\): dry soil/,
    { cases: [{ ...asDug, rooting: { kind: "absolute", depthMm: 2500 } }] },
    { cases: [{ ...asDug, rooting: { kind: "absolute", depthMm: 100 } }] },
  ],
  [
    "the same of a later case",
    'The roots of "deeper" ended above the 98.4 in (2500 mm) stated for them in every season',
    { cases: [asDug, { ...asDug, name: "deeper", rooting: { kind: "absolute", depthMm: 2500 } }] },
    { cases: [asDug, { ...asDug, name: "deeper", rooting: { kind: "relative", extraMm: 300 } }] },
  ],
  [
    "a depth told against a stated one, not reached",
    'The roots of "deeper" ended above the 98.4 in (2500 mm) stated for them in every season',
    { cases: [stated(300), { ...asDug, name: "deeper", rooting: { kind: "relative", extraMm: 2200 } }] },
    { cases: [stated(300), { ...asDug, name: "deeper", rooting: { kind: "relative", extraMm: 100 } }] },
  ],
  [
    "a stated depth not reached in some seasons only, the middle one not among them",
    /The roots of "as dug" ended above the 84.6 in \(2150 mm\) stated for them in [1-4]\d % of the seasons: dry soil/,
    { cases: [stated(2150)] },
    { cases: [stated(300)] },
  ],
  [
    "water use below the line's threshold",
    "needs before the first grain",
    { yieldLine: { ...yieldLine, thresholdMm: 900 } },
    { yieldLine: { ...yieldLine, thresholdMm: 50 } },
  ],
  [
    "a crop starved around flowering",
    'the crop of "as dug" met a quarter or less of its demand in the six weeks around flowering',
    { cases: [{ ...asDug, startingWater: { kind: "share", share: 0.1 } }] },
    { cases: [{ ...asDug, startingWater: { kind: "share", share: 1 } }] },
  ],
];

describe("said where the result calls for it, and only there", () => {
  test.each(cases)("%s", (_, words, calls, not) => {
    expect(cautionsOf(calls)).toMatch(words);
    expect(cautionsOf(not)).not.toMatch(words);
  });
});

test.each([
  "One-dimensional",
  "not a basis for insurance or credit",
  "licensed local adviser",
  "straight line",
  "southern and central Great Plains",
])("always: %s", (words) => expect(cautionsOf({})).toContain(words));

test("comparing crops is not spoken of where none are compared", () =>
  expect(cautionsOf({})).not.toMatch(/two crops/i));
