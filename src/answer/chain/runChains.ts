import { makeRunBuffers } from "../runs/run.ts";
import type { Slices } from "../../soil/layers/layer.ts";
import { chainInLinks, soilsOfChain, type LinkRuns } from "./chain.ts";
import type { ChainPreparation } from "./prepareChains.ts";

/** A link with what can only be told of its whole chain. */
export interface ChainLink extends Omit<LinkRuns, "gainMmBySlice"> {
  /** By later case: whether the soil below where the shallower roots end was wetted between harvest and sowing; null in the warm-up. */
  readonly wetted: readonly boolean[] | null;
}

export interface ChainsAtRain {
  readonly rainTotalMm: number | null;
  readonly links: readonly ChainLink[];
}

/** Wetted from this rise of all water below the shallower roots on, mm. Ours: less is a film of drainage. */
const wettedFromMm = 1;

/** Every chain of every phase at every total. `onProgress` is told of every chain done. */
export function runChains(
  prepared: ChainPreparation,
  onProgress?: (done: number, total: number) => void,
): ChainsAtRain[] {
  const steps = chainsInSteps(prepared);
  for (;;) {
    const next = steps.next();
    if (next.done === true) return next.value;
    if (next.value.isChainDone) onProgress?.(next.value.done, next.value.total);
  }
}

export interface ChainStep {
  /** Chains done of all. */
  readonly done: number;
  readonly total: number;
  readonly isChainDone: boolean;
}

/** The same with a stop after every link, for who has to listen in between. */
export function* chainsInSteps(prepared: ChainPreparation): Generator<ChainStep, ChainsAtRain[], void> {
  const { preparation, calendarByPhase, chains } = prepared;
  const { rainTotalsMm, weatherYears } = preparation;
  const byTotal: ChainLink[][] = rainTotalsMm.map(() => []);
  const buffers = makeRunBuffers("sums");
  const total = chains.length * calendarByPhase.length * rainTotalsMm.length;
  let done = 0;
  for (let chain = 0; chain < chains.length; chain++) {
    const soils = soilsOfChain(prepared, chain);
    const slices = soils.map((soil) => soil.slices);
    for (let phase = 0; phase < calendarByPhase.length; phase++)
      for (const [t, weather] of weatherYears.weatherByTotal.entries()) {
        const links = chainInLinks(prepared, chain, phase, soils, weather, buffers);
        let next = links.next();
        for (; next.done !== true; next = links.next()) yield { done, total, isChainDone: false };
        byTotal[t]!.push(...withWetting(next.value, slices));
        yield { done: ++done, total, isChainDone: true };
      }
  }
  return rainTotalsMm.map((rainTotalMm, t) => ({ rainTotalMm, links: byTotal[t]! }));
}

/** Held against where the roots of that very season end: in wet years they go on with the water, both cases alike. */
function withWetting(links: readonly LinkRuns[], slices: readonly Slices[]): ChainLink[] {
  return links.map(({ gainMmBySlice, ...link }) => {
    const endMm = link.own.map(({ totals }) => totals.finalRootDepthMm);
    return {
      ...link,
      wetted:
        gainMmBySlice === null
          ? null
          : endMm.slice(1).map((mm, p) => {
              const deeper = mm >= endMm[0]! ? p + 1 : 0;
              const shallowerMm = Math.min(mm, endMm[0]!);
              return gainBelow(gainMmBySlice[deeper]!, slices[deeper]!, shallowerMm) > wettedFromMm;
            }),
    };
  });
}

function gainBelow(gainMm: Float64Array, { count, topMm, thicknessMm }: Slices, depthMm: number): number {
  let sum = 0;
  for (let j = count - 1; j >= 0; j--) {
    const below = Math.min(1, (topMm[j]! + thicknessMm[j]! - depthMm) / thicknessMm[j]!);
    if (below <= 0) break;
    sum += below * gainMm[j]!;
  }
  return sum;
}
