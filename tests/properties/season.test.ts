import fc from "fast-check";
import { expect, test } from "vitest";
import { mayDrainAnywhere, soakAndDrain, type SoakResult } from "../../src/season/drainage.ts";
import { makeLedger } from "../../src/season/ledger.ts";
import { advancedFront, sliceAt } from "../../src/season/rootFront.ts";
import type { Ground, Ledger, Rooting, SeasonInput, UptakeRule } from "../../src/season/season.ts";
import { makeWorkspace, simulate } from "../../src/season/simulate.ts";
import { makeRootSupply, setRootSupply, takeBySlice } from "../../src/season/uptake.ts";
import type { Slices } from "../../src/soil/layers/layer.ts";
import { casesOf } from "../support/laws.ts";
import { column, testCourse, testInput, type TestLayer, testUptake, testWeather } from "../support/column.ts";

// Even steps: fc.double draws mostly numbers next to 0.
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((step) => min + ((max - min) * step) / 1_000_000);
const unit = between(0, 1);

const anyLayer: fc.Arbitrary<TestLayer> = fc
  .record({
    thicknessMm: between(5, 700),
    wiltingPoint: between(0.02, 0.3),
    available: between(0.02, 0.2),
    drainable: between(0.02, 0.2),
    conductivityMmPerDay: between(0.5, 4000),
    drainExponent: between(5, 35),
    passage: unit,
  })
  .map(({ available, drainable, ...layer }) => ({
    ...layer,
    fieldCapacity: layer.wiltingPoint + available,
    saturation: layer.wiltingPoint + available + drainable,
  }));

const anySlices = fc
  .record({ layers: fc.array(anyLayer, { minLength: 1, maxLength: 6 }), sliceMm: between(5, 25) })
  .map(({ layers, sliceMm }) => column(layers, sliceMm));

const anyGround: fc.Arbitrary<Ground> = fc.record({
  curveNumberFallow: between(30, 100),
  curveNumberCrop: between(30, 100),
  curveNumberBareFallow: between(30, 100),
  residueCoverFallow: unit,
  residueCoverCrop: fc.oneof(unit, fc.constant(null)),
  residueDecays: fc.boolean(),
  snowCatchByCover: unit,
  snowCatchBareShare: unit,
  snowBelowC: between(-2, 3),
  meltMmPerCDay: between(1, 8),
  evaporatingDepthMm: between(50, 150),
  readilyEvaporableMm: between(0, 15),
  secondStageMmPerRootDay: between(1, 8),
});

const anyRooting: fc.Arbitrary<Rooting> = fc.oneof(
  fc.constant<Rooting>({ kind: "grown" }),
  between(0, 3000).map((depthMm) => ({ kind: "stops", depthMm }) as const),
  fc.record({ deepestMm: between(0, 2500), factor: between(0, 2) }).map(({ deepestMm, factor }) => ({
    kind: "stretched" as const,
    frontMmByDay: Float64Array.from({ length: 220 }, (_, d) => deepestMm * Math.min(1, d / 150)),
    factor,
  })),
);

/** Any soil under any weather: dry to drowned, frost to heat, fallow or none. */
const anyRun: fc.Arbitrary<SeasonInput> = fc
  .record({
    slices: anySlices,
    ground: anyGround,
    rooting: anyRooting,
    days: fc.integer({ min: 2, max: 220 }),
    fallowShare: between(0, 0.9),
    startShare: unit,
    rain: fc.array(
      fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: between(0, 120) }),
      {
        minLength: 20,
        maxLength: 20,
      },
    ),
    et0: between(0, 12),
    meanC: between(-15, 30),
    rule: fc.constantFrom("by slice" as const, "root-zone average" as const),
    sharePerDay: between(0.01, 0.5),
    denseRootsMm: between(0, 1500),
    halvingMm: between(100, 3000),
    evaporation: fc.constantFrom("two-stage" as const, "dual coefficient" as const),
  })
  .map((a) =>
    testInput({
      slices: a.slices,
      ground: a.ground,
      rooting: a.rooting,
      evaporation: a.evaporation,
      startWaterMm: a.slices.wiltingPointMm.map(
        (wp, j) => wp + a.startShare * (a.slices.saturationMm[j]! - wp),
      ),
      weather: testWeather(a.days, (d) => ({
        rainMm: a.rain[d % a.rain.length]!,
        et0Mm: a.et0,
        meanC: a.meanC + 8 * Math.sin(d / 9),
      })),
      course: testCourse(a.days, Math.floor(a.days * a.fallowShare)),
      uptake: {
        rule: a.rule,
        sharePerDay: a.sharePerDay,
        denseRootsMm: a.denseRootsMm,
        halvingMm: a.halvingMm,
        depletionFraction: 0.55,
      },
    }),
  );

