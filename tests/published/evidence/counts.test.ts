import checks from "../../../data-reference/counts-checks.json";
import weights from "../../../data-reference/kernel-weights.json";
import { describe, expect, test } from "vitest";
import { bushelsPerAcre, poundsPerAcre, usOfKgPerHa } from "../../../src/crop/yield/yieldLine.ts";
import type { CountedSpot } from "../../../src/evidence/counts/counts.ts";
import { spotYieldKgPerHa } from "../../../src/evidence/counts/countsAnswer.ts";
import { countedAreaM2, thousandthLengthMm } from "../../../src/evidence/counts/countsArea.ts";
import { kernelsOfMeanHead } from "../../../src/evidence/counts/countsKernels.ts";
import { moistureFactor, tradeMoistureOf } from "../../../src/evidence/counts/countsMoisture.ts";
import {
  headMultiplier,
  seedSizeMultiplier,
  standMultiplier,
  type Centre,
  type SeedSize,
} from "../../../src/evidence/counts/countsSunflower.ts";
import {
  usualGrainPerHead,
  usualKernelWeight,
  weightOfKernelsPerBushel,
  weightOfKernelsPerPound,
} from "../../../src/evidence/counts/countsWeight.ts";
import { published } from "../published.ts";
import { closenessOf, recordsOf, sourceOf } from "../weather/records.ts";

type Row = readonly (number | string)[];
const { take, rows, noneLeft } = recordsOf([
  ...checks.rowLengths,
  ...checks.corn,
  ...checks.others,
  ...checks.sunflower,
  ...checks.moisture,
]);

const mmPerInch = 25.4;
const mmPerFoot = 304.8;
const m2PerAcre = 4046.8564224;
const gPerPound = 453.59237;

function check(id: string, ours: (...inputs: never[]) => number): void {
  const record = take<Row[], number[]>(id);
  const table = record.inputs.map((row, i) => [...row, record.expected[i]!]);
  published(`${sourceOf(record)}: ${record.what}`, closenessOf(record), table, ours);
}

for (const { id } of rows((record) => "rowWidthIn" in record.inputs)) {
  const record = take<{ rowWidthIn: number }, number>(id);
  published(
    `${sourceOf(record)}: ${record.what}`,
    closenessOf(record),
    [[record.inputs.rowWidthIn, record.expected]],
    (widthIn: number) => thousandthLengthMm(widthIn * mmPerInch) / mmPerFoot,
  );
}

/** Spot counted over a thousandth of an acre of 30-in rows. */
function inThousandth(heads: number, kernelsPerHead: number): CountedSpot {
  const width = 30 * mmPerInch;
  const areaM2 = countedAreaM2(thousandthLengthMm(width), width, 1);
  return { areaM2, heads, per: { kind: "kernels", kernelsPerHead, secondEarKernels: 0, oddRows: 0 } };
}

/** Spot counted over a foot of one row. */
function inFoot(heads: number, kernelsPerHead: number, rowIn: number): CountedSpot {
  const areaM2 = countedAreaM2(mmPerFoot, rowIn * mmPerInch, 1);
  return { areaM2, heads, per: { kind: "kernels", kernelsPerHead, secondEarKernels: 0, oddRows: 0 } };
}

const bushels = (spot: CountedSpot, gram: number, lbPerBushel: number) =>
  usOfKgPerHa(spotYieldKgPerHa(spot, gram, 1), bushelsPerAcre(lbPerBushel));

for (const { id } of checks.corn)
  check(id, (ears: number, kernelRows: number, kernels: number, thousandPerBushel: number) => {
    const weight = weightOfKernelsPerBushel(thousandPerBushel * 1000, (56 * gPerPound) / 1000);
    return bushels(inThousandth(ears, kernelsOfMeanHead([kernelRows], [kernels])), weight, 56);
  });

for (const id of ["YC-S1", "cnt-sorghum-test"])
  check(id, (heads: number, seeds: number, perPound: number) =>
    bushels(inThousandth(heads, seeds), weightOfKernelsPerPound(perPound), 56),
  );

