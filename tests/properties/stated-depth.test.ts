import fc from "fast-check";
import { expect, test } from "vitest";
import { emptyEnsemble, runEnsemble, runInto } from "../../src/answer/runs/ensemble.ts";
import { prepare } from "../../src/answer/runs/prepare.ts";
import { readyRun } from "../../src/answer/runs/readyRun.ts";
import type { CaseRuns, EnsembleAtRain } from "../../src/answer/runs/ensemble.ts";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import { makeRunBuffers } from "../../src/answer/runs/run.ts";
import { InputError } from "../../src/problem.ts";
import { resolved } from "../support/demos.ts";
import { casesOf } from "../support/laws.ts";

const runsOf = {
  equal: casesOf({ whole: 150, usually: 50 }),
  later: casesOf({ whole: 100, usually: 30 }),
  dug: casesOf({ whole: 40, usually: 24 }),
  stated: casesOf({ whole: 60, usually: 20 }),
};

/** Laws of what is stated of the roots, over random scenarios as a file would hold them. Invented fields. */

const inches = (min: number, max: number) => fc.integer({ min, max }).map((depth) => `${depth} in`);
const textures = ["sandy loam", "loam", "silt loam", "clay loam", "silty clay", "clay"] as const;

/** What holds roots back in a layer, or nothing. */
const anyHindrance = fc.oneof(
  fc.constant({}),
  fc.integer({ min: 120, max: 175 }).map((density) => ({ bulkDensity: density / 100 })),
  fc.integer({ min: 50, max: 700 }).map((psi) => ({ penetrationResistance: `${psi} psi` })),
  fc
    .record({ density: fc.integer({ min: 150, max: 170 }), open: fc.integer({ min: 0, max: 100 }) })
    .map(({ density, open }) => ({ bulkDensity: density / 100, openShare: `${open} %` })),
);

const anySoil = fc
  .record({
    tops: fc.array(fc.record({ texture: fc.constantFrom(...textures), hindrance: anyHindrance }), {
      minLength: 1,
      maxLength: 4,
    }),
    thickness: fc.integer({ min: 3, max: 12 }),
    share: fc.integer({ min: 5, max: 100 }),
  })
  .map(({ tops, thickness, share }) => ({
    layers: tops.map(({ texture, hindrance }, l) => ({
      name: `layer ${l}`,
      ...(l === tops.length - 1 ? { bottom: "90 in" } : { thickness: `${thickness} in` }),
      texture,
      ...hindrance,
    })),
    startingWater: { share: `${share} %` },
    sliceThickness: "1 in",
  }));

/** Written in two ways that state the same; the first case cannot be told against itself. */
const anyRooting: fc.Arbitrary<readonly [first: string | undefined, later: string | undefined]> = fc.oneof(
  fc.constant([undefined, undefined] as const),
  fc.constant([undefined, "+0 in"] as const),
  inches(5, 90).map((depth) => [depth, depth] as const),
  inches(5, 90).map((depth) => [depth, "+0 in"] as const),
);

const anyField = fc
  .record({
    soil: anySoil,
    crop: fc.constantFrom("grain sorghum", "corn", "winter wheat", "sunflower"),
    fallow: fc.constantFrom("0 months", "3 months", "11 months"),
    residue: fc.integer({ min: 0, max: 90 }),
    pattern: fc.constantFrom("summer-peak", "winter-peak", "even"),
    rain: fc.constantFrom("9 in", "12..14 in", "16..30 in"),
    rule: fc.constantFrom("by slice", "root-zone average"),
    dual: fc.boolean(),
    seed: fc.integer({ min: 0, max: 1000 }),
  })
  .map(({ soil, crop, fallow, residue, pattern, rain, rule, dual, seed }) => ({
    format: "rootfront-scenario/1",
    name: "invented at random",
    invented: true,
    site: { latitude: "38.5 N", elevation: "3300 ft" },
    soil,
    weather: { pattern, annualRain: rain },
    crop: { name: crop },
    fallow: { length: fallow },
    surface: { residueCover: `${residue} %` },
    model: { uptake: rule, evaporation: dual ? "dual coefficient" : "two-stage" },
    ensemble: { years: 3, seed },
  }));

