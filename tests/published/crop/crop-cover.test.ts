import { describe, expect, test } from "vitest";
import table from "../../../data-reference/crop-cover.json";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { cropDefaults, defaultPlan } from "../../../src/crop/crops.ts";
import { groundCover } from "../../../src/crop/groundCover.ts";
import { sowingIndexOf, weatherOf } from "../../unit/crop/siteWeather.ts";
import { published } from "../published.ts";
import { closenessOf, markOf, recordsOf } from "../weather/records.ts";

const { take, noneLeft } = recordsOf(table.records);
const cotton = take<[number, number, number][], number[]>("fao56-ex32-cover");
const table21 = take<string[], [number, number][]>("fao56-table21");

published(
  `FAO-56, ${cotton.locator}: ${cotton.what}`,
  closenessOf(cotton),
  cotton.inputs.map((row, i) => [...row, cotton.expected[i]!]),
  groundCover,
);

/** In days, so that the middle of a stage is its middle. */
const onDays = (plan: CropPlan): CropPlan => ({
  ...plan,
  clock: "days",
  stageLengths: plan.stageDaysFallback,
  dormantBelowC: null,
  springFrom: null,
});

const coveringCrops = cropDefaults.map(defaultPlan).filter((plan) => plan.kcbMid >= 1.1);

describe(`FAO-56, ${table21.locator}: cover by stage (${markOf(table21)}; ${table21.because})`, () => {
  test("there are such crops", () => expect(coveringCrops.length).toBeGreaterThanOrEqual(5));
  describe.each(coveringCrops.map(onDays))("$name", (plan) => {
    const standard = weatherOf(() => 15);
    const { coverByDay } = cropCourse(
      plan,
      standard,
      0,
      sowingIndexOf({ ...plan, sowing: { month: 1, day: 1 } }, standard),
    );
    test.each(table21.inputs.map((stage, i) => [stage, ...table21.expected[i]!, i] as const))(
      "%s: %d to %d",
      (_, least, most, stage) => {
        const before = plan.stageLengths.slice(0, stage).reduce((a, b) => a + b, 0);
        const cover = coverByDay[Math.round(before + plan.stageLengths[stage]! / 2) - 1]!;
        expect(cover).toBeGreaterThanOrEqual(least);
        expect(cover).toBeLessThanOrEqual(most);
      },
    );
  });
});

noneLeft();
