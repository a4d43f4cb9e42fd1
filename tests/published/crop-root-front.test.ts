import { describe, expect, test } from "vitest";
import table from "../../data-reference/crop-root-front.json";
import { cropCourse } from "../../src/crop/cropCourse.ts";
import { defaultPlan, findCrop } from "../../src/crop/crops.ts";
import { borgGrimesShare } from "../../src/crop/potentialDescent.ts";
import { seasonClock } from "../../src/crop/stages.ts";
import { lindon, normalWeather, sowingIndexOf, waggaWagga, weatherOf } from "../unit/crop/siteWeather.ts";
import { published } from "./published.ts";

const [curve, rate] = table.curve as unknown as { inputs: number[][]; expected: number[]; because: string }[];

published(
  "Borg & Grimes 1986, the sine of rooting depth",
  { unit: "-", tolerance: 0.0001, because: curve!.because, mark: "memory" },
  curve!.inputs.map((row, i) => [...row, curve!.expected[i]!]),
  borgGrimesShare,
);

published(
  "Borg & Grimes 1986, steepest advance, by the crop's daily descent",
  { unit: "mm/day", tolerance: 0.01, because: rate!.because, mark: "memory" },
  rate!.inputs.map((row, i) => [...row, rate!.expected[i]!]),
  (maxRootDepthMm: number, days: number) => {
    const stages = [days * 0.2, days * 0.3, days * 0.3, days * 0.2] as const;
    const plan = {
      ...defaultPlan(findCrop("corn")),
      clock: "days",
      stageLengths: stages,
      maxRootDepthMm,
    } as const;
    return Math.max(
      ...cropCourse(
        plan,
        weatherOf(() => 20),
        0,
        0,
      ).descentMmByDay,
    );
  },
);

const descentAtLindon = (crop: string): Float64Array => {
  const plan = defaultPlan(findCrop(crop));
  const weather = normalWeather(lindon);
  const sowing = sowingIndexOf(plan, weather);
  return cropCourse(plan, weather, sowing, sowing).descentMmByDay;
};

for (const { what, source, unit, tolerance, because, inputs, expected } of table.paces) {
  const [crop, from, to] = inputs as [string, number | null, number | null];
  published(
    `${source}: ${what}`,
    { unit, tolerance, because, mark: "read" },
    [[crop, expected]],
    (name: string) => {
      const descent = descentAtLindon(name);
      if (from === null || to === null) return Math.max(...descent);
      return descent.slice(from, to).reduce((sum, mm) => sum + mm, 0) / (to - from);
    },
  );
}

const wheatByHeat = table.heat[0]!;
published(
  `${wheatByHeat.source}: ${wheatByHeat.what}`,
  { unit: wheatByHeat.unit, tolerance: wheatByHeat.tolerance, because: wheatByHeat.because, mark: "read" },
  [
    ["winter wheat", wheatByHeat.expected],
    ["spring wheat", wheatByHeat.expected],
  ],
  (crop: string) => {
    const plan = defaultPlan(findCrop(crop));
    const weather = normalWeather(lindon);
    const sowing = sowingIndexOf(plan, weather);
    const { progressByDay } = seasonClock(plan, weather, sowing);
    const { descentMmByDay } = cropCourse(plan, weather, sowing, sowing);
    let depth = plan.sowingDepthMm;
    const depths = Array.from(descentMmByDay, (mm) => (depth += mm));
    const fifth = depths.findIndex((mm) => mm >= 0.2 * plan.maxRootDepthMm);
    const most = depths.findIndex((mm) => mm >= 0.8 * plan.maxRootDepthMm);
    return (depths[most]! - depths[fifth]!) / (progressByDay[most]! - progressByDay[fifth]!);
  },
);

describe("Kirkegaard & Lilley 2007 (read): pace of wheat roots to flowering in a mild winter", () => {
  const { expected, tolerance, because } = table.australia[0]!;
  test(`within ${Math.min(...expected)} to ${Math.max(...expected)} mm/day, give or take ${tolerance}: ${because}`, () => {
    const plan = { ...defaultPlan(findCrop("spring wheat")), sowing: { month: 5, day: 15 } };
    const weather = normalWeather(waggaWagga);
    const sowing = sowingIndexOf(plan, weather);
    const { descentMmByDay, floweringDay } = cropCourse(plan, weather, sowing, sowing);
    const days = floweringDay + 1;
    const pace = descentMmByDay.slice(0, days).reduce((sum, mm) => sum + mm, plan.sowingDepthMm) / days;
    expect(pace).toBeGreaterThanOrEqual(Math.min(...expected) - tolerance);
    expect(pace).toBeLessThanOrEqual(Math.max(...expected) + tolerance);
  });
});