const withDepth = (name: string, rootingDepth: string | undefined) =>
  rootingDepth === undefined ? { name } : { name, rootingDepth };

/** Everything that is kept of two cases, run by run. */
function expectEqualRuns({ cases, pairs }: Pick<EnsembleAtRain, "cases" | "pairs">): void {
  const [first, second] = cases;
  for (const key of Object.keys(first!.byRun) as (keyof CaseRuns["byRun"])[]) {
    expect([...second!.byRun[key]], key).toEqual([...first!.byRun[key]]);
  }
  expect([...second!.yieldKgPerHaByRun]).toEqual([...first!.yieldKgPerHaByRun]);
  for (const { ruleOfThumbMmByRun, storedInExtraDepthMmByRun } of pairs)
    expect([...ruleOfThumbMmByRun, ...storedInExtraDepthMmByRun].every((mm) => mm === 0)).toBe(true);
}

/** How often the soil held roots above a depth stated for them, for the test to be about that too. */
let heldAbove = 0;

test(`equal cases differ by exactly 0, whatever is said of their roots: ${runsOf.equal} random fields`, async () => {
  heldAbove = 0;
  await fc.assert(
    fc.asyncProperty(anyField, anyRooting, async (field, [first, later]) => {
      const cases = [withDepth("as it is", first), withDepth("the same", later)];
      const ensemble = runEnsemble(await resolved({ ...field, cases }));
      ensemble.byRainTotal.forEach(expectEqualRuns);
      const answer = comparisonOf(ensemble, "us");
      if (answer.cases[1]!.shortOfStatedShare! > 0) heldAbove += 1;
    }),
    { seed: 11, numRuns: runsOf.equal },
  );
  expect(heldAbove).toBeGreaterThan(10);
});

/** A later case of any kind: roots grown, stated, or told against the first, in the soil as it is or one of its own. */
const anyCase = fc
  .record({
    depth: fc.oneof(
      fc.constant(undefined),
      inches(5, 90),
      fc.integer({ min: -3, max: 12 }).map((extra) => `${extra < 0 ? "" : "+"}${extra} in`),
    ),
    own: fc.option(
      anyHindrance.map((hindrance) => ({ layers: [{ name: "layer 0", ...hindrance }] })),
      { nil: undefined },
    ),
  })
  .map(({ depth, own }) => ({
    ...(depth === undefined ? {} : { rootingDepth: depth }),
    ...(own === undefined ? {} : { soil: own }),
  }));

test(`two later cases of one wording differ by exactly 0, whatever the first is: ${runsOf.later} random fields`, async () => {
  await fc.assert(
    fc.asyncProperty(
      anyField,
      fc.option(inches(12, 90), { nil: undefined }),
      anyCase,
      async (field, firstDepth, later) => {
        const cases = [
          withDepth("first", firstDepth),
          { name: "one", ...later },
          { name: "the same", ...later },
        ];
        const scenario = await resolved({ ...field, cases }).catch((error: unknown) => {
          // A depth below the soil described, or an own layer that cannot be.
          if (error instanceof InputError) return null;
          throw error;
        });
        fc.pre(scenario !== null);
        for (const { cases: runs, pairs } of runEnsemble(scenario).byRainTotal) {
          expectEqualRuns({ cases: runs.slice(1), pairs: [] });
          expect(pairs[1]).toEqual(pairs[0]);
        }
      },
    ),
    { seed: 13, numRuns: runsOf.later },
  );
});

/** Days on which each crop has roots. */
const dugOn: Readonly<Record<string, string>> = {
  "grain sorghum": "2024-08-01",
  corn: "2024-07-15",
  "winter wheat": "2024-05-10",
  sunflower: "2024-08-01",
};

