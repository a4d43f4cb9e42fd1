import type { CropCourse } from "../../crop/course.ts";
import { longestSeasonDays } from "../../crop/stages.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import { statedDepthMm } from "../../scenario/statedDepth.ts";
import type { Slices } from "../../soil/layers/layer.ts";
import { hinderBy, noSlowerThan } from "../../evidence/dig/hinderBy.ts";
import { type CourseCache } from "./answerCache.ts";
import { courseOf, readySoil, type ReadyCase } from "./run.ts";
import type { WeatherYears } from "./weatherYears.ts";
import type { Preparation } from "./prepare.ts";

/** More runs' soils are not worth the room they take. */
const soilsKept = 400;

/**
 * How a dig goes into the runs: as the scenario decides, with roots that may do either going on slowly; with these stopped where
 * they were dug; with its fit whatever the scenario decides; or not at all, so that density or penetrometer decide.
 */
export type DigUse = "as decided" | "stopped" | "fitted" | "not";

/** One run's cases, cut and filled: the same for every rainfall total. */
export function readyRun(preparation: Preparation, run: number, use: DigUse = "as decided"): ReadyCase[] {
  const { scenario, weatherYears, yearByRun, drawsByRun, courseCacheByCase, fullStand, soilCacheByCase } =
    preparation;
  const { sowingIndexByCase } = yearByRun[run]!;
  return scenario.cases.map((plan, c) => {
    const sowingIndex = sowingIndexByCase[c]!;
    const course = courseFrom(courseCacheByCase[c]!, plan, weatherYears, sowingIndex);
    const soils = soilCacheByCase[c]!;
    const soil = soils.get(run) ?? readySoil(plan, drawsByRun[run]!, scenario.ensemble.deepBelowMm);
    if (run < soilsKept) soils.set(run, soil);
    const { slices, stopMm } = asDug(preparation, c, run, soil.slices, use);
    return {
      plan,
      course,
      firstIndex: sowingIndex - plan.fallowDays,
      startWaterMm: soil.startWaterMm,
      uptake: soil.uptake,
      slices,
      stopMm,
      fullStandCourse:
        c > 0 || fullStand === null
          ? null
          : courseFrom(fullStand.courseCache, fullStand.plan, weatherYears, sowingIndex),
    };
  });
}

function courseFrom(
  courseCache: CourseCache,
  plan: Case,
  weatherYears: WeatherYears,
  sowingIndex: number,
): CropCourse {
  const course = courseCache.get(sowingIndex) ?? workedOutCourse(plan, weatherYears, sowingIndex);
  courseCache.set(sowingIndex, course);
  return course;
}

/** The weather of a run is worked out first, for the course and for the run itself. */
function workedOutCourse(plan: Case, { weather, workOut }: WeatherYears, sowingIndex: number): CropCourse {
  workOut(
    sowingIndex - plan.fallowDays,
    sowingIndex + longestSeasonDays(plan.crop, weather.hasTemperature) + 1,
  );
  return courseOf(plan, weather, sowingIndex);
}

/**
 * Where a dig decides, its draw of this run takes the place of what density or penetrometer suggest, and roots that stopped stay
 * where they were dug. A case that was not dug and leaves that layer as it is has the same soil there, and the same draw.
 */
export function asDug(
  { scenario, digFit, drawsByRun }: Preparation,
  c: number,
  run: number,
  slices: Slices,
  use: DigUse = "as decided",
): Required<Pick<ReadyCase, "slices" | "stopMm">> {
  const dig = scenario.evidence?.dig ?? null;
  if (dig === null || use === "not" || (use === "as decided" && !dig.drives)) return { slices, stopMm: null };
  const found = digFit();
  const place = found?.servedBy[c] ?? null;
  const fit = place === null ? null : (found?.cases[place] ?? null);
  if (found === null || fit === null) return { slices, stopMm: null };
  // The soil is cached without the dig.
  const own = { ...slices, passage: slices.passage.slice(), rootsLeft: slices.rootsLeft.slice() };
  const { openness } = drawsByRun[run]!;
  hinderBy(own, scenario.cases[c]!.layers, found.fitted, fit.draws[run]!, openness);
  const { reading } = fit.told;
  if (reading === "slowed" || (reading === "either" && use !== "stopped"))
    return { slices: own, stopMm: null };
  noSlowerThan(own, slices);
  return { slices: own, stopMm: isRootedAlike(scenario, c, place!) ? fit.stop.draws[run]! : null };
}

/** Roots that were not dug stop where those of another case do only if nothing else is said of their depth. */
function isRootedAlike({ cases }: Scenario, c: number, dug: number): boolean {
  const [first] = cases;
  const { rooting } = cases[c]!;
  if (rooting.kind === "grown") return true;
  return statedDepthMm(rooting, first.rooting) === statedDepthMm(cases[dug]!.rooting, first.rooting);
}
