import type { MoneyPlan } from "../../scenario/moneyPlan.ts";
import {
  drawPrices,
  moneyOfExtraYield,
  namesOf,
  type MoneyAnswer,
  type MoneyAtRain,
} from "../money/money.ts";
import { moneyOverYears } from "../money/moneyOverYears.ts";
import { levelAmount, lookAhead, worthToday, type LookAhead } from "../money/overYears.ts";
import { middleTotalIndex } from "../runs/middleTotal.ts";
import { weightsOfChange, type CaseWeight } from "../runs/rowsThatChange.ts";
import { settlingYears } from "./chainYears.ts";
import type { ChainPreparation } from "./prepareChains.ts";
import type { ChainLink, ChainsAtRain } from "./runChains.ts";

/**
 * Money of years in a row: what lasts some years is paid by those years' own gains, each chain by itself, from the first year
 * after the change on. The same machinery as of single seasons then runs on the level yearly gain of each chain.
 */
export function moneyOfChains(
  prepared: ChainPreparation,
  byRain: readonly ChainsAtRain[],
  plan: MoneyPlan,
): MoneyAnswer {
  const { scenario, rotation } = prepared;
  const ahead = lookAhead(plan, rotation.pathYears);
  const byRainTotal = byRain.map((at) => moneyAtRain(prepared, at, plan, ahead));
  const middle = middleTotalIndex(byRain.map(({ rainTotalMm }) => rainTotalMm));
  return {
    currency: plan.currency,
    areaHa: plan.areaHa,
    pricePerKg: plan.pricePerKg,
    alikeForYears: null,
    pairs: scenario.cases.length < 2 ? [] : byRainTotal[middle]!.pairs,
    byRainTotal,
  };
}

function moneyAtRain(
  { scenario, rotation }: ChainPreparation,
  { rainTotalMm, links }: ChainsAtRain,
  plan: MoneyPlan,
  ahead: LookAhead,
): MoneyAtRain {
  const { cases, rowPositions, ensemble, yieldLine } = scenario;
  const isAsked = ({ entry }: ChainLink) => rotation.entries[entry]!.isAsked;
  const chains = byChain(links);
  const prices = drawPrices(chains.length, ensemble.seed, plan.pricePerKg);
  const counts = worthToday(ahead.years, ahead.interest);
  const names = cases.map(({ name }) => name);
  return {
    rainTotalMm,
    pairs: names.slice(1).map((to, p) => {
      const weights = weightsOfChange(rowPositions, p);
      const gains = chains.map((one) =>
        gainsByYear(one, isAsked, weights, counts.length, rotation.entries.length),
      );
      return {
        ...namesOf(names, to, p, rowPositions),
        overYears: moneyOverYears(gains, prices, plan, ahead),
        ...moneyOfExtraYield(
          Float64Array.from(gains, (byYear) => levelAmount(byYear, counts)),
          plan,
          prices,
          yieldLine.slopeKgPerHaPerMm.middle,
        ),
      };
    }),
  };
}

/** Links since the change, chain by chain and phase by phase. */
function byChain(links: readonly ChainLink[]): ChainLink[][] {
  const chains = new Map<string, ChainLink[]>();
  for (const link of links) {
    if (link.sinceChange < 1) continue;
    const place = `${link.chain} ${link.phase}`;
    const found = chains.get(place);
    if (found === undefined) chains.set(place, [link]);
    else found.push(link);
  }
  return [...chains.values()];
}

/**
 * Extra yield of the crop in question in each year since the change, kg/ha of the field, 0 in years without its harvest. Beyond
 * the chain its last whole turns of the rotation after the settling come again: those years know the first no more.
 */
function gainsByYear(
  links: readonly ChainLink[],
  isAsked: (link: ChainLink) => boolean,
  weights: readonly CaseWeight[],
  years: number,
  turn: number,
): Float64Array {
  const last = links.at(-1)!.sinceChange;
  const run = new Float64Array(last);
  for (const link of links) {
    if (!isAsked(link)) continue;
    run[link.sinceChange - 1] = weights.reduce(
      (sum, { caseIndex, share }) => sum + share * link.own[caseIndex]!.yieldKgPerHa,
      0,
    );
  }
  const turns = Math.max(1, Math.floor((last - settlingYears) / turn));
  const again = Math.min(last, turns * turn);
  return Float64Array.from({ length: years }, (_, i) =>
    i < last ? run[i]! : run[last - again + ((i - last) % again)]!,
  );
}
