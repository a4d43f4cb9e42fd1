import { mmPerInch } from "../../src/quantity/constants.ts";

/** Where a fan of rain begins and ends, and how far its points lie apart. */
export interface FanSpan {
  readonly fromMm: number;
  readonly toMm: number;
  readonly stepMm: number;
}

/** Of a dryland, in: held to where the field's own rain begins below its middle. Ours. */
const usualIn = { from: 8, to: 20 } as const;
/** Beyond the field's own rain, to either side: what a drier and a wetter year would be. Ours. */
const beyond = 0.25;
/** More points take longer than they tell. Ours. */
const mostSteps = 12;

/**
 * A fan that reaches a quarter beyond the field's own rain, in whole inches.
 *
 * @param ownMm rain of the field: the totals asked for, or the years of a record; empty where none is known
 */
export function fanSpan(ownMm: readonly number[]): FanSpan {
  const { from: usualFrom, to: usualTo } = usualIn;
  const span = (from: number, to: number): FanSpan => {
    const step = Math.ceil((to - from) / mostSteps);
    const steps = Math.ceil((to - from) / step);
    return { fromMm: from * mmPerInch, toMm: (from + steps * step) * mmPerInch, stepMm: step * mmPerInch };
  };
  if (ownMm.length === 0) return span(usualFrom, usualTo);
  const from = Math.max(1, Math.floor(((1 - beyond) * Math.min(...ownMm)) / mmPerInch));
  const to = Math.ceil(((1 + beyond) * Math.max(...ownMm)) / mmPerInch);
  return from < (usualFrom + usualTo) / 2
    ? span(Math.min(from, usualFrom), Math.max(to, usualTo))
    : span(from, to);
}
