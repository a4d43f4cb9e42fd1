import type { CropCourse } from "../../crop/course.ts";
import { longestSeasonDays } from "../../crop/stages.ts";
import type { Case } from "../../scenario/scenario.ts";
import type { Slices } from "../../soil/layers/layer.ts";
import { hinderBy } from "../../evidence/dig/hinderBy.ts";
import { type CourseCache } from "./answerCache.ts";
import { courseOf, readySoil, type ReadyCase } from "./run.ts";
import type { WeatherYears } from "./weatherYears.ts";
import type { Preparation } from "./prepare.ts";

/** More runs' soils are not worth the room they take. */
const soilsKept = 400;

/** One run's cases, cut and filled: the same for every rainfall total. */
export function readyRun(preparation: Preparation, run: number): ReadyCase[] {
  const { scenario, weatherYears, yearByRun, drawsByRun, courseCacheByCase, fullStand, soilCacheByCase } =
    preparation;
  const { sowingIndexByCase } = yearByRun[run]!;
  return scenario.cases.map((plan, c) => {
    const sowingIndex = sowingIndexByCase[c]!;
    const course = courseFrom(courseCacheByCase[c]!, plan, weatherYears, sowingIndex);
    const soils = soilCacheByCase[c]!;
    const soil = soils.get(run) ?? readySoil(plan, drawsByRun[run]!, scenario.ensemble.deepBelowMm);
    if (run < soilsKept) soils.set(run, soil);
    return {
      plan,
      course,
      firstIndex: sowingIndex - plan.fallowDays,
      startWaterMm: soil.startWaterMm,
      uptake: soil.uptake,
      slices: hinderedAsDug(preparation, c, run, soil.slices),
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
 * Where a dig decides and can be met, its draw of this run takes the place of what density or penetrometer suggest. A case that
 * was not dug and leaves that layer as it is has the same soil there, and the same draw.
 */
export function hinderedAsDug(
  { scenario, digFit, drawsByRun }: Preparation,
  c: number,
  run: number,
  slices: Slices,
): Slices {
  if (scenario.evidence?.dig?.drives !== true) return slices;
  const found = digFit();
  const place = found?.servedBy[c] ?? null;
  if (found === null || place === null) return slices;
  // The soil is cached without the dig.
  const own = { ...slices, passage: slices.passage.slice(), rootsLeft: slices.rootsLeft.slice() };
  const { openness } = drawsByRun[run]!;
  hinderBy(own, scenario.cases[c]!.layers, found.fitted, found.cases[place]!.draws[run]!, openness);
  return own;
}
