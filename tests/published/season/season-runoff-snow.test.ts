/** Runoff and snow against the handbooks. Rows, sources and tolerances: data-reference/runoff-snow-checks.json. */
import { expect, test } from "vitest";
import checks from "../../../data-reference/runoff-snow-checks.json" with { type: "json" };
import {
  curveNumberFor,
  curveNumberRows,
  dryAndWetCurveNumber,
  fallowCurveNumber,
  type GroundCover,
  movedCurveNumber,
} from "../../../src/season/curveNumber.ts";
import { runoffMm } from "../../../src/season/runoff.ts";
import { meltMm } from "../../../src/season/snow.ts";
import { published } from "../published.ts";
import { closenessOf, recordsOf, sourceOf } from "../weather/records.ts";

const { take, noneLeft } = recordsOf(checks);

const runoff = take<{ rainIn: number[]; curveNumber: number[] }, { runoffIn: number[][] }>(
  "cn-runoff-depth-table",
);
published(
  `${sourceOf(runoff)}: runoff`,
  closenessOf(runoff),
  runoff.inputs.rainIn.flatMap((rain, i) =>
    runoff.inputs.curveNumber.map((cn, j) => [rain, cn, runoff.expected.runoffIn[i]![j]!]),
  ),
  (rainIn: number, cn: number) => runoffMm(rainIn * 25.4, cn) / 25.4,
);

const groups = ["A", "B", "C", "D"] as const;
const agricultural = take<[string, string, string][], number[][]>("cn-table-2-2b");
published(
  `${sourceOf(agricultural)}: ${agricultural.what}`,
  closenessOf(agricultural),
  agricultural.inputs.flatMap((ground, i) =>
    groups.map((group, g) => [...ground, group, agricultural.expected[i]![g]!]),
  ),
  (cover: GroundCover, treatment: string, condition: "poor" | "good", group: (typeof groups)[number]) =>
    curveNumberFor(cover, treatment, condition, group)!,
);

for (const id of ["cn-table-10-1", "cn-table-10-1-fives", "cn-chow"]) {
  const record = take<{ curveNumber: number[] }, { dry: number[]; wet: number[] }>(id);
  for (const wetness of ["dry", "wet"] as const) {
    published(
      `${sourceOf(record)}: ${record.what}; ${wetness}`,
      closenessOf(record),
      record.inputs.curveNumber.map((cn, i) => [cn, record.expected[wetness][i]!]),
      (cn: number) => dryAndWetCurveNumber(cn)[wetness],
    );
  }
}

const underResidue = take<{ curveNumber: number[]; residueCover: number[] }, { curveNumber: number[][] }>(
  "steichen1983-residue",
);
published(
  `${sourceOf(underResidue)}: ${underResidue.what}`,
  closenessOf(underResidue),
  underResidue.inputs.curveNumber.flatMap((bare, i) =>
    underResidue.inputs.residueCover.map((cover, j) => [
      bare,
      cover,
      underResidue.expected.curveNumber[i]![j]!,
    ]),
  ),
  fallowCurveNumber,
);
test("more residue never raises the curve number of fallow", () => {
  let last = Infinity;
  for (let cover = 0; cover <= 1; cover += 0.05) {
    const cn = fallowCurveNumber(86, cover);
    expect(cn).toBeLessThan(last);
    last = cn;
  }
});

const shift = take<
  { rewMm: number; tewMm: number; cnDry: number; cnWet: number; depletionMm: number[] },
  { curveNumber: number[] }
>("cn-shift-by-topsoil");
published(
  `${sourceOf(shift)}: ${shift.what}`,
  closenessOf(shift),
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

const melt = take<{ coefficientMmPerCDay: number; airTemperatureC: number[] }, { meltMm: number[] }>(
  "neh11-degree-day",
);
published(
  `${sourceOf(melt)}: ${melt.what}`,
  closenessOf(melt),
  melt.inputs.airTemperatureC.map((airC, i) => [airC, melt.expected.meltMm[i]!]),
  (airC: number) => meltMm(100, airC, melt.inputs.coefficientMmPerCDay),
);

noneLeft();

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
