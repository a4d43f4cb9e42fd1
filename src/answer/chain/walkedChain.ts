import { makeRunBuffers } from "../runs/run.ts";
import { chainInLinks, soilsOfChain, type LinkJustRun } from "./chain.ts";
import type { ChainPreparation } from "./prepareChains.ts";
import type { ChainLink } from "./runChains.ts";

/**
 * Walks one chain at one total again, link by link from the change on, with its days and its water by slice. What `onLink` is
 * handed is to be read at once.
 */
export function walkChain(
  prepared: ChainPreparation,
  { chain, phase }: Pick<ChainLink, "chain" | "phase">,
  totalIndex: number,
  onLink: (link: LinkJustRun) => void,
): void {
  const weather = prepared.preparation.weatherYears.weatherByTotal[totalIndex]!;
  const soils = soilsOfChain(prepared, chain);
  for (const link of chainInLinks(prepared, chain, phase, soils, weather, makeRunBuffers()))
    if (link.sinceChange >= 1) onLink(link);
}
