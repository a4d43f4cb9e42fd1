import {
  dewPointFromMinimumC,
  lowestHumidityPercent,
  vapourFromBothKPa,
  vapourFromDewPointKPa,
  vapourFromHighestKPa,
  vapourFromMeanKPa,
} from "./humidity.ts";
import type { WeatherRecord } from "../records/record.ts";

/** How the vapour in the air follows from what a record holds. */
export interface VapourRule {
  /** Actual vapour pressure of a day of the record. */
  readonly kPaOn: (day: number) => number;
  /** Whether the record measured humidity at all. */
  readonly measured: boolean;
  /** The data or the rule, in words. */
  readonly words: string;
}

/**
 * The best rule the record allows, in FAO-56's order of liking; dew point before mean humidity.
 *
 * @param dryClimate used only where no humidity was measured
 * Source: [Allen et al. 1998, FAO-56] ch. 3 (read).
 */
export function vapourRule(
  record: WeatherRecord,
  tMaxC: Float64Array,
  tMinC: Float64Array,
  dryClimate: () => boolean,
): VapourRule {
  const { rhMaxPercent, rhMinPercent, rhMeanPercent, dewPointC } = record;
  if (rhMaxPercent && rhMinPercent) {
    return {
      kPaOn: (day) => vapourFromBothKPa(tMaxC[day]!, tMinC[day]!, rhMaxPercent[day]!, rhMinPercent[day]!),
      measured: true,
      words: "highest and lowest relative humidity (eq. 17)",
    };
  }
  if (dewPointC) {
    return {
      kPaOn: (day) => vapourFromDewPointKPa(dewPointC[day]!),
      measured: true,
      words: "dew point (eq. 14)",
    };
  }
  if (rhMaxPercent) {
    return {
      kPaOn: (day) => vapourFromHighestKPa(tMinC[day]!, rhMaxPercent[day]!),
      measured: true,
      words: "highest relative humidity (eq. 18)",
    };
  }
  if (rhMeanPercent) {
    return {
      kPaOn: (day) => vapourFromMeanKPa(tMaxC[day]!, tMinC[day]!, rhMeanPercent[day]!),
      measured: true,
      words: "mean relative humidity (eq. 19)",
    };
  }
  const dry = dryClimate();
  return {
    kPaOn: (day) => vapourFromDewPointKPa(dewPointFromMinimumC(tMinC[day]!, dry)),
    measured: false,
    words: dry
      ? "humidity missing, dew point taken as the day's lowest temperature less 2 C (eq. 48, dry climate)"
      : "humidity missing, dew point taken as the day's lowest temperature (eq. 48)",
  };
}

/** The day's lowest relative humidity: the record's own, else from vapour and highest temperature (eq. 63, 64). */
export function lowestHumidityOn(
  record: WeatherRecord,
  day: number,
  vapourKPa: number,
  tMaxC: Float64Array,
): number {
  return record.rhMinPercent?.[day] ?? lowestHumidityPercent(vapourKPa, tMaxC[day]!);
}
