import { describe, expect, test } from "vitest";
import { rainCharacter } from "../../../src/weather/generate/rainCharacter.ts";
import { filledNormals, recordNormals } from "../../../src/weather/generate/recordNormals.ts";
import { plainsNormals, recordFrom } from "./sampleRecord.ts";

/** Four years, 2001 to 2004: 10 mm on each first of a month, and the given days besides. */
function fourYears(besides: Readonly<Record<number, number>> = {}) {
  const record = recordFrom([2001, 1, 1], 1461);
  let day = 0;
  for (let year = 2001; year <= 2004; year++) {
    for (let month = 0; month < 12; month++) {
      record.rainMm[day] = 10;
      day += new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
    }
  }
  for (const [at, mm] of Object.entries(besides)) record.rainMm[Number(at)] = mm;
  return record;
}

describe("the character of a record's rain", () => {
  test("twelve equal falls a year: no spread, twelve wet days, a month less a day dry", () => {
    expect(rainCharacter(fourYears(), [9.99, 10])).toEqual({
      wholeYears: 4,
      rainMm: 120,
      wetDays: 12,
      longestDrySpellDays: 30,
      yearlySdMm: 0,
      shareAbove: [1, 0],
    });
  });

  test("a day above 20 mm counts in its share, its year and the spread of years", () => {
    const { shareAbove, rainMm, wetDays, yearlySdMm } = rainCharacter(fourYears({ 10: 40 }), [20, 30, 40]);
    expect(shareAbove.map((share) => share.toFixed(4))).toEqual(["0.0769", "0.0769", "0.0000"]); // 40 of 520
    expect([rainMm, wetDays, yearlySdMm]).toEqual([130, 12.25, 20]);
  });

  test("less than 0.25 mm is rain but no wet day", () => {
    const { wetDays, rainMm, longestDrySpellDays } = rainCharacter(fourYears({ 10: 0.2, 20: 0.25 }), []);
    expect([wetDays, longestDrySpellDays]).toEqual([12.25, 30]);
    expect(rainMm).toBeCloseTo(120.1125, 6);
  });

  test("a year with more than five missing days is left out, its measured days still weigh storms", () => {
    const missing = Object.fromEntries([5, 6, 7, 8, 9, 10].map((day) => [day, Number.NaN]));
    expect(rainCharacter(fourYears(missing), []).wholeYears).toBe(3);
    expect(rainCharacter(fourYears({ ...missing, 10: 0 }), []).wholeYears).toBe(4);
    expect(rainCharacter(fourYears({ ...missing, 11: 40 }), [20]).shareAbove[0]).toBeCloseTo(40 / 520, 9);
  });

  test("a season counts by itself", () => {
    const season = rainCharacter(fourYears({ 10: 40 }), [20], { fromMonth: 4, toMonth: 10 });
    expect(season).toMatchObject({ wholeYears: 4, rainMm: 70, wetDays: 7, yearlySdMm: 0, shareAbove: [0] });
  });

  test("of an empty or short record nothing is made up", () => {
    expect(rainCharacter(recordFrom([2001, 3, 1], 40), [20])).toEqual({
      wholeYears: 0,
      rainMm: 0,
      wetDays: 0,
      longestDrySpellDays: 0,
      yearlySdMm: null,
      shareAbove: [0],
    });
  });
});

describe("monthly normals of a record", () => {
  test("are the mean of its measured days, months without a record are filled from elsewhere", () => {
    const half = recordFrom([2001, 1, 1], 181, { tMaxC: new Float64Array(181).fill(12) });
    half.rainMm[3] = 15.5;
    half.rainMm[4] = Number.NaN;
    const own = recordNormals(half);
    expect(own.rainMm[0]).toBeCloseTo((15.5 / 30) * 31, 9);
    expect(own.wetDays[0]).toBeCloseTo(31 / 30, 9);
    expect([own.rainMm[6], own.tMaxC[0], own.tMinC[0]]).toEqual([null, 12, null]);
    const filled = filledNormals(own, plainsNormals);
    expect(filled.rainMm.slice(5, 8)).toEqual([0, plainsNormals.rainMm[6], plainsNormals.rainMm[7]]);
    expect(filled.tMinC).toEqual(plainsNormals.tMinC);
  });
});
