import generator from "../../../data-reference/rain-generator.json" with { type: "json" };
import { wetFromMm } from "./rainChain.ts";

/**
 * Rain of a wet day: 0.25 mm and an excess that is drawn from one of two exponentials, the small falls' or the large
 * falls' (mixed exponential). Source: [Woolhiser & Pegram 1979; Woolhiser & Roldan 1982] (the second's abstract read: best of the
 * three forms at all five stations). Parameters: fitted on open gauges, since none are published; see data-reference.
 */
export interface WetDayAmounts {
  /** Share of wet days whose excess is from the small exponential, 0 to 1. */
  readonly smallShare: number;
  /** Mean excess of the two, mm. */
  readonly smallMm: number;
  readonly largeMm: number;
}

/** The same with the two means as multiples of their common mean. */
export interface AmountShape {
  readonly smallShare: number;
  readonly smallTimes: number;
  readonly largeTimes: number;
}

/**
 * Shape in a month of that mean temperature: one for cold months, one with more big storms for warm ones, between them in
 * proportion (choice of ours, so that a tenth of a degree moves nothing much).
 */
export function amountShape(monthMeanC: number): AmountShape {
  const { cold, warm, coldBelowC, warmAboveC } = generator.amounts;
  const warmth = Math.min(1, Math.max(0, (monthMeanC - coldBelowC) / (warmAboveC - coldBelowC)));
  const between = (a: number, b: number) => a + warmth * (b - a);
  return shapeFrom(between(cold.smallShare, warm.smallShare), between(cold.smallTimes, warm.smallTimes));
}

/** The large mean follows, as the common mean is 1. */
export function shapeFrom(smallShare: number, smallTimes: number): AmountShape {
  return { smallShare, smallTimes, largeTimes: (1 - smallShare * smallTimes) / (1 - smallShare) };
}

/**
 * Amounts whose mean is the one given.
 *
 * @param meanMm mean rain of a wet day, mm; 0.25 or more (taken as 0.25 below it)
 */
export function wetDayAmounts(meanMm: number, shape: AmountShape): WetDayAmounts {
  const excessMm = Math.max(0, meanMm - wetFromMm);
  return {
    smallShare: shape.smallShare,
    smallMm: shape.smallTimes * excessMm,
    largeMm: shape.largeTimes * excessMm,
  };
}

/**
 * Rain of a wet day from one draw, mm; never below 0.25. The draw tells which of the two exponentials it is, and what is left of
 * it the quantile there.
 *
 * @param drawn evenly from 0 (may be) to 1 (never)
 * @example wetDayRainMm({ smallShare: 0.5, smallMm: 1, largeMm: 8 }, 0.75) // 5.795, the large one's median and 0.25
 */
export function wetDayRainMm({ smallShare, smallMm, largeMm }: WetDayAmounts, drawn: number): number {
  const excessMm =
    drawn < smallShare
      ? -smallMm * Math.log(1 - drawn / smallShare)
      : -largeMm * Math.log((1 - drawn) / (1 - smallShare));
  return wetFromMm + excessMm;
}

/** Share of the excess that falls on days with more than `times` the mean excess; 0 to 1. Integral of the mixed exponential. */
export function shareAboveTimes({ smallShare, smallTimes, largeTimes }: AmountShape, times: number): number {
  const above = (mean: number) => Math.exp(-times / mean) * (times + mean);
  return smallShare * above(smallTimes) + (1 - smallShare) * above(largeTimes);
}

/** Variance of the excess in units of its squared mean; 1 for a plain exponential. */
export function relativeVariance({ smallShare, smallTimes, largeTimes }: AmountShape): number {
  return 2 * (smallShare * smallTimes ** 2 + (1 - smallShare) * largeTimes ** 2) - 1;
}
