/** Laws of melt on frozen ground. The equations against their sources: tests/published/season/frozen-ground.test.ts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { movedCurveNumber } from "../../../src/season/curveNumber.ts";
import { zoneDepletionMm } from "../../../src/season/evaporation/evaporation.ts";
import { layOut } from "../../../src/season/layOut.ts";
import type { Frost } from "../../../src/season/field.ts";
import {
  freezeAndThaw,
  frozenIntakeMm,
  noFrost,
  shedMeltMm,
  snowDepthCm,
} from "../../../src/season/frozenGround.ts";
import { makeLedger } from "../../../src/season/ledger.ts";
import { runOff, runoffMm } from "../../../src/season/runoff.ts";
import type { Ledger, SeasonInput } from "../../../src/season/season.ts";
import { makeWorkspace, simulate } from "../../../src/season/simulate.ts";
import { makeToday } from "../../../src/season/today.ts";
import {
  column,
  testCourse,
  testGround,
  testInput,
  testSilt,
  testWeather,
  waterAt,
} from "../../support/column.ts";
import { frozenByDay } from "../../support/frozenByDay.ts";

const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 100_000 }).map((step) => min + ((max - min) * step) / 100_000);
const share = between(0, 1);
const frozenWith = (poresFilled: number): Frost => ({ ...noFrost(), isFrozen: true, poresFilled });

test("melt soaked in and melt shed are the melt, and however it is cut into days, the equation's share soaks in", () => {
  fc.assert(
    fc.property(share, fc.array(between(0, 40), { minLength: 1, maxLength: 60 }), (poresFilled, melts) => {
      const frost = frozenWith(poresFilled);
      let soaked = 0;
      for (const melt of melts) {
        const shed = shedMeltMm(melt, frost);
        expect(shed).toBeGreaterThanOrEqual(0);
        expect(shed).toBeLessThanOrEqual(melt);
        soaked += melt - shed;
      }
      const all = melts.reduce((sum, melt) => sum + melt, 0);
      expect(soaked).toBeCloseTo(frozenIntakeMm(all, poresFilled), 9);
    }),
    { seed: 51 },
  );
});

test("more snow never soaks in less, and wetter ground at freeze-up never takes in more", () => {
  fc.assert(
    fc.property(between(0, 300), between(0, 300), share, share, (melted, more, a, b) => {
      const [drier, wetter] = [Math.min(a, b), Math.max(a, b)];
      expect(frozenIntakeMm(melted + more, a)).toBeGreaterThanOrEqual(frozenIntakeMm(melted, a) - 1e-12);
      expect(frozenIntakeMm(melted, wetter)).toBeLessThanOrEqual(frozenIntakeMm(melted, drier) + 1e-12);
    }),
    { seed: 52 },
  );
});

test("snow of 250 kg/m3 lies four times as deep as its water", () => {
  expect(snowDepthCm(25)).toBe(10);
});

describe("in a run", () => {
  const slices = column([testSilt]);
  const days = 150;

  function winter(meanC: (d: number) => number, rainMm: (d: number) => number, startShare: number) {
    return testInput({
      slices,
      weather: testWeather(days, (d) => ({ meanC: meanC(d), rainMm: rainMm(d), et0Mm: 0 })),
      course: testCourse(days, days - 1),
      startWaterMm: waterAt(slices, startShare),
    });
  }

  function ledgerOf(input: SeasonInput): Ledger {
    const ledger = makeLedger(days, slices.count);
    simulate(input, ledger, makeWorkspace(slices.count));
    return ledger;
  }

  const sum = (values: Float64Array) => values.reduce((total, mm) => total + mm, 0);
  const until = (coldDays: number) => (d: number) => (d < coldDays ? -8 : 4);
  /** 6 mm of snow water a day on ten days, once the ground is long frozen. */
  const snow = (d: number) => (d >= 40 && d < 50 ? 6 : 0);

  /** Runoff of each day by the curve number alone, from the water that the evening before left. */
  function byCurveNumber(input: SeasonInput, ledger: Ledger): number[] {
    const { zone, curveNumbers, readilyEvaporableMm, totalEvaporableMm } = layOut(
      input,
      makeWorkspace(slices.count),
    );
    const { dry, average, wet } = curveNumbers.fallow;
    return Array.from({ length: days - 1 }, (_, day) => {
      const evening = ledger.waterMmByDayAndSlice!.slice((day - 1) * slices.count, day * slices.count);
      const water = day === 0 ? input.startWaterMm : evening;
      const lackingMm = zoneDepletionMm(zone, water, slices.fieldCapacityMm);
      const cn = movedCurveNumber(
        dry,
        average,
        wet,
        lackingMm,
        readilyEvaporableMm.crop,
        totalEvaporableMm.crop,
      );
      return runoffMm(ledger.rainMm[day]! + ledger.meltMm[day]!, cn);
    });
  }

  test("60 mm of snow on ground that froze half full: what the equation lets in soaks in, the rest runs off", () => {
    const startShare = 0.5;
    // Ground that sheds nothing of such melt when it is not frozen.
    const ground = { ...testGround, curveNumberFallow: 30 };
    const ledger = ledgerOf({ ...winter(until(60), snow, startShare), ground });
    const poresFilled = (0.12 + startShare * (0.31 - 0.12)) / 0.48;
    expect(sum(ledger.meltMm)).toBeCloseTo(60, 9);
    expect(sum(ledger.infiltrationMm)).toBeCloseTo(frozenIntakeMm(60, poresFilled), 9);
    expect(sum(ledger.runoffMm) + sum(ledger.infiltrationMm)).toBeCloseTo(60, 9);
    expect(Math.max(...ledger.residualMm.map(Math.abs))).toBeLessThan(1e-9);
  });

  test("the wetter the ground at freeze-up, the less soaks in", () => {
    const soaked = [0, 0.25, 0.5, 0.75, 1].map((startShare) =>
      sum(ledgerOf(winter(until(60), snow, startShare)).infiltrationMm),
    );
    for (let i = 1; i < soaked.length; i++) expect(soaked[i]!).toBeLessThan(soaked[i - 1]!);
  });

  test("ground that has thawed forgets: the next frost counts its melt anew", () => {
    const two = winter(
      (d) => (d < 60 ? -8 : d < 85 ? 6 : d < 125 ? -8 : 4),
      (d) => snow(d) + snow(d - 70),
      0.2,
    );
    const ledger = ledgerOf(two);
    const frozen = frozenByDay(ledger, two.weather, 0, days);
    expect([59, 84, 124].map((day) => frozen[day])).toEqual([true, false, true]);
    const first = sum(ledger.infiltrationMm.subarray(0, 85));
    const second = sum(ledger.infiltrationMm.subarray(85));
    expect(second).toBeLessThan(first);
    expect(second).toBeGreaterThan(0.5 * first);
  });

  test("days on which the ground is not frozen, and days without melt, run off by the curve number to the last bit; others never less", () => {
    let [frozenMeltDays, thawedMeltDays] = [0, 0];
    fc.assert(
      fc.property(
        between(-8, 4),
        between(8, 20),
        between(8, 16),
        share,
        fc.array(between(0, 6), { minLength: 9, maxLength: 9 }),
        (meanC, swing, pace, startShare, rain) => {
          const input = winter(
            (d) => meanC - swing * Math.sin(d / pace),
            (d) => (d % 3 === 0 ? rain[(d / 3) % 9]! : 0),
            startShare,
          );
          const ledger = ledgerOf(input);
          const frozen = frozenByDay(ledger, input.weather, 0, days);
          byCurveNumber(input, ledger).forEach((mm, day) => {
            const ours = ledger.runoffMm[day]!;
            const melts = ledger.meltMm[day]! > 0;
            const mayShedMore = melts && frozen[day]!;
            if (mayShedMore) frozenMeltDays++;
            else if (melts) thawedMeltDays++;
            expect(ours).toBeGreaterThanOrEqual(mm);
            expect(mayShedMore ? mm : ours).toBe(mm);
          });
        },
      ),
      { numRuns: 100, seed: 53 },
    );
    expect(frozenMeltDays).toBeGreaterThan(100);
    expect(thawedMeltDays).toBeGreaterThan(100);
  });

  test("thaw reaches the ground through the snow of the morning, though all of it melts that day", () => {
    const field = layOut(
      winter(
        () => 5,
        () => 0,
        0.5,
      ),
      makeWorkspace(slices.count),
    );
    Object.assign(field.frost, { indexCDays: 100, isFrozen: true });
    // 10 cm of it, 25 mm of water: 97 - 5 exp(-0.32), as in data-reference/frozen-ground-checks.json.
    freezeAndThaw({ ...makeToday(), meltMm: 25, snowOnGroundMm: 0 }, field);
    expect(field.frost.indexCDays).toBeCloseTo(93.369, 3);
  });

  test("rain on frozen ground runs off by the curve number, beside what is shed of the melt", () => {
    const field = layOut(
      winter(
        () => 5,
        () => 0,
        1,
      ),
      makeWorkspace(slices.count),
    );
    // At field capacity the wet number counts. All pores full: nothing of the melt soaks in.
    const { wet } = field.curveNumbers.fallow;
    Object.assign(field.frost, { indexCDays: 100, isFrozen: true, poresFilled: 1 });
    const shed = (rainMm: number, meltMm: number) => {
      const today = { ...makeToday(), rainMm, meltMm, reachingMm: rainMm + meltMm };
      runOff(today, field);
      return today.runoffMm;
    };
    expect(shed(20, 0)).toBeCloseTo(runoffMm(20, wet), 12);
    expect(shed(0, 4)).toBeCloseTo(4, 12);
    expect(shed(6, 14)).toBeCloseTo(14 + runoffMm(6, wet), 12);
    expect(runoffMm(6, wet)).toBeGreaterThan(0);
  });

  test("a record without temperatures has no frost", () => {
    const input = winter(until(60), snow, 0.5);
    const blind = ledgerOf({ ...input, weather: { ...input.weather, hasTemperature: false } });
    byCurveNumber(input, blind).forEach((mm, day) => expect(blind.runoffMm[day]!).toBe(mm));
  });
});
