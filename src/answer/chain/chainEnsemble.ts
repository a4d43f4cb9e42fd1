import { yearOf } from "../../quantity/calendar.ts";
import { totalNames, type CaseRuns, type Ensemble, type EnsembleAtRain } from "../runs/ensemble.ts";
import { isSettled } from "./chainYears.ts";
import type { ChainPreparation } from "./prepareChains.ts";
import type { ChainLink, ChainsAtRain } from "./runChains.ts";

/**
 * The crop in question, year after year, as an ensemble of its seasons: what `comparisonOf` makes the rest of the answer of.
 * A run is a link; its draws are those of its chain, with its year's slope.
 */
export function yearAfterYear(prepared: ChainPreparation, byRain: readonly ChainsAtRain[]): Ensemble {
  const { preparation, scenario, drawsByChain, slopesByEntry, yearsBefore } = prepared;
  const counted = byRain.map(({ links }) => linksCounted(prepared, links));
  const { firstDay } = preparation.weatherYears.weather;
  const [some] = counted;
  return {
    preparation: {
      ...preparation,
      scenario,
      yearByRun: some!.map(({ own }) => ({
        year: yearOf(own[0]!.sowingDay),
        sowingIndexByCase: own.map(({ sowingDay }) => sowingDay - firstDay),
      })),
      drawsByRun: some!.map(({ chain, entry, sinceChange }) => ({
        ...drawsByChain[chain]!,
        slope: slopesByEntry[entry]![yearsBefore[chain]! + sinceChange - 1]!,
      })),
    },
    runs: some!.length,
    byRainTotal: byRain.map(({ rainTotalMm }, t) => atRain(rainTotalMm, counted[t]!, scenario.cases)),
  };
}

/** The links that are runs of the ensemble, in their order. */
export function linksCounted({ rotation }: ChainPreparation, links: readonly ChainLink[]): ChainLink[] {
  return links.filter((link) => rotation.entries[link.entry]!.isAsked && isSettled(link));
}

function atRain(
  rainTotalMm: number | null,
  links: readonly ChainLink[],
  cases: ChainPreparation["scenario"]["cases"],
): EnsembleAtRain {
  const annual = links.map(({ own }) => own[0]!.yearRainMm);
  return {
    rainTotalMm,
    annualRainMmByRun: annual.some((mm) => mm === null) ? null : Float64Array.from(annual, (mm) => mm ?? 0),
    cases: cases.map(({ name }, c) => ({
      name,
      byRun: Object.fromEntries(
        totalNames.map((key) => [key, Float64Array.from(links, ({ own }) => own[c]!.totals[key])]),
      ) as CaseRuns["byRun"],
      yieldKgPerHaByRun: Float64Array.from(links, ({ own }) => own[c]!.yieldKgPerHa),
      unripeByRun: Uint8Array.from(links, ({ own }) => (own[c]!.ripe ? 0 : 1)),
    })),
    pairs: cases.slice(1).map((_, p) => ({
      ruleOfThumbMmByRun: Float64Array.from(links, ({ ownPairs }) => ownPairs[p]!.ruleOfThumbMm),
      storedInExtraDepthMmByRun: Float64Array.from(
        links,
        ({ ownPairs }) => ownPairs[p]!.storedInExtraDepthMm,
      ),
    })),
  };
}