function run(input: SeasonInput): { ledger: Ledger; totals: ReturnType<typeof simulate> } {
  const ledger = makeLedger(input.course.maturityDay + 1, input.slices.count);
  const totals = simulate(input, ledger, makeWorkspace(input.slices.count));
  return { ledger, totals };
}

/** A plain throw: an `expect` for each of a million numbers would take minutes. */
function expectNothing(what: string, mm: number, day: number): void {
  if (!(Math.abs(mm) < 1e-9)) throw new Error(`${what}: ${mm} mm over on day ${day}`);
}

const wholeRuns = casesOf({ whole: 1000, usually: 300 });

test(`water is neither made nor lost: the ledger closes to 1e-9 mm on every day of ${wholeRuns} random runs`, () => {
  fc.assert(
    fc.property(anyRun, (input) => {
      const { ledger, totals } = run(input);
      for (let d = 0; d <= input.course.maturityDay; d++) {
        expectNothing("residual", ledger.residualMm[d]!, d);
        // What rests in the soil is not summed anew each day: here it is.
        const { count } = input.slices;
        const evening = ledger.waterMmByDayAndSlice!.subarray(d * count, (d + 1) * count);
        expectNothing("storage", evening.reduce((s, x) => s + x, 0) - ledger.storageMm[d]!, d);
        const reaching = ledger.rainMm[d]! + ledger.meltMm[d]!;
        // Infiltration is measured in the soil, so this can fail.
        expectNothing("infiltration", reaching - ledger.runoffMm[d]! - ledger.infiltrationMm[d]!, d);
        const lain = ledger.snowOnGroundMm[d]! - (d > 0 ? ledger.snowOnGroundMm[d - 1]! : 0);
        const snow = ledger.snowfallMm[d]! + ledger.snowCaughtMm[d]! - ledger.meltMm[d]!;
        expectNothing("snow", lain - snow, d);
      }
      expect(totals.balanceErrorMm).toBeLessThan(1e-9);
      // The residual compares storage with the day's own fluxes; over the run they must add up too.
      const days = input.course.maturityDay + 1;
      const sum = (a: Float64Array) => a.subarray(0, days).reduce((s, x) => s + x, 0);
      const start = input.startWaterMm.reduce((s, x) => s + x, 0);
      const change = ledger.storageMm[days - 1]! - start;
      const net =
        sum(ledger.infiltrationMm) -
        sum(ledger.evaporationMm) -
        sum(ledger.transpirationMm) -
        sum(ledger.drainageMm);
      expect(Math.abs(change - net)).toBeLessThan(1e-6);
    }),
    { numRuns: wholeRuns, seed: 20260 },
  );
});

