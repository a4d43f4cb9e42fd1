import type { CropCourse } from "../../crop/course.ts";
import { cropCourse } from "../../crop/cropCourse.ts";
import { InputError } from "../../problem.ts";
import { isoDate } from "../../quantity/calendar.ts";
import type { Case, RotationPlan, Scenario } from "../../scenario/scenario.ts";
import { newAnswerCache, type AnswerCache } from "../runs/answerCache.ts";
import { drawRuns, drawSlopes, type RunDraws } from "../runs/draws.ts";
import { prepare, withFullStand, type Preparation } from "../runs/prepare.ts";
import { chainCalendar, type ChainCalendar } from "./chainCalendar.ts";
import { chainYears, linksOf, settlingYears, type ChainYears } from "./chainYears.ts";

/** Everything of a scenario's chains that stands before the first link. */
export interface ChainPreparation {
  readonly scenario: Scenario;
  readonly rotation: RotationPlan;
  /** Of the single seasons, with weather long enough for the chains. */
  readonly preparation: Preparation;
  /** By phase: which entry of the rotation stands in the first year. */
  readonly calendarByPhase: readonly ChainCalendar[];
  readonly chains: readonly ChainYears[];
  /** A soil is a soil: one draw for all years of a chain. */
  readonly drawsByChain: readonly RunDraws[];
  /** By entry of the rotation and year of all chains, counted on. */
  readonly slopesByEntry: readonly Float64Array[];
  /** Years of all chains before each one. */
  readonly yearsBefore: readonly number[];
  /** The crop of an entry in a case, through a link; worked out once. */
  readonly courseOf: (entry: number, c: number, firstIndex: number, sowingIndex: number) => CropCourse;
  /** The same of the first case with a full stand; null where its own is one. */
  readonly fullStandCourseOf: (entry: number, firstIndex: number, sowingIndex: number) => CropCourse | null;
}

/**
 * @param cache of an earlier preparation, where there is one
 * @throws InputError where the weather is too short
 */
export function prepareChains(
  scenario: Scenario,
  rotation: RotationPlan,
  cache: AnswerCache = newAnswerCache(),
): ChainPreparation {
  const { ensemble, weather } = scenario;
  const { entries, warmUpYears, pathYears } = rotation;
  // Two turns of the rotation lie before all phases have a crop whose harvest begins a link.
  const before = weather.source.kind === "record" ? 0 : warmUpYears + 2 * entries.length;
  const longer = { ...scenario, ensemble: { ...ensemble, years: ensemble.years + before } };
  const preparation = prepare(longer, cache);
  const { weather: days, workOut } = preparation.weatherYears;
  const calendarByPhase = entries.map((_, phase) => chainCalendar(entries, days, phase));
  const chains = chainYears(calendarByPhase, ensemble.years, warmUpYears, pathYears);
  if (chains.length === 0) refuseShort(rotation, days);
  const yearsBefore: number[] = [];
  let years = 0;
  for (const { from, to } of chains) {
    yearsBefore.push(years);
    years += to - from + 1;
  }
  const courses = new Map<string, CropCourse>();
  const courseThrough = (plan: Case, key: string, firstIndex: number, sowingIndex: number): CropCourse => {
    const place = `${key} ${firstIndex} ${sowingIndex}`;
    const known = courses.get(place) ?? cropCourse(plan.crop, days, firstIndex, sowingIndex);
    courses.set(place, known);
    return known;
  };
  for (const calendar of calendarByPhase)
    for (const chain of chains)
      for (const { firstIndexByCase, maturityIndexByCase } of linksOf(calendar, chain))
        workOut(Math.min(...firstIndexByCase), Math.max(...maturityIndexByCase) + 1);
  const fullByEntry = entries.map((entry) => (entry === null ? null : withFullStand(entry.cases[0]!)));
  return {
    scenario,
    rotation,
    preparation,
    calendarByPhase,
    chains,
    drawsByChain: drawRuns(chains.length, ensemble, scenario.yieldLine),
    slopesByEntry: entries.map((entry) =>
      entry === null
        ? new Float64Array(0)
        : drawSlopes(years, ensemble.seed, entry.yieldLine, entry.isAsked ? [] : [entry.crop]),
    ),
    yearsBefore,
    courseOf(entry, c, firstIndex, sowingIndex) {
      const { cases } = entries[entry]!;
      // Cases of one crop share its courses.
      const same = cases.findIndex(({ crop }) => crop === cases[c]!.crop);
      return courseThrough(cases[c]!, `${entry} ${same}`, firstIndex, sowingIndex);
    },
    fullStandCourseOf(entry, firstIndex, sowingIndex) {
      const full = fullByEntry[entry] ?? null;
      return full === null ? null : courseThrough(full, `${entry} full`, firstIndex, sowingIndex);
    },
  };
}

function refuseShort({ said, entries }: RotationPlan, days: { firstDay: number; days: number }): never {
  throw new InputError([
    {
      field: "weather",
      expected: `a record of at least ${settlingYears + 3 * entries.length + 2} whole years for a rotation (${said})`,
      found: `${isoDate(days.firstDay)} to ${isoDate(days.firstDay + days.days - 1)}`,
      mend: "give a longer record, or leave rotation out and ask of one season",
    },
  ]);
}
