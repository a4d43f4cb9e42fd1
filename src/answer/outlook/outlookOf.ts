import { stageNames } from "../../crop/course.ts";
import type { Units } from "../../quantity/kinds.ts";
import { isoDate } from "../../quantity/calendar.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { medianOf, spreadOf, type Spread } from "../../statistics/quantiles.ts";
import { comparisonOf } from "../comparison/compare.ts";
import type { Ensemble } from "../runs/ensemble.ts";
import type { CaseNow, Outlook } from "./outlook.ts";
import type { OutlookRuns } from "./outlookRuns.ts";
import { daysItLasts, usualDemand } from "./usualDemand.ts";

/** The usual demand is told as the mean of so many days. */
const demandDays = 7;

/**
 * Boils the runs of an outlook down to the answer.
 *
 * @param scenario as it was given
 */
export function outlookOf(runs: OutlookRuns, scenario: Scenario, units: Units): Outlook {
  const { season, ensemble, stateByCase, takenUpAfterMmByCase } = runs;
  const answer = comparisonOf(withMeasuredWater(runs), units, "without evidence");
  const years = season.others.map(({ year }) => year);
  const atRain = ensemble.byRainTotal[0]!;
  const inRoots = stateByCase.map(({ inRootsMm }) => inRootsMm);
  return {
    format: "rootfront-outlook/1",
    scenario: answer.scenario,
    invented: answer.invented,
    date: isoDate(season.day),
    otherYears: { count: years.length, first: years[0]!, last: years.at(-1)! },
    now: scenario.cases.map((_, c) => caseNow(runs, c)),
    end: answer.cases.map((one, c) => ({
      name: one.name,
      takenUpMm: spreadOf(atRain.cases[c]!.byRun.transpirationMm),
      takenUpFromNowMm: spreadOf(takenUpAfterMmByCase[c]!),
      finalRootDepthMm: one.finalRootDepthMm,
      yield: one.yield,
    })),
    differences: answer.differences.map(({ from, to, onlyRootsDiffer, extraWaterUsedMm, extraYield }, d) => ({
      from,
      to,
      onlyRootsDiffer,
      extraInRootsNowMm: against(inRoots, d + 1),
      extraWaterFromNowMm: against(takenUpAfterMmByCase, d + 1),
      extraWaterUsedMm,
      extraYield,
    })),
    method: answer.method,
    defaults: answer.defaults,
    notes: [...answer.notes, ...notesOf(runs, scenario)],
    cautions: cautionsOf(answer.cautions, runs, scenario),
  };
}

/** What is said of the soil's water is said of the water measured on the way, where it was. */
function withMeasuredWater({ ensemble, foundByCase }: OutlookRuns): Ensemble {
  const { scenario } = ensemble.preparation;
  const [first, ...others] = scenario.cases.map((plan, c) => {
    const water = scenario.outlook?.waterByCase[c] ?? null;
    return water === null || foundByCase[c]!.waterDay === null ? plan : { ...plan, startingWater: water };
  });
  const cases: Scenario["cases"] = [first!, ...others];
  return { ...ensemble, preparation: { ...ensemble.preparation, scenario: { ...scenario, cases } } };
}

/** A case against the first, run by run. */
function against(byCase: readonly Float64Array[], c: number): Spread {
  return spreadOf(byCase[c]!.map((value, run) => value - byCase[0]![run]!));
}

