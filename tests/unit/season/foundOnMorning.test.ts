import { expect, test } from "vitest";
import { makeLedger } from "../../../src/season/ledger.ts";
import type { FoundOnMorning } from "../../../src/season/season.ts";
import { makeWorkspace, simulate } from "../../../src/season/simulate.ts";
import { column, testCourse, testInput, testSilt, testWeather, waterAt } from "../../support/column.ts";

const slices = column([testSilt]);
const days = 100;
const morning = 40;
const bottomMm = 1500;

function run(found: readonly FoundOnMorning[] | null) {
  const ledger = makeLedger(days, slices.count);
  const weather = testWeather(days, () => ({}));
  const totals = simulate(
    testInput({ slices, weather, course: testCourse(days, 10), found }),
    ledger,
    makeWorkspace(slices.count),
  );
  return { ledger, totals };
}

const asSimulated = run(null);
const waterOn = ({ ledger }: typeof asSimulated, day: number) =>
  ledger.waterMmByDayAndSlice!.slice(day * slices.count, (day + 1) * slices.count);

test("what was measured before the day of a measurement leaves it as it was", () => {
  const { ledger } = run([{ day: morning, waterMmBySlice: waterAt(slices, 1), frontMm: 300 }]);
  for (let day = 0; day < morning; day++) {
    expect(ledger.storageMm[day]).toBe(asSimulated.ledger.storageMm[day]);
    expect(ledger.frontMm[day]).toBe(asSimulated.ledger.frontMm[day]);
  }
});

test("measuring what was simulated changes nothing but what lay beneath the front in its slice", () => {
  const water = waterOn(asSimulated, morning - 1);
  const found = [{ day: morning, waterMmBySlice: water, frontMm: asSimulated.ledger.frontMm[morning - 1]! }];
  const { totals } = run(found);
  expect(Math.abs(totals.transpirationMm - asSimulated.totals.transpirationMm)).toBeLessThan(0.5);
  // The slice of the front is on the whole a little drier than its part beneath the front.
  expect(Math.abs(totals.finalRootDepthMm - asSimulated.totals.finalRootDepthMm)).toBeLessThan(1);
});

test("water measured above field capacity drains, and every day's balance stays closed", () => {
  const wet = Float64Array.from(slices.saturationMm);
  const { ledger, totals } = run([{ day: morning, waterMmBySlice: wet, frontMm: null }]);
  expect(ledger.drainageMm[morning - 1]).toBe(0);
  expect(ledger.drainageMm[morning]).toBeGreaterThan(1);
  expect(totals.balanceErrorMm).toBeLessThan(1e-9);
  // No rain fell: what left the column on that day is all that changed.
  const before = wet.reduce((sum, mm) => sum + mm, 0);
  const lost =
    ledger.evaporationMm[morning]! + ledger.transpirationMm[morning]! + ledger.drainageMm[morning]!;
  expect(ledger.storageMm[morning]! + lost).toBeCloseTo(before, 6);
});

test("a front that was dug goes on from where it was found, up or down", () => {
  for (const frontMm of [200, 900]) {
    const { ledger } = run([{ day: morning, waterMmBySlice: null, frontMm }]);
    expect(ledger.frontMm[morning]).toBeGreaterThanOrEqual(frontMm);
    expect(ledger.frontMm[morning]).toBeLessThan(frontMm + 20);
    expect(ledger.frontMm[days - 1]).toBeGreaterThan(frontMm);
    expect(ledger.frontMm[days - 1]).toBeLessThanOrEqual(bottomMm);
  }
});

test("water and front of one morning are both taken, in either order", () => {
  const water = { day: morning, waterMmBySlice: waterAt(slices, 0.9), frontMm: null };
  const front = { day: morning, waterMmBySlice: null, frontMm: 350 };
  expect(run([water, front]).totals).toEqual(run([front, water]).totals);
});
