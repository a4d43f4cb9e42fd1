import { describe, expect, test } from "vitest";
import table from "../../../data-reference/crop-root-front.json";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import { borgGrimesShare } from "../../../src/crop/potentialDescent.ts";
import { seasonClock } from "../../../src/crop/stages.ts";
import { lindon, normalWeather, sowingIndexOf, waggaWagga, weatherOf } from "../../unit/crop/siteWeather.ts";
import { published } from "../published.ts";
import { closenessOf, markOf, recordsOf, sourceOf } from "../weather/records.ts";

const { take, noneLeft } = recordsOf([...table.curve, ...table.paces, ...table.heat, ...table.australia]);

const curve = take<number[][], number[]>("root-borg-grimes");
published(
  `${sourceOf(curve)}: ${curve.what}`,
  closenessOf(curve),
  curve.inputs.map((row, i) => [...row, curve.expected[i]!]),
  borgGrimesShare,
);

const rate = take<number[][], number[]>("root-borg-grimes-rate");
published(
  `${sourceOf(rate)}: ${rate.what}, by the crop's daily descent`,
  closenessOf(rate),
  rate.inputs.map((row, i) => [...row, rate.expected[i]!]),
  (maxRootDepthMm: number, days: number) => {
    const stages = [days * 0.2, days * 0.3, days * 0.3, days * 0.2] as const;
    const plan = {
      ...defaultPlan(findCrop("corn")),
      clock: "days",
      stageLengths: stages,
      maxRootDepthMm,
      descent: { shape: "sine", endStage: 4 },
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

for (const id of [
  "rfv-sorghum-kansas",
  "rfv-sunflower-kansas",
  "rfv-sorghum-late",
  "rfv-sunflower-late",
  "rfv-maize-iowa",
]) {
  const pace = take<[string, number | null, number | null], number>(id);
  const [crop, from, to] = pace.inputs;
  published(`${sourceOf(pace)}: ${pace.what}`, closenessOf(pace), [[crop, pace.expected]], (name: string) => {
    const descent = descentAtLindon(name);
    if (from === null || to === null) return Math.max(...descent);
    return descent.slice(from, to).reduce((sum, mm) => sum + mm, 0) / (to - from);
  });
}

const wheatByHeat = take<[string, null, null], number>("rfv-wheat-thermal");
published(
  `${sourceOf(wheatByHeat)}: ${wheatByHeat.what}`,
  closenessOf(wheatByHeat),
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

const mildWinter = take<string[], number[]>("rfv-wheat-australia");
describe(`${sourceOf(mildWinter)} (${markOf(mildWinter)}): pace of wheat roots to flowering in a mild winter`, () => {
  const { expected, tolerance, because } = mildWinter;
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

noneLeft();
