import { yearSaid } from "../../../src/report/tables/yearSaid.ts";
import { monthNames } from "../../../src/quantity/dates.ts";
import { dayOfMonth, monthOf, yearOf } from "../../../src/quantity/calendar.ts";
import type { CaseSeason, LayerShown, SeasonShown } from "../../worker/protocol.ts";
import { snowfallMm } from "./rainBars.ts";
import { shareAvailable, sliceAt } from "./waterHeatmap.ts";

/** What the pit wall says of one day at one depth: the engine's own numbers. */
export interface Reading {
  /** As a day number. */
  readonly date: number;
  /** `fallow`, `mid-season`, `after maturity`. */
  readonly stage: string;
  /** Days since the chosen case was sown; negative before. */
  readonly sinceSowing: number;
  readonly rainMm: number;
  readonly snowMm: number;
  readonly depthMm: number;
  readonly layer: string | null;
  /** Of the chosen case, 0 to 1; null on days that it does not live through, and below the soil. */
  readonly share: number | null;
  /** Water that the chosen case's roots can take from where they are; null before sowing. */
  readonly inReachMm: number | null;
  /** By case; null before sowing and on days outside the case's run. */
  readonly fronts: readonly { readonly name: string; readonly mm: number | null }[];
}

export function readingAt(
  season: SeasonShown,
  caseIndex: number,
  layers: readonly LayerShown[],
  day: number,
  depthMm: number,
): Reading {
  const one = season.cases[caseIndex] ?? season.cases[0]!;
  const ownDay = day - one.startsAt;
  const isIn = ownDay >= 0 && ownDay < one.days;
  const slice = sliceAt(one, depthMm);
  return {
    date: season.firstDay + day,
    stage: stageOn(one, day),
    sinceSowing: ownDay - one.sowingDay,
    rainMm: season.rainMm[day] ?? 0,
    snowMm: snowfallMm(season, one, day),
    depthMm,
    layer: layers.find(({ topMm, bottomMm }) => depthMm >= topMm && depthMm < bottomMm)?.name ?? null,
    share: isIn && slice !== null ? shareAvailable(one, ownDay, slice) : null,
    inReachMm: isIn && ownDay >= one.sowingDay ? availableAboveMm(one, ownDay, one.frontMm[ownDay]!) : null,
    fronts: season.cases.map((each) => ({ name: each.name, mm: frontOn(each, day) })),
  };
}

/** Null before sowing and outside the case's own run. */
export function frontOn({ startsAt, days, sowingDay, frontMm }: CaseSeason, day: number): number | null {
  const ownDay = day - startsAt;
  return ownDay < sowingDay || ownDay >= days ? null : frontMm[ownDay]!;
}

export function stageOn({ startsAt, sowingDay, days, stages }: CaseSeason, day: number): string {
  const ownDay = day - startsAt;
  if (ownDay < sowingDay) return ownDay < 0 ? "before the run" : "fallow";
  if (ownDay >= days) return "after maturity";
  return stages.findLast(({ fromDay }) => fromDay <= ownDay)?.name ?? "sown";
}

/** Fallow, then the stages, as days on the axis that all cases share. */
export function stageParts(one: CaseSeason, days: number): { name: string; from: number; to: number }[] {
  const { startsAt, stages, sowingDay } = one;
  const starts = stages.map(({ name, fromDay }) => ({ name, from: startsAt + fromDay }));
  const first = starts[0]?.from ?? startsAt + sowingDay;
  const all = first > startsAt ? [{ name: "fallow", from: startsAt }, ...starts] : starts;
  return all.map((part, i) => ({ ...part, to: all[i + 1]?.from ?? Math.min(days, startsAt + one.days) }));
}

/** Available water down to a depth at the end of an own day, part of the last slice counted; capacity is not passed. */
export function availableAboveMm(one: CaseSeason, ownDay: number, depthMm: number, fromMm = 0): number {
  let sum = 0;
  for (let slice = 0; slice < one.sliceTopMm.length; slice++) {
    const [top, thickness] = [one.sliceTopMm[slice]!, one.sliceThicknessMm[slice]!];
    const within = Math.min(depthMm, top + thickness) - Math.max(fromMm, top);
    if (within > 0) sum += shareAvailable(one, ownDay, slice) * one.capacityMm[slice]! * (within / thickness);
  }
  return sum;
}

/** `14 Jul 2020`, `14 Jul, generated year 20` */
export function sayDay(date: number, isGenerated: boolean): string {
  return `${sayMonthDay(date)}${isGenerated ? "," : ""} ${yearSaid(yearOf(date), isGenerated)}`;
}

/** `14 Jul` */
export function sayMonthDay(date: number): string {
  return `${dayOfMonth(date)} ${monthNames[monthOf(date) - 1]!}`;
}
