import { expect, test } from "vitest";
import checks from "../../data-reference/season-checks.json" with { type: "json" };
import {
  curveNumberFor,
  curveNumberRows,
  dryAndWetCurveNumber,
  movedCurveNumber,
} from "../../src/season/curveNumber.ts";
import { runoffMm } from "../../src/season/runoff.ts";
import { meltMm } from "../../src/season/snow.ts";
import { published } from "./published.ts";

const table = (id: string) => checks.find((c) => c.id === id)!;

const runoff = table("cn-runoff-depth-table") as never as {
  inputs: { rainIn: number[]; curveNumber: number[] };
  expected: { runoffIn: number[][] };
};
published(
  "NRCS 1986, TR-55, Table 2-1",
  { unit: "in", tolerance: 0.0051, because: "printed to 0.01", mark: "read" },
  runoff.inputs.rainIn.flatMap((rain, i) =>
    runoff.inputs.curveNumber.map((cn, j) => [rain, cn, runoff.expected.runoffIn[i]![j]!]),
  ),
  (rainIn: number, cn: number) => runoffMm(rainIn * 25.4, cn) / 25.4,
);

published(
  "NRCS 1986, TR-55, Table 2-2b, spot checks against the printed rows",
  { unit: "-", tolerance: 0, because: "a table", mark: "read" },
  [
    ["fallow", "bare", "poor", "B", 86],
    ["fallow", "residue", "good", "C", 88],
    ["row crops", "straight row", "good", "B", 78],
    ["row crops", "contoured and terraced + residue", "good", "D", 80],
    ["small grain", "straight row", "poor", "C", 84],
    ["close-seeded legumes", "contoured", "good", "A", 55],
  ],
  (cover: "fallow", treatment: string, condition: "poor" | "good", group: "A") =>
    curveNumberFor(cover, treatment, condition, group)!,
);

published(
  "USDA-SCS 1985, NEH 4 / NRCS 2004, NEH 630 Table 10-1, dry",
  { unit: "-", tolerance: 0, because: "rows of the table itself", mark: "read" },
  [
    [100, 100],
    [90, 78],
    [80, 63],
    [70, 51],
    [60, 40],
    [50, 31],
    [40, 22],
    [30, 15],
  ],
  (cn: number) => dryAndWetCurveNumber(cn).dry,
);

published(
  "USDA-SCS 1985, NEH 4 / NRCS 2004, NEH 630 Table 10-1, wet",
  { unit: "-", tolerance: 0, because: "rows of the table itself", mark: "read" },
  [
    [100, 100],
    [90, 96],
    [80, 91],
    [70, 85],
    [60, 78],
    [50, 70],
    [40, 60],
    [30, 50],
  ],
  (cn: number) => dryAndWetCurveNumber(cn).wet,
);

// Fitted by others to the same table: an independent road to the rows between.
published(
  "Chow, Maidment & Mays 1988, p. 4-33, dry curve numbers by formula",
  {
    unit: "-",
    tolerance: 1.3,
    because: "the formula is a fit to the table, up to 1.3 off where ours is",
    mark: "read",
  },
  [
    [65, 43.83],
    [75, 55.75],
    [85, 70.41],
  ].map(([cn, dry]) => [cn!, dry!]),
  (cn: number) => dryAndWetCurveNumber(cn).dry,
);

const shift = table("cn-shift-by-topsoil") as never as {
  inputs: { rewMm: number; tewMm: number; cnDry: number; cnWet: number; depletionMm: number[] };
  expected: { curveNumber: number[] };
};
published(
  "Allen et al. 2007, curve number by the water of the evaporating layer",
  {
    unit: "-",
    tolerance: 0.01,
    because: "the rule worked out, middle of dry and wet taken as the average",
    mark: "memory",
  },
  shift.inputs.depletionMm.map((de, i) => [de, shift.expected.curveNumber[i]!]),
  (depletionMm: number) =>
    movedCurveNumber(
      shift.inputs.cnDry,
      (shift.inputs.cnDry + shift.inputs.cnWet) / 2,
      shift.inputs.cnWet,
      depletionMm,
      shift.inputs.rewMm,
      shift.inputs.tewMm,
    ),
);

published(
  "NRCS 2004, NEH 630 ch. 11, degree-day melt at 2.74 mm/C/day",
  { unit: "mm", tolerance: 0.005, because: "printed to 0.01", mark: "memory" },
  [
    [-3, 0],
    [0, 0],
    [2, 5.48],
    [6, 16.44],
  ],
  (airC: number) => meltMm(100, airC, 2.74),
);

test("melt never exceeds the snow on the ground", () => expect(meltMm(3, 10, 2.74)).toBe(3));

test("a wetter topsoil never lowers the curve number, whatever the ground", () => {
  for (const row of curveNumberRows) {
    const { dry, wet } = dryAndWetCurveNumber(row.B);
    expect(dry).toBeLessThan(row.B);
    expect(wet).toBeGreaterThan(row.B);
    let last = Infinity;
    for (let de = 0; de <= 25; de += 0.5) {
      const cn = movedCurveNumber(dry, row.B, wet, de, 9, 22);
      expect(cn).toBeLessThanOrEqual(last);
      last = cn;
    }
  }
});