check("YC-W1", (headsIn3Ft: number, spikelets: number, perSpikelet: number, rowIn: number) =>
  bushels(inFoot(headsIn3Ft / 3, spikelets * perSpikelet, rowIn), weightOfKernelsPerPound(20451), 60),
);
// The bulletin's factor turned about: our weight of so many kernels per pound must give it back.
check("YC-W2", (factor: number) => {
  const gram = weightOfKernelsPerPound(20451);
  const ours = bushels(inFoot(1 / 3, 1, 1), gram, 60);
  return (20451 * ours) / factor;
});
check("YC-W3", (headsPerFoot: number, kernels: number, rowIn: number) =>
  bushels(
    inFoot(headsPerFoot, kernels, rowIn),
    weightOfKernelsPerBushel(1_089_000, (60 * gPerPound) / 1000),
    60,
  ),
);
check("YC-W5", (headsPerFoot: number, rowIn: number, year: "poorG" | "usualG" | "goodG") => {
  const weight = usualGrainPerHead("winter wheat")!;
  const gram = { poorG: weight.low, usualG: weight.middle, goodG: weight.high }[year];
  const areaM2 = countedAreaM2(mmPerFoot, rowIn * mmPerInch, 1);
  return bushels({ areaM2, heads: headsPerFoot, per: { kind: "heads" } }, gram, 60);
});
check("YC-W7", (headsPerFt2: number, kernels: number, perPound: number) => {
  const areaM2 = (mmPerFoot / 1000) ** 2;
  const per = { kind: "kernels", kernelsPerHead: kernels, secondEarKernels: 0, oddRows: 0 } as const;
  return bushels({ areaM2, heads: headsPerFt2, per }, weightOfKernelsPerPound(perPound), 60);
});

check("YC-U1", (plants: number, headIn: number, size: SeedSize, filledShare: number, centre: Centre) => {
  const per = { kind: "sunflower", heads: { diameterMm: headIn * mmPerInch, filledShare, centre } } as const;
  const spot = { areaM2: m2PerAcre, heads: plants, per };
  return usOfKgPerHa(spotYieldKgPerHa(spot, seedSizeMultiplier(size), 1), poundsPerAcre);
});
check("YC-U2", (headIn: number) => headMultiplier(headIn * mmPerInch));
check("YC-U3", (plants: number) => standMultiplier(plants / m2PerAcre));

check(
  "tw-convert",
  (lb: number, percent: number, tradePercent: number, lbPerBushel: number) =>
    (lb * moistureFactor(percent / 100, tradePercent / 100)) / lbPerBushel,
);
for (const { id } of checks.moisture.filter((record) => record.id !== "tw-convert"))
  check(
    id,
    (lb: number, tradePercent: number, percent: number) =>
      lb / moistureFactor(percent / 100, tradePercent / 100),
  );

describe("what kernels weigh where they are not weighed (each with its source in kernel-weights.json)", () => {
  test("corn: 90 thousand kernels per bushel, 75 to 110 over all seasons", () => {
    const gram = (thousand: number) => (56 * gPerPound) / (thousand * 1000);
    const { low, middle, high } = usualKernelWeight("corn", null)!;
    expect([low, middle, high].map((g) => g.toFixed(9))).toEqual(
      [110, 90, 75].map((k) => gram(k).toFixed(9)),
    );
  });
  test.each([
    ["excellent", 75, 80],
    ["average", 85, 90],
    ["stressed", 90, 95],
    ["severe", 100, 110],
  ] as const)("corn in %s seasons: %d to %d thousand (extension pages, read)", (season, few, many) => {
    const { low, high } = usualKernelWeight("corn", season)!;
    expect((56 * gPerPound) / high / 1000).toBeCloseTo(few, 9);
    expect((56 * gPerPound) / low / 1000).toBeCloseTo(many, 9);
  });
  test("wheat 13,000 to 16,000 per pound (OSU PSS-2149, read), sorghum 12,000 to 18,000 (memory)", () => {
    const perPound = (crop: string) => {
      const { low, high } = usualKernelWeight(crop, null)!;
      return [gPerPound / high, gPerPound / low].map(Math.round);
    };
    expect(perPound("winter wheat")).toEqual([13_000, 16_000]);
    expect(perPound("spring wheat")).toEqual([13_000, 16_000]);
    expect(perPound("grain sorghum")).toEqual([12_000, 18_000]);
  });
  test("every row has its mark and source", () => {
    const all = [
      ...weights.kernelsPerBushel,
      ...weights.kernelsPerPound,
      ...weights.grainPerHead,
      ...weights.tradeMoisture,
      ...weights.sunflower,
    ];
    for (const { mark, source, locator } of all) {
      expect(["read", "memory"]).toContain(mark);
      expect(source).not.toBe("");
      expect(locator).not.toBe("");
    }
  });
  test.each([
    ["corn", 0.155],
    ["winter wheat", 0.135],
    ["barley", 0.145],
    ["sunflower", 0.1],
    ["canola", 0.085],
    ["grain sorghum", 0.14],
  ])("trade moisture of %s: %d", (crop, share) => {
    expect(tradeMoistureOf(crop)?.share).toBeCloseTo(share, 12);
  });
});

noneLeft();
