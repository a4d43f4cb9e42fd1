import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { beforeAll, describe, expect, test, vi } from "vitest";
import { worthOfUnits } from "../../../scripts/unitsOfMathjs.ts";
import { kinds } from "../../../src/quantity/kinds.ts";
import { unitLibrary } from "../../../src/quantity/readQuantity.ts";
import { convertByTable } from "../../../src/quantity/unitTable.ts";
import table from "../../../src/quantity/unitTable.json" with { type: "json" };
import { spellings, spellUnit } from "../../../src/quantity/unitText.ts";
import { casesOf } from "../../support/laws.ts";

let unit: Awaited<ReturnType<typeof unitLibrary>>["unit"];
beforeAll(async () => {
  ({ unit } = await unitLibrary());
});

/** What mathjs says; null where it knows no such unit or the dimensions differ. */
function byLibrary(value: number, from: string, to: string): number | null {
  try {
    return unit(value, from).toNumber(to);
  } catch {
    return null;
  }
}

function expectSame(value: number, from: string, to: string): void {
  const expected = byLibrary(value, from, to);
  const found = convertByTable(value, from, to);
  const alike =
    typeof expected === "number" && typeof found === "number"
      ? Math.abs(found - expected) <= 1e-15 * Math.abs(expected)
      : found === expected;
  expect(alike, `${value} ${from} in ${to}: ${found}, by mathjs ${expected}`).toBe(true);
}

/** What the converters of `kinds` convert into, and the units that the trade writes for it. */
const insides = [...new Set(Object.values(kinds).map(({ inside }) => inside))].filter(
  (inside) => convertByTable(1, inside, inside) !== undefined,
);
const written = [
  ...Object.keys(spellings),
  ..."g/cm^3 g/cc Mg/m3 kg/m3 kg·m-3 lb/ft^3 lb/cu·ft lb/ac/in kg/ha/mm kg/ha·mm bu/ac/in lbs/acre kg/ha t/ha kg/acre mm/C/day in/F/day".split(
    " ",
  ),
  ..."in/day in/d mm/day cm/day um/s µm/s in/h in/hr mm/h cm/hr m/s km/h mph ft/s in/ft cm3/cm3 m³/m³ in^3/in^3 kg·ha-1 mm·d⁻¹ kg·m⁻³".split(
    " ",
  ),
  "kg per ha",
  "lb per acre per inch",
  "mm per °C per day",
  "in. per day",
];

describe("the table of units", () => {
  test("is what `npm run units` writes from mathjs", async () => {
    expect(table).toEqual(await worthOfUnits());
  });

  test("converts every unit into every other as mathjs does, and only those of one dimension", () => {
    const names = Object.keys(table);
    let converted = 0;
    for (const from of names) {
      for (const to of names) {
        expectSame(1.7, from, to);
        if (convertByTable(1, from, to) !== null) converted += 1;
      }
    }
    expect(converted).toBeGreaterThan(names.length);
  });

  test("converts what people write as mathjs does", () => {
    for (const text of written) {
      for (const inside of insides) {
        const spelt = spellUnit(text);
        if (convertByTable(1, spelt, inside) !== undefined) expectSame(56.3, spelt, inside);
      }
    }
    const notThere = written.filter((text) => convertByTable(1, spellUnit(text), "m") === undefined);
    expect(notThere).toEqual(["percent", "pct", "lb/cu·ft", "bu/ac/in"]);
  });

  test("a plain unit in a row that begins with a degree is what mathjs makes of it, odd as that is", () => {
    for (const to of ["K^-1/K^-1 ft ^ 2 / dm", "degC/degC ft^2/dm", "degF^-1/degF^-1 ft^2/dm", "ft K/K"]) {
      expectSame(0, "m", to);
      expectSame(10, "m", to);
    }
    expectSame(10, "degC", "K^2/K");
    expectSame(10, "degF", "degC K/K");
  });

  test("converts any row of units with powers as mathjs does, from 1e-9 to 1e9", () => {
    const one = fc.tuple(
      fc.constantFrom(...Object.keys(table)),
      fc.constantFrom("", "", "^2", "^3", "^-1", " ^ 2"),
      fc.constantFrom(" ", "/", " / "),
    );
    const row = fc
      .array(one, { minLength: 1, maxLength: 4 })
      .map((parts) => parts.map(([name, power, by], p) => (p === 0 ? "" : by) + name + power).join(""));
    const value = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(row, row, value, (from, to, x) => {
        expectSame(x, from, to);
        expectSame(x, from, from);
        const inSi = from.replace(/[a-z]+/gi, (name) => alike(name));
        expectSame(x, from, inSi);
      }),
      { numRuns: casesOf({ whole: 2000, usually: 500 }) },
    );
  });

  test("leaves all else to mathjs", () => {
    for (const text of [
      "",
      "bu",
      "furlong",
      "kg/(ha mm)",
      "2 in",
      "in^1.5",
      "in^12",
      "/ha",
      "in/",
      "in*ft",
      "constructor",
    ])
      expect(convertByTable(1, text, "m"), text).toBeUndefined();
  });
});

/** Another unit of the same dimensions. */
function alike(name: string): string {
  return (
    Object.keys(table).find((other) => other !== name && convertByTable(1, name, other) !== null) ?? name
  );
}

describe("reading without mathjs", () => {
  test("every demo is read without it, and it is fetched for a unit that the table lacks", async () => {
    vi.resetModules();
    let fetched = 0;
    vi.doMock("mathjs", async (original) => {
      fetched += 1;
      return original();
    });
    const { resolveScenario } = await import("../../../src/scenario/resolve/resolve.ts");
    const { InputError } = await import("../../../src/problem.ts");
    const folder = new URL("../../../shared/scenarios/", import.meta.url);
    const readText = (path: string) => readFileSync(new URL(path, folder), "utf8");
    const demos = readdirSync(folder).filter((name) => name.endsWith(".json"));
    expect(demos.length).toBeGreaterThan(2);
    for (const fileName of demos)
      await resolveScenario(JSON.parse(readText(fileName)), { fileName, readText });
    expect(fetched).toBe(0);
    const first = JSON.parse(readText(demos[0]!)) as { site: object };
    const inFurlongs = { ...first, site: { ...first.site, elevation: "5 furlong" } };
    await expect(resolveScenario(inFurlongs, { fileName: "", readText })).rejects.toThrow(InputError);
    const inSquares = { ...first, site: { ...first.site, elevation: "1000000 millimeter^2/mm" } };
    await expect(resolveScenario(inSquares, { fileName: "", readText })).resolves.toBeDefined();
    expect(fetched).toBe(1);
    vi.doUnmock("mathjs");
  });
});