test(`a dig in either of two equal cases tells of both: ${runsOf.dug} random fields`, async () => {
  const seen = { fitted: 0, stated: 0 };
  await fc.assert(
    fc.asyncProperty(
      anyField,
      anyRooting,
      fc.array(fc.integer({ min: 4, max: 60 }), { minLength: 1, maxLength: 5 }),
      fc.boolean(),
      async (field, [first, later], dug, isLater) => {
        const cases = [withDepth("as it is", first), withDepth("the same", later)];
        const evidence = {
          rootDepths: [
            {
              case: cases[isLater ? 1 : 0]!.name,
              date: dugOn[field.crop.name]!,
              depths: dug.map((depth) => `${depth} in`),
            },
          ],
          denseLayer: "layer 0",
        };
        const ensemble = runEnsemble(await resolved({ ...field, cases, evidence }));
        ensemble.byRainTotal.forEach(expectEqualRuns);
        const fit = ensemble.preparation.digFit();
        if (fit === null || fit.servedBy.every((place) => place === null)) return;
        expect(fit.servedBy[0]).toBe(fit.servedBy[1]);
        seen.fitted += 1;
        if (first !== undefined) seen.stated += 1;
      },
    ),
    { seed: 14, numRuns: runsOf.dug },
  );
  // The dig decides, in fields with a stated depth too: or the law says little.
  expect(Math.min(seen.fitted, seen.stated), JSON.stringify(seen)).toBeGreaterThan(4);
});

test(`a stated depth is never passed, and the roots grow to it as they would without it: ${runsOf.stated} random fields`, async () => {
  await fc.assert(
    fc.asyncProperty(anyField, fc.integer({ min: 5, max: 90 }), async (field, depth) => {
      const cases = [withDepth("grown", undefined), withDepth("stated", `${depth} in`)];
      const preparation = prepare(await resolved({ ...field, cases }));
      const ensemble = emptyEnsemble(preparation);
      const buffers = makeRunBuffers("sums");
      for (let run = 0; run < ensemble.runs; run++) {
        const ready = readyRun(preparation, run);
        ensemble.byRainTotal.forEach((_, total) => {
          const [grown, stated] = runInto(ensemble, run, total, ready, buffers);
          const { finalRootDepthMm } = stated!.totals;
          expect(finalRootDepthMm).toBeLessThanOrEqual(depth * 25.4 + 1e-9);
          // Until the first reaches that depth, both runs are one.
          for (let day = 0; day <= grown!.course.maturityDay; day++) {
            const frontMm = grown!.ledger.frontMm[day]!;
            if (frontMm > depth * 25.4) break;
            expect(stated!.ledger.frontMm[day]).toBe(frontMm);
          }
        });
      }
    }),
    { seed: 12, numRuns: runsOf.stated },
  );
});

test("60 in against 62 in in an open soil: exactly the extra depth that the soil allows, and never less water", async () => {
  const field = {
    format: "rootfront-scenario/1",
    name: "open",
    invented: true,
    site: { latitude: "38.5 N", elevation: "3300 ft" },
    weather: { pattern: "summer-peak", annualRain: "12..20 in" },
    crop: { name: "grain sorghum" },
    ensemble: { years: 40, seed: 4 },
  };
  const seen = { whole: 0, part: 0, none: 0 };
  for (const share of ["90 %", "35 %"]) {
    for (const [first, later] of [
      ["60 in", "62 in"],
      ["60 in", "+2 in"],
    ]) {
      const soil = {
        layers: [{ name: "open loam", bottom: "90 in", texture: "loam", bulkDensity: 1.25 }],
        startingWater: { share },
      };
      const cases = [withDepth("one", first), withDepth("other", later), withDepth("grown", undefined)];
      const ensemble = runEnsemble(await resolved({ ...field, soil, cases }));
      for (const { cases: runs } of ensemble.byRainTotal) {
        const [one, other, grown] = runs.map(({ byRun }) => byRun);
        grown!.finalRootDepthMm.forEach((grownMm, run) => {
          const allowedMm = Math.min(grownMm, 1574.8) - Math.min(grownMm, 1524);
          const extraDepthMm = other!.finalRootDepthMm[run]! - one!.finalRootDepthMm[run]!;
          expect(extraDepthMm).toBe(allowedMm);
          seen[allowedMm === 0 ? "none" : grownMm < 1574.8 ? "part" : "whole"] += 1;
          const extraMm = other!.transpirationMm[run]! - one!.transpirationMm[run]!;
          expect(extraMm).toBeGreaterThanOrEqual(allowedMm === 0 ? 0 : -1e-9);
        });
      }
    }
  }
  // The soil lets the roots get there, does not, and some way: or the law says little.
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(4);
});