function caseNow(runs: OutlookRuns, c: number): CaseNow {
  const { season, ensemble, stateByCase, foundByCase, byYear, lastDayByCase } = runs;
  const { name, layers, crop, fallowDays } = ensemble.preparation.scenario.cases[c]!;
  const states = stateByCase[c]!;
  const found = foundByCase[c]!;
  const lastDay = lastDayByCase[c]!;
  const courses = byYear.map(({ courses: all, weather }) => ({ course: all[c]!, weather }));
  const demandMm = usualDemand(courses, season.sowingIndexByCase[c]! - fallowDays, lastDay);
  const near = demandMm.subarray(0, demandDays);
  const available = spreadOf(states.inRootsMm);
  return {
    name,
    crop: crop.name,
    sown: isoDate(season.day - (lastDay - fallowDays)),
    stage: stageNames[courses[0]!.course.stageByDay[lastDay]!]!,
    dayOfSeason: lastDay - fallowDays + 1,
    daysToMaturity: spreadOf(Float64Array.from(courses, ({ course }) => course.maturityDay - lastDay)),
    rootFrontMm: spreadOf(states.frontMm),
    dugOn: found.dug.length === 0 ? null : isoDate(found.dug.at(-1)!.day),
    waterMeasuredOn: found.waterDay === null ? null : isoDate(found.waterDay),
    takenUpSoFarMm: medianOf(states.takenUpMm),
    demandMetSoFar: medianOf(
      states.takenUpMm.map((mm, run) => (states.demandMm[run]! > 0 ? mm / states.demandMm[run]! : 1)),
    ),
    availableInRootsMm: available,
    availableBelowRootsMm: spreadOf(states.belowRootsMm),
    layers: layers.map(({ name: layer, topMm, bottomMm }, l) => ({
      name: layer,
      topMm,
      bottomMm,
      availableMm: medianOf(states.layers[l]!.availableMm),
      inRootsMm: medianOf(states.layers[l]!.inRootsMm),
    })),
    usualDemandMmPerDay: near.length === 0 ? 0 : near.reduce((sum, mm) => sum + mm, 0) / near.length,
    lastsDays: {
      p10: daysItLasts(available.p10, demandMm),
      p50: daysItLasts(available.p50, demandMm),
      p90: daysItLasts(available.p90, demandMm),
    },
  };
}

/** What of the scenario the outlook leaves out of account, and what it takes from the field. */
function notesOf(
  { season, foundByCase }: OutlookRuns,
  { weather, outlook, cases, money, rowPositions }: Scenario,
): string[] {
  const measured = outlook?.waterByCase.some(
    (water, c) => water !== null && foundByCase[c]!.waterDay === null,
  );
  const dug = foundByCase.flatMap(({ dug: days }, c) =>
    days.map(
      ({ day, plants }) =>
        `"${cases[c]!.name}": from ${isoDate(day)} on the root front stands where ${plants === 1 ? "the plant" : `the middle one of ${plants} plants`} dug that day had it.`,
    ),
  );
  return [
    ...(weather.rainTotalsMm.length > 0
      ? ["The rainfall total asked for is left out: the outlook takes the record's rain as it came."]
      : []),
    ...(measured === true
      ? [
          `The water measured on ${isoDate(outlook!.day!)} is left out: that day does not lie between the start of the run and ${isoDate(season.day)}.`,
        ]
      : []),
    ...dug,
    ...(money !== null || rowPositions !== null
      ? ["An outlook leaves money and row positions out: compare tells of them."]
      : []),
  ];
}

const digSafety =
  "Before digging or coring have buried lines located; a pit wall can fall in, so follow the local excavation rules.";

function cautionsOf(
  ofComparison: readonly string[],
  { season, foundByCase }: OutlookRuns,
  { outlook, evidence }: Scenario,
): string[] {
  const waters = (outlook?.waterByCase ?? []).filter((_, c) => foundByCase[c]!.waterDay !== null);
  const told = waters.map((water) => JSON.stringify(water));
  const shared =
    new Set(told).size < told.length
      ? [
          "Water measured in one stand is not that of another: where the cases stand side by side, measure each and give it as that case's outlook.",
        ]
      : [];
  const digs = evidence?.dig === null || evidence === null ? [] : [digSafety];
  return [
    `No forecast: each of the ${season.others.length} other years counts alike, whatever this season's weather is set to bring.`,
    "Days at the usual demand count all available water within the roots, without rain and without evaporation from the soil; roots take the last of it slowly, so a crop is short of water before the days are over.",
    ...shared,
    ...new Set([...ofComparison, ...digs]),
  ];
}
