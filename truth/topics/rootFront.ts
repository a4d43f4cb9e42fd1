/** Root depth by date in loose soil, moist but where told, beside published depths and paces. Depths are means over the years. */
import file from "../../data-reference/scoreboard/root-front.json" with { type: "json" };
import type { CaseAfterRun } from "../../src/answer/runs/run.ts";
import { cropSeasons, type CropRun } from "../cropRun.ts";
import type { Row, Topic } from "../row.ts";
import type { Season } from "../seasons.ts";
import { mean } from "../water.ts";

/** Sowing to emergence, ours: the published days count from emergence. */
const daysToEmerge = 7;

export const rootFront: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours() {
    const corn = await fronts({ place: "north-platte", crop: "corn", sowing: "May 5" }, [
      dayOfHeat(860, 8),
      ripe,
    ]);
    const sorghum = await fronts(manhattan("grain sorghum"), [after(20), after(60), after(90)]);
    const sunflower = await fronts(manhattan("sunflower"), [after(20), after(60), after(90)]);
    const winterWheat = await fronts({ place: "akron", crop: "winter wheat", sowing: "Sep 20" }, [
      softDough,
      ripe,
    ]);
    const [looseSpringWheat] = await fronts({ place: "pullman", crop: "spring wheat", sowing: "Apr 15" }, [
      ripe,
    ]);
    const [tribuneSorghum] = await fronts(tribune("grain sorghum"), [ripe]);
    const [tribuneSunflower] = await fronts(tribune("sunflower"), [ripe]);
    const [springWheat] = await fronts(mandan("spring wheat", "May 1"), [ripe]);
    const [canola] = await fronts(mandan("canola", "May 1"), [ripe]);
    const [pea] = await fronts(mandan("field pea", "May 1"), [ripe]);
    const [mandanSunflower] = await fronts(mandan("sunflower", "May 25"), [ripe]);
    return {
      "front-corn-860": corn[0]!,
      "front-corn-ripe": corn[1]!,
      ...numbered("front-sorghum", [20, 60, 90], sorghum),
      ...numbered("front-sunflower", [20, 60, 90], sunflower),
      "front-sorghum-tribune": tribuneSorghum!,
      "front-sunflower-tribune": tribuneSunflower!,
      "front-winter-wheat-dough": winterWheat[0]!,
      "front-winter-wheat": winterWheat[1]!,
      "front-spring-wheat-loose": looseSpringWheat!,
      "front-spring-wheat": springWheat!,
      "front-canola": canola!,
      "front-pea": pea!,
      "front-sunflower-mandan": mandanSunflower!,
    };
  },
};

type Moment = (run: CaseAfterRun, season: Season) => number;

const ripe: Moment = ({ course }) => course.maturityDay;
/** End of mid-season. */
const softDough: Moment = ({ course }) => course.stageByDay.lastIndexOf(3);
const after =
  (daysAfterEmergence: number): Moment =>
  ({ course }) =>
    Math.min(course.sowingDay + daysToEmerge + daysAfterEmergence, course.maturityDay);

/** The day on which so many degree days have passed since sowing. */
const dayOfHeat =
  (degreeDays: number, baseC: number): Moment =>
  ({ course, firstIndex }, { weather }) => {
    let [heat, day] = [0, course.sowingDay];
    while (heat < degreeDays && day < course.maturityDay) {
      const at = firstIndex + day++;
      heat += Math.max(0, (weather.tMaxC[at]! + weather.tMinC[at]!) / 2 - baseC);
    }
    return day;
  };

const manhattan = (crop: string) => ({ place: "garden-city", crop, sowing: "Jun 1" });
const tribune = (crop: string) => ({ place: "tribune", crop, sowing: "Jun 1" });
/** A field cropped every year: the water that the quick question begins with after a crop, and the winter since. */
const mandan = (crop: string, sowing: string) => ({
  place: "mandan",
  crop,
  sowing,
  start: 30,
  fallow: "9 months",
  system: "no-till" as const,
});

/** Depth of the front at each moment, m. */
async function fronts(
  run: Pick<CropRun, "place" | "crop" | "sowing"> & Partial<CropRun>,
  moments: readonly Moment[],
): Promise<number[]> {
  const seasons = await cropSeasons(
    { texture: "silt loam", start: 90, depth: "144 in", years: 15, ...run },
    (one, season) => moments.map((moment) => one.ledger.frontMm[moment(one, season)]!),
  );
  return moments.map((_, m) => mean(seasons.map((season) => season[m]!)) / 1000);
}

const numbered = (id: string, days: readonly number[], depths: readonly number[]) =>
  Object.fromEntries(days.map((day, d) => [`${id}-${day}`, depths[d]!]));
