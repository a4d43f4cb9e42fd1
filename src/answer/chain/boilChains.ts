import { sayMonthDay } from "../../quantity/dates.ts";
import type { Units } from "../../quantity/kinds.ts";
import { medianOf } from "../../statistics/quantiles.ts";
import { spreadAndMean } from "../../statistics/spreadAndMean.ts";
import { meaningOfTotal, middleTotalIndex } from "../runs/middleTotal.ts";
import { onlyRootsDiffer } from "../comparison/rootsOfCases.ts";
import { shownYield, type ShownYield } from "../comparison/yieldUnits.ts";
import type { ChainAnswer, ChainCase, ChainDifference, CropChain } from "./chainAnswer.ts";
import { isSettled, settlingYears } from "./chainYears.ts";
import type { ChainPreparation } from "./prepareChains.ts";
import type { SeasonRow } from "./rows.ts";
import type { ChainLink, ChainsAtRain } from "./runChains.ts";

/** Less water than this is no difference in amount, mm. As in the first sentence of a comparison. */
const hardlyAnyMm = 1;
/** Shares that differ by this much are told apart. Ours. */
const tellingShare = 0.05;

/** Boils the links of all chains down to the two answers, for every crop of the rotation. */
export function chainAnswerOf(
  prepared: ChainPreparation,
  byRain: readonly ChainsAtRain[],
  units: Units,
): ChainAnswer {
  const { rotation, scenario, chains } = prepared;
  const byRainTotal = byRain.map(({ rainTotalMm, links }) => ({
    rainTotalMm,
    byCrop: cropsOf(prepared).map((crop) => cropChain(prepared, crop, links, units)),
  }));
  const middle = byRainTotal[middleTotalIndex(byRain.map(({ rainTotalMm }) => rainTotalMm))]!;
  return {
    rotation: rotation.said,
    crops: rotation.entries.map((entry) => entry?.crop ?? null),
    asked: scenario.cases[0].crop.name,
    startsAsStated: rotation.startsAsStated,
    ...(rotation.startsOn === null ? {} : { startsOn: sayMonthDay(rotation.startsOn) }),
    chains: chains.length,
    warmUpYears: Math.max(...chains.map(({ from, warmUpFrom }) => from - warmUpFrom)),
    settlingYears,
    ...meaningOfTotal(scenario.weather),
    ...middle,
    byRainTotal,
  };
}

/** Each crop once, the one in question first. */
function cropsOf({ rotation, scenario }: ChainPreparation): string[] {
  const asked = scenario.cases[0].crop.name;
  return [...new Set([asked, ...rotation.entries.flatMap((entry) => entry?.crop ?? [])])];
}

function cropChain(
  { rotation, scenario }: ChainPreparation,
  crop: string,
  links: readonly ChainLink[],
  units: Units,
): CropChain {
  const entry = rotation.entries.find((one) => one?.crop === crop)!;
  const shown = shownYield(entry.yieldLine.unit, units);
  const own = links.filter((link) => rotation.entries[link.entry]!.crop === crop && link.sinceChange >= 1);
  const settled = own.filter(isSettled);
  return {
    crop,
    isAsked: entry.isAsked,
    cases: scenario.cases.map(({ name }, c) =>
      chainCase(
        name,
        settled.map((link) => link.own[c]!),
      ),
    ),
    differences: scenario.cases.slice(1).map((plan, p) => ({
      from: scenario.cases[0].name,
      to: plan.name,
      onlyRootsDiffer: onlyRootsDiffer(scenario.cases[0], plan),
      ...difference(own, settled, p, rotation.pathYears, shown),
    })),
  };
}

function chainCase(name: string, rows: readonly SeasonRow[]): ChainCase {
  const middle = (of: (row: SeasonRow) => number) => medianOf(Float64Array.from(rows, of));
  const wetted = rows.flatMap(({ depthWettedMm }) => depthWettedMm ?? []);
  const sum = (of: (row: SeasonRow) => number) => rows.reduce((all, row) => all + of(row), 0);
  const fallenMm = sum(({ totals }) => totals.fallowRainMm);
  return {
    name,
    finalRootDepthMm: middle(({ totals }) => totals.finalRootDepthMm),
    depthWettedMm: wetted.length === 0 ? null : medianOf(Float64Array.from(wetted)),
    storedAtSowingMm: middle(({ totals }) => totals.storedAtSowingMm),
    fallowStorageShare: fallenMm > 0 ? sum(({ totals }) => totals.fallowGainMm) / fallenMm : null,
    transpirationMm: middle(({ totals }) => totals.transpirationMm),
    shareAfterFlowering: middle(({ totals }) =>
      totals.transpirationMm > 0 ? totals.transpirationAfterFloweringMm / totals.transpirationMm : 0,
    ),
    demandMetAroundFlowering: middle(({ totals }) => totals.metAroundFlowering),
  };
}

function difference(
  own: readonly ChainLink[],
  settled: readonly ChainLink[],
  p: number,
  pathYears: number,
  shown: ShownYield,
): Omit<ChainDifference, "from" | "to" | "onlyRootsDiffer"> {
  const first = own.flatMap(({ firstYear }) => (firstYear === null ? [] : [firstYear]));
  const after = settled.map((link) => link.own);
  const years = [...new Set(own.map(({ sinceChange }) => sinceChange))].sort((a, b) => a - b);
  const yearAfterYear = extraOf(after, p, shown);
  return {
    extraDepthMm: medianOf(
      Float64Array.from(
        after,
        (rows) => rows[p + 1]!.totals.finalRootDepthMm - rows[0]!.totals.finalRootDepthMm,
      ),
    ),
    firstYear: extraOf(first, p, shown),
    yearAfterYear,
    wettedShare: settled.filter(({ wetted }) => wetted?.[p] === true).length / Math.max(1, settled.length),
    path: years
      .filter((year) => year <= pathYears)
      .map((year) => {
        // The first year is the first year, by all that was run of it.
        const of =
          year === 1 ? first : own.filter(({ sinceChange }) => sinceChange === year).map((link) => link.own);
        return { year, years: of.length, extraWaterUsedMm: extraOf(of, p, shown).extraWaterUsedMm };
      }),
    timingDiffers:
      Math.abs(yearAfterYear.extraWaterUsedMm.mean) < hardlyAnyMm &&
      differInTime(
        chainCase(
          "",
          after.map((rows) => rows[0]!),
        ),
        chainCase(
          "",
          after.map((rows) => rows[p + 1]!),
        ),
      ),
  };
}

function differInTime(a: ChainCase, b: ChainCase): boolean {
  return (
    Math.abs(a.shareAfterFlowering - b.shareAfterFlowering) >= tellingShare ||
    Math.abs(a.demandMetAroundFlowering - b.demandMetAroundFlowering) >= tellingShare
  );
}

function extraOf(links: readonly (readonly SeasonRow[])[], p: number, { unit, factor }: ShownYield) {
  const water = Float64Array.from(
    links,
    (rows) => rows[p + 1]!.totals.transpirationMm - rows[0]!.totals.transpirationMm,
  );
  const grown = Float64Array.from(
    links,
    (rows) => (rows[p + 1]!.yieldKgPerHa - rows[0]!.yieldKgPerHa) * factor,
  );
  return {
    years: links.length,
    extraWaterUsedMm: spreadAndMean(water),
    extraYield: { unit, ...spreadAndMean(grown) },
  };
}
