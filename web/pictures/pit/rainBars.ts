import type { CaseSeason, SeasonShown } from "../../worker/protocol.ts";
import { dayX, type Box, type Window } from "../kit/box.ts";
import { roundUp } from "../../../src/drawing/axis.ts";

export const defaults = {
  /** Narrowest bar, px: a wet day must not vanish on a narrow screen. */
  leastBarPx: 1.1,
  /** Days with less are left out, mm. */
  leastMm: 0.05,
} as const;

/**
 * Of a day's precipitation, what lay as snow at day's end and had not the day before.
 *
 * @returns mm of water, 0 to the day's precipitation; 0 on days outside the case's own run
 */
export function snowfallMm(
  { rainMm }: SeasonShown,
  { startsAt, days, snowOnGroundMm }: CaseSeason,
  day: number,
): number {
  const ownDay = day - startsAt;
  if (ownDay < 0 || ownDay >= days) return 0;
  const before = ownDay === 0 ? 0 : snowOnGroundMm[ownDay - 1]!;
  return Math.min(rainMm[day] ?? 0, Math.max(0, snowOnGroundMm[ownDay]! - before));
}

/** The top of the axis: a round number that the wettest day shown does not pass. */
export function rainTop({ rainMm }: SeasonShown, { fromDay, toDay }: Window, mmPerUnit: number): number {
  let most = 0;
  for (let day = fromDay; day < toDay; day++) most = Math.max(most, rainMm[day]!);
  const least = mmPerUnit > 1 ? 0.5 : 10;
  return roundUp(Math.max(least, most / mmPerUnit), [1, 2, 3, 4, 5, 6]) * mmPerUnit;
}

export interface Bars {
  /** Path data: all bars of a kind in one. */
  readonly rain: string;
  readonly snow: string;
}

/** Bars stand on the box's lower edge; a day's snow stands on its rain. */
export function rainBars(
  season: SeasonShown,
  one: CaseSeason,
  window: Window,
  box: Box,
  topMm: number,
): Bars {
  const perMm = box.height / topMm;
  const width = Math.max(defaults.leastBarPx, box.width / (window.toDay - window.fromDay) - 0.3);
  const bar = (day: number, fromMm: number, mm: number): string => {
    if (mm < defaults.leastMm) return "";
    const x = dayX(box, window, day).toFixed(1);
    const bottom = (box.y + box.height - fromMm * perMm).toFixed(1);
    const height = (mm * perMm).toFixed(1);
    return `M${x} ${bottom}v-${height}h${width.toFixed(1)}v${height}z`;
  };
  let [rain, snow] = ["", ""];
  for (let day = window.fromDay; day < window.toDay; day++) {
    const snowMm = snowfallMm(season, one, day);
    const liquidMm = season.rainMm[day]! - snowMm;
    rain += bar(day, 0, liquidMm);
    snow += bar(day, liquidMm, snowMm);
  }
  return { rain, snow };
}
