import { overRain, type OverRain } from "../runs/overRain.ts";
import { isSettled } from "./chainYears.ts";
import type { ChainPreparation } from "./prepareChains.ts";
import type { SeasonRow } from "./rows.ts";
import type { ChainLink, ChainsAtRain } from "./runChains.ts";

/** The crop in question: each year's own rain against what depth brought, in the first year and long after the change. */
export interface ChainsOverRain {
  readonly rainTotalMm: number | null;
  readonly differences: readonly {
    readonly from: string;
    readonly to: string;
    readonly firstYear: OverRain;
    readonly yearAfterYear: OverRain;
  }[];
}

export function chainsOverRain(
  { scenario, rotation }: ChainPreparation,
  byRain: readonly ChainsAtRain[],
): ChainsOverRain[] {
  const names = scenario.cases.map(({ name }) => name);
  return byRain.map(({ rainTotalMm, links }) => {
    const own = links.filter((link) => rotation.entries[link.entry]!.isAsked && link.sinceChange >= 1);
    return {
      rainTotalMm,
      differences: names.slice(1).map((to, p) => ({
        from: names[0]!,
        to,
        firstYear: of(own, p, ({ firstYear }) => firstYear),
        yearAfterYear: of(own.filter(isSettled), p, (link) => link.own),
      })),
    };
  });
}

function of(
  links: readonly ChainLink[],
  p: number,
  rowsOf: (link: ChainLink) => readonly SeasonRow[] | null,
): OverRain {
  return overRain(
    links.flatMap((link) => {
      const [first, later] = [rowsOf(link)?.[0], rowsOf(link)?.[p + 1]];
      if (first === undefined || later === undefined || first.yearRainMm === null) return [];
      return [
        {
          rainMm: first.yearRainMm,
          extraWaterUsedMm: later.totals.transpirationMm - first.totals.transpirationMm,
          extraYieldKgPerHa: later.yieldKgPerHa - first.yieldKgPerHa,
        },
      ];
    }),
  );
}
