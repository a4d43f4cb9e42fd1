import type { OverRain, RainBand, YearOverRain } from "../../../src/answer/runs/overRain.ts";
import { axisOver, type Axis } from "../../../src/drawing/axis.ts";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import { fineYield, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { Spread } from "../../../src/statistics/quantiles.ts";
import type { PictureTable } from "../kit/frame.tsx";

/** What is drawn over the rain. */
export type OverRainOf = "water" | "yield";

export interface OverRainUnits {
  readonly of: OverRainOf;
  readonly shown: Formatters;
  readonly yieldUnit: string;
  /** From kg/ha. */
  readonly yieldFactor: number;
}

export interface OverRainLayout {
  readonly x: Axis;
  readonly y: Axis;
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  readonly bands: readonly {
    readonly from: number;
    readonly to: number;
    readonly low: number;
    readonly middle: number;
    readonly high: number;
  }[];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Axes over all that there is: they follow the record. Bands meet halfway between the years at their ends. */
export function overRainLayout({ years, bands }: OverRain, units: OverRainUnits, box: Box): OverRainLayout {
  const rain = (mm: number) => (units.shown.length === "in" ? mm / mmPerInch : mm);
  const values = years.map((year) => valueOf(year, units));
  const rains = years.map(({ rainMm }) => rain(rainMm));
  const steps = box.right - box.left < 420 ? 5 : 10;
  const x = axisOver(Math.min(...rains), Math.max(...rains), box.left, box.right, steps);
  const y = axisOver(Math.min(0, ...values), Math.max(0, ...values), box.bottom, box.top, 6);
  const edge = (before: RainBand | undefined, after: RainBand | undefined) =>
    rain(((before?.toMm ?? after!.fromMm) + (after?.fromMm ?? before!.toMm)) / 2);
  return {
    x,
    y,
    dots: years.map((_, i) => ({ x: x.at(rains[i]!), y: y.at(values[i]!) })),
    bands: bands.map((band, i) => {
      const { p10, p50, p90 } = spreadOfBand(band, units);
      return {
        from: x.at(edge(bands[i - 1], band)),
        to: x.at(edge(band, bands[i + 1])),
        low: y.at(p10),
        middle: y.at(p50),
        high: y.at(p90),
      };
    }),
  };
}

function valueOf({ extraWaterUsedMm, extraYieldKgPerHa }: YearOverRain, units: OverRainUnits): number {
  if (units.of === "yield") return extraYieldKgPerHa * units.yieldFactor;
  return units.shown.length === "in" ? extraWaterUsedMm / mmPerInch : extraWaterUsedMm;
}

function spreadOfBand(band: RainBand, units: OverRainUnits): Spread {
  const at = (key: keyof Spread) =>
    valueOf(
      {
        rainMm: 0,
        extraWaterUsedMm: band.extraWaterUsedMm[key],
        extraYieldKgPerHa: band.extraYieldKgPerHa[key],
      },
      units,
    );
  return { p10: at("p10"), p50: at("p50"), p90: at("p90") };
}

/** The bands, the driest first; where there are none, each year. */
export function overRainTable({ years, bands }: OverRain, units: Omit<OverRainUnits, "of">): PictureTable {
  const { shown, yieldUnit, yieldFactor } = units;
  const { total, fineWater, length } = shown;
  const grown = (kgPerHa: number) => fineYield(kgPerHa * yieldFactor, yieldUnit);
  if (bands.length === 0)
    return {
      head: [`Rain in the year, ${length}`, `Extra water, ${length}`, `Extra yield, ${yieldUnit}`],
      rows: years.map(({ rainMm, extraWaterUsedMm, extraYieldKgPerHa }) => [
        total(rainMm),
        fineWater(extraWaterUsedMm),
        grown(extraYieldKgPerHa),
      ]),
    };
  const said = ({ p10, p50, p90 }: Spread, say: (value: number) => string) =>
    `${say(p50)} (${say(p10)} to ${say(p90)})`;
  return {
    head: [
      `Rain in the year, ${length}`,
      "Years",
      `Extra water, ${length} (P10 to P90)`,
      `Extra yield, ${yieldUnit} (P10 to P90)`,
    ],
    rows: bands.map((band) => [
      `${total(band.fromMm)} to ${total(band.toMm)}`,
      String(band.years),
      said(band.extraWaterUsedMm, fineWater),
      said(band.extraYieldKgPerHa, grown),
    ]),
  };
}
