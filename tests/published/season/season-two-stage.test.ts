/** Evaporation in two stages and under residue. Rows and tolerances: data-reference/two-stage-checks.json. */
import { describe, expect, test } from "vitest";
import checks from "../../../data-reference/two-stage-checks.json" with { type: "json" };
import { firstStageUnderResidue } from "../../../src/season/residue/mulch.ts";
import { lackingAfter, twoStageEvaporationMm } from "../../../src/season/evaporation/twoStageEvaporation.ts";
import { secondStageMmPerRootDay } from "../../../src/soil/equations/evaporableWater.ts";
import { bySeason, noSpread } from "../../../truth/seasons.ts";
import { bareGround, dryingLedger, evaporatedMm, potentialPerEt0 } from "../../support/bareColumn.ts";
import { testCourse } from "../../support/column.ts";
import { published } from "../published.ts";
import { closenessOf, markOf, recordsOf, sourceOf } from "../weather/records.ts";
import { steadyRecord } from "../../support/steadyRecord.ts";

const { take, noneLeft } = recordsOf(checks);

const soils = take<
  {
    soil: string[];
    firstStageMm: number[];
    mmPerRootDay: number[];
    potentialMmPerDay: number;
    days: number[];
  },
  { lossMm: number[][] }
>("ritchie1972-soils");
published(
  `${sourceOf(soils)}: ${soils.what}`,
  closenessOf(soils),
  soils.inputs.soil.flatMap((soil, s) =>
    soils.inputs.days.map((days, d) => [soil, days, soils.expected.lossMm[s]![d]!]),
  ),
  (soil: string, days: number) => {
    const { firstStageMm, mmPerRootDay, potentialMmPerDay } = soils.inputs;
    const s = soils.inputs.soil.indexOf(soil);
    return lackingAfter(days, potentialMmPerDay, firstStageMm[s]!, mmPerRootDay[s]!);
  },
);

const byClay = take<{ soil: string[]; clayFraction: number[] }, { mmPerRootDay: number[] }>(
  "ritchie1972-clay",
);
published(
  `${sourceOf(byClay)}: ${byClay.what}`,
  closenessOf(byClay),
  byClay.inputs.clayFraction.map((clay, s) => [clay, byClay.expected.mmPerRootDay[s]!]),
  secondStageMmPerRootDay,
);
test("the four soils are the same in both tables", () => {
  expect([...byClay.expected.mmPerRootDay].sort()).toEqual([...soils.inputs.mmPerRootDay].sort());
});

const fresh = take<
  { lackingMm: number; freshMm: number[]; potentialMm: number },
  { evaporationMm: number[] }
>("ritchie1972-fresh");
published(
  `${sourceOf(fresh)}: ${fresh.what}`,
  closenessOf(fresh),
  fresh.inputs.freshMm.map((mm, i) => [mm, fresh.expected.evaporationMm[i]!]),
  // Of itself this soil would give 0.6 mm that day: alpha^2 / 2 (lacking - U).
  (freshMm: number) => twoStageEvaporationMm(fresh.inputs.lackingMm, freshMm, fresh.inputs.potentialMm, 9, 4),
);

const bare = take<
  { texture: string[]; potentialMmPerDay: number; evaporatingDepthMm: number[]; days: number },
  { lossMm: string }
>("black1969-sand");
describe(`${sourceOf(bare)} (${markOf(bare)}; within ${bare.tolerance} mm: ${bare.because}): ${bare.what}`, () => {
  const { texture: textures, potentialMmPerDay, evaporatingDepthMm, days } = bare.inputs;
  test("the table has rows", () => expect(textures.length).toBe(4));
  test.each(textures.map((texture, t) => [texture, evaporatingDepthMm[t]!] as const))(
    "a scenario of bare %s that dries to %d mm",
    async (texture, depthMm) => {
      const record = steadyRecord(days, potentialMmPerDay / potentialPerEt0);
      const [found] = await bySeason(
        {
          site: { latitude: "40 N", elevation: "1000 m" },
          soil: {
            layers: [{ name: "soil", thickness: "60 in", texture }],
            startingWater: { share: "100 %" },
          },
          weather: { record: "steady.csv" },
          crop: { name: "proso millet", sowing: record.sowing, clock: "days" },
          fallow: { length: `${days} days` },
          surface: { evaporatingDepth: `${depthMm} mm` },
          ensemble: { years: 1, seed: 1, ...noSpread },
        },
        { "steady.csv": record.text },
        ({ ledger, plan, slices: { topMm, fieldCapacityMm, wiltingPointMm } }) => ({
          lossMm: evaporatedMm(ledger, days),
          ground: plan.ground,
          zoneMm: fieldCapacityMm.reduce(
            (sum, mm, j) => sum + (topMm[j]! < depthMm ? mm - 0.5 * wiltingPointMm[j]! : 0),
            0,
          ),
        }),
      );
      const { lossMm, ground, zoneMm } = found!;
      const { readilyEvaporableMm, secondStageMmPerRootDay } = ground;
      const law = lossMm.map((_, day) => {
        const second = day + 1 - readilyEvaporableMm / potentialMmPerDay;
        return Math.min(
          (day + 1) * potentialMmPerDay,
          readilyEvaporableMm + secondStageMmPerRootDay * Math.sqrt(Math.max(0, second)),
        );
      });
      for (const [day, mm] of lossMm.entries())
        expect(Math.abs(mm - Math.min(law[day]!, zoneMm)), `day ${day + 1}`).toBeLessThanOrEqual(
          bare.tolerance,
        );
      // The root of time rules for days, and then the zone is empty.
      expect(law.filter((mm) => mm < zoneMm).length).toBeGreaterThan(texture === "sand" ? 2 : 6);
      expect(lossMm.at(-1)!).toBeCloseTo(Math.min(law.at(-1)!, zoneMm), texture === "sand" ? 9 : 0);
    },
  );
});