test("storage stays between half the wilting point and saturation, the front never rises, and no number is lost", () => {
  fc.assert(
    fc.property(anyRun, (input) => {
      const { ledger, totals } = run(input);
      const { count, wiltingPointMm, saturationMm } = input.slices;
      let front = 0;
      for (let d = 0; d <= input.course.maturityDay; d++) {
        for (let j = 0; j < count; j++) {
          const water = ledger.waterMmByDayAndSlice![d * count + j]!;
          if (!(water >= 0.5 * wiltingPointMm[j]! - 1e-9)) throw new Error(`slice ${j} dries to ${water} mm`);
          if (!(water <= saturationMm[j]! + 1e-9)) throw new Error(`slice ${j} holds ${water} mm`);
        }
        if (!(ledger.frontMm[d]! >= front)) throw new Error(`the front rises to ${ledger.frontMm[d]} mm`);
        front = ledger.frontMm[d]!;
      }
      for (const [name, values] of Object.entries({ ...ledger, ...totals })) {
        if (values === null) continue;
        for (const v of typeof values === "number" ? [values] : (values as Float64Array)) {
          if (!Number.isFinite(v)) throw new Error(`${name} holds ${v}`);
          if (v < -1e-9 && name !== "residualMm" && name !== "fallowGainMm")
            throw new Error(`${name} is ${v}`);
        }
      }
    }),
    { numRuns: wholeRuns, seed: 20261 },
  );
});

const anyWater = (slices: Slices) =>
  fc
    .array(unit, { minLength: slices.count, maxLength: slices.count })
    .map((shares) =>
      Float64Array.from(
        shares,
        (s, j) => slices.wiltingPointMm[j]! + s * (slices.saturationMm[j]! - slices.wiltingPointMm[j]!),
      ),
    );

/** Roots dense down to anywhere, thinning out beneath, steeply or hardly. */
const anyUptake: fc.Arbitrary<UptakeRule> = fc
  .record({ sharePerDay: between(0.01, 0.5), denseRootsMm: between(0, 1500), halvingMm: between(50, 5000) })
  .map((drawn) => ({ ...testUptake, ...drawn }));

test("over the same soil water a deeper front never lowers the day's uptake", () => {
  fc.assert(
    fc.property(
      anySlices.chain((slices) => fc.tuple(fc.constant(slices), anyWater(slices))),
      between(0, 3000),
      between(0, 500),
      between(0, 15),
      anyUptake,
      fc.nat({ max: 8 }),
      unit,
      ([slices, water], front, deeper, demand, uptake, evaporating, wetter) => {
        const scratch = new Float64Array(slices.count);
        const supply = makeRootSupply(slices.count);
        setRootSupply(supply, slices, Math.min(evaporating, slices.count), uptake);
        // Beneath the front its slice may be wetter than its mean: roots have dried the part above.
        const holder = sliceAt(front, slices);
        const beneathMm = water[holder]! + wetter * (slices.saturationMm[holder]! - water[holder]!);
        const take = (depth: number) => {
          const slice = sliceAt(depth, slices);
          const rooted = { frontMm: depth, beneathMm: slice === holder ? beneathMm : water[slice]! };
          return takeBySlice(demand, rooted, supply, slices, water.slice(), scratch);
        };
        const shallow = take(front);
        const deep = take(front + deeper);
        expect(deep).toBeGreaterThanOrEqual(shallow - 1e-12);
      },
    ),
    { numRuns: 1000, seed: 20262 },
  );
});

test("over the same soil water, uptake that falls off less with depth never lowers the day's uptake", () => {
  fc.assert(
    fc.property(
      anySlices.chain((slices) => fc.tuple(fc.constant(slices), anyWater(slices))),
      between(0, 3000),
      between(0, 15),
      anyUptake,
      fc.nat({ max: 8 }),
      between(0, 3000),
      between(0, 800),
      ([slices, water], frontMm, demand, uptake, evaporating, halvingMore, denseMore) => {
        const take = (rule: UptakeRule) => {
          const supply = makeRootSupply(slices.count);
          setRootSupply(supply, slices, Math.min(evaporating, slices.count), rule);
          const rooted = { frontMm, beneathMm: water[sliceAt(frontMm, slices)]! };
          const scratch = new Float64Array(slices.count);
          return takeBySlice(demand, rooted, supply, slices, water.slice(), scratch);
        };
        const steep = take(uptake);
        const slower = { ...uptake, halvingMm: uptake.halvingMm + halvingMore };
        expect(take(slower)).toBeGreaterThanOrEqual(steep - 1e-12);
        expect(take({ ...uptake, denseRootsMm: uptake.denseRootsMm + denseMore })).toBeGreaterThanOrEqual(
          steep - 1e-12,
        );
      },
    ),
    { numRuns: 1000, seed: 20266 },
  );
});