const long = take<
  { residueCover: number[]; potentialMmPerDay: number; days: number },
  { totalRatio: number }
>("bondWillis1969-long");
const dried = (residueCoverFallow: number, days: number): number[] =>
  evaporatedMm(
    dryingLedger(days, long.inputs.potentialMmPerDay, { ground: { ...bareGround, residueCoverFallow } }),
    days,
  );
published(
  `${sourceOf(long)}: ${long.what}: the total`,
  closenessOf(long),
  long.inputs.residueCover.map((cover) => [cover, long.expected.totalRatio]),
  (cover: number) => dried(cover, long.inputs.days).at(-1)! / dried(0, long.inputs.days).at(-1)!,
);
test(`${sourceOf(long)}: residue slows the first stage, and lengthens it`, () => {
  const days = 20;
  const { residueCover, potentialMmPerDay } = long.inputs;
  /** Days that went at the first one's pace. */
  const lengthOf = (loss: readonly number[]) =>
    loss.filter((mm, day) => Math.abs(mm - (day + 1) * loss[0]!) < 1e-9).length;
  let [pace, length] = [potentialMmPerDay + 1e-9, 0];
  for (const cover of [0, ...residueCover]) {
    const loss = dried(cover, days);
    expect(loss[0]!).toBeCloseTo(potentialMmPerDay * firstStageUnderResidue(cover), 9);
    expect(loss[0]!).toBeLessThan(pace);
    expect(lengthOf(loss)).toBeGreaterThanOrEqual(length);
    [pace, length] = [loss[0]!, lengthOf(loss)];
  }
  expect(length).toBeGreaterThan(lengthOf(dried(0, days)));
});

const product = take<{ canopyCover: number[]; residueCover: number[] }, { share: string }>(
  "adams1976-product",
);
/** Evaporation of one day on wet ground in a crop, mm; reference ET 5 mm. */
function wetDayMm(canopyCover: number, residueCoverCrop: number): number {
  const days = 2;
  const course = {
    ...testCourse(days, 0),
    kcbByDay: new Float64Array(days), // so that the canopy acts by its shade alone
    coverByDay: new Float64Array(days).fill(canopyCover),
  };
  const ledger = dryingLedger(1, 6, { course, ground: { ...bareGround, residueCoverCrop } });
  return ledger.evaporationMm[0]!;
}
published(
  `${sourceOf(product)}: ${product.what}`,
  closenessOf(product),
  product.inputs.canopyCover.flatMap((canopy) =>
    product.inputs.residueCover.map((residue) => [
      canopy,
      residue,
      (wetDayMm(canopy, 0) / wetDayMm(0, 0)) * (wetDayMm(0, residue) / wetDayMm(0, 0)),
    ]),
  ),
  (canopy: number, residue: number) => wetDayMm(canopy, residue) / wetDayMm(0, 0),
);
test("a canopy that shades half leaves half, and straw on nine tenths 0.36", () => {
  expect(wetDayMm(0.5, 0) / wetDayMm(0, 0)).toBeCloseTo(0.5, 12);
  expect(wetDayMm(0, 0.9) / wetDayMm(0, 0)).toBeCloseTo(0.1 ** 0.44, 12);
});

const straw = take<{ strawTPerHa: number[]; coverPerTHa: number }, { share: number[] }>("adams1976-straw");
published(
  `${sourceOf(straw)}: ${straw.what}`,
  closenessOf(straw),
  straw.inputs.strawTPerHa.map((mass, i) => [mass, straw.expected.share[i]!]),
  // Cover of a mass of straw: 1 - exp(-0.5 x t/ha), as data-reference/scoreboard/residue.json has it.
  (mass: number) => firstStageUnderResidue(1 - Math.exp(-straw.inputs.coverPerTHa * mass)),
);

for (const id of ["klocke2009-full", "unger1995-full"]) {
  const full = take<{ residueCover: number }, { share: [number, number] }>(id);
  test(`${sourceOf(full)} (${markOf(full)}): ${full.what}`, () => {
    const [least, most] = full.expected.share;
    const share = firstStageUnderResidue(full.inputs.residueCover);
    expect(share).toBeGreaterThanOrEqual(least - full.tolerance);
    expect(share).toBeLessThanOrEqual(most + full.tolerance);
  });
}

noneLeft();