test("over the same soil water, less passage in any layer never deepens the front", () => {
  fc.assert(
    fc.property(
      anySlices.chain((slices) =>
        fc.tuple(fc.constant(slices), anyWater(slices), fc.nat({ max: slices.count - 1 })),
      ),
      between(0, 2000),
      between(0, 60),
      unit,
      ([slices, water, j], front, descent, less) => {
        const layer = slices.layer[j]!;
        const denser: Slices = {
          ...slices,
          passage: slices.passage.map((p, k) => (slices.layer[k] === layer ? p * less : p)),
        };
        const free = advancedFront(
          front,
          descent,
          Infinity,
          slices,
          water,
          water[sliceAt(front, slices)]!,
          0,
          0,
        );
        const held = advancedFront(
          front,
          descent,
          Infinity,
          denser,
          water,
          water[sliceAt(front, slices)]!,
          0,
          0,
        );
        expect(held).toBeLessThanOrEqual(free + 1e-9);
        expect(held).toBeGreaterThanOrEqual(front);
      },
    ),
    { numRuns: 1000, seed: 20263 },
  );
});

test("the day's budget is spent slice by slice: cutting slices finer changes the front by rounding only", () => {
  fc.assert(
    fc.property(
      fc.array(anyLayer, { minLength: 1, maxLength: 5 }),
      between(0, 400),
      between(0, 200),
      (layers, front, descent) => {
        const coarse = column(layers, 25);
        const fine = column(layers, 12.5);
        const at = (s: Slices) => s.wiltingPointMm.map((wp, j) => wp + 0.3 * (s.fieldCapacityMm[j]! - wp));
        const after = (slices: Slices) => {
          const water = at(slices);
          return advancedFront(front, descent, Infinity, slices, water, water[sliceAt(front, slices)]!, 0, 0);
        };
        const a = after(coarse);
        const b = after(fine);
        expect(Math.abs(a - b)).toBeLessThan(1e-6);
      },
    ),
    { numRuns: 300, seed: 20264 },
  );
});

test("keeping in mind which slices may still drain changes nothing, to the last bit, and leaves none out", () => {
  const oneDay = fc.record({
    inflow: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: between(0, 150) }),
    /** Roots and sun. */
    takenShare: between(0, 0.1),
  });
  fc.assert(
    fc.property(
      anySlices.chain((slices) => fc.tuple(fc.constant(slices), anyWater(slices))),
      fc.array(oneDay, { minLength: 5, maxLength: 30 }),
      ([slices, start], days) => {
        const { count, fieldCapacityMm: floor } = slices;
        const [kept, anew] = [start.slice(), start.slice()];
        const [a, b] = [0, 1].map(() => ({ refusedMm: 0, deepDrainageMm: 0 })) as [SoakResult, SoakResult];
        const draining = mayDrainAnywhere(count);
        for (const { inflow, takenShare } of days) {
          soakAndDrain(kept, inflow, slices, draining, a);
          soakAndDrain(anew, inflow, slices, mayDrainAnywhere(count), b);
          expect(a).toEqual(b);
          for (let j = 0; j < count; j++) {
            if (!Object.is(kept[j], anew[j])) throw new Error(`slice ${j}: ${kept[j]} and ${anew[j]} mm`);
            if (kept[j]! > floor[j]! && (j < draining.from || j > draining.to))
              throw new Error(`slice ${j} drains outside ${draining.from} to ${draining.to}`);
            kept[j] = anew[j] = kept[j]! * (1 - takenShare);
          }
        }
      },
    ),
    { numRuns: wholeRuns, seed: 20265 },
  );
});
