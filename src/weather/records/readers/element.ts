import type { WeatherRecord } from "../record.ts";
import type { Conversion, Quantity } from "../units.ts";
import { windAt2mMPerS } from "../../et/wind.ts";

/** The elements that a weather record can hold, by the name of their field there. */
export type Element =
  | "rainMm"
  | "tMaxC"
  | "tMinC"
  | "solarMjPerM2"
  | "rhMaxPercent"
  | "rhMinPercent"
  | "rhMeanPercent"
  | "dewPointC"
  | "wind2mMPerS"
  | "referenceEtMm";

/** What a file may hold beside: rain gauged over several days. Spread over them before a record is made. */
export type Figure = Element | "multiDayRainMm" | "multiDayRainDays";

export interface ElementFacts {
  readonly words: string;
  readonly quantity: Quantity;
  readonly unit: string;
  /** Beyond these no daily figure is believed, and the line is named. Wide: at or beyond the world's records. Our judgement. */
  readonly min: number;
  readonly max: number;
  /** Instruments and formulas go a little astray; so far beyond min or max a figure is set to it, and counted. */
  readonly slack?: number;
}

/** 72 in. The most rain measured in 24 hours was 1825 mm: Foc-Foc, Réunion, January 1966 (WMO's list of extremes, memory). */
const mostRainMm = 1829;
/** More rain in a day than this is read, but its line is named. Our judgement: most gauges never saw so much. */
export const rareRainMm = 500;

export const elements: Readonly<Record<Element, ElementFacts>> = {
  rainMm: { words: "rain", quantity: "depth", unit: "mm", min: 0, max: mostRainMm },
  tMaxC: { words: "highest temperature", quantity: "temperature", unit: "°C", min: -90, max: 60 },
  tMinC: { words: "lowest temperature", quantity: "temperature", unit: "°C", min: -90, max: 60 },
  solarMjPerM2: { words: "solar radiation", quantity: "solar", unit: "MJ/m2", min: 0, max: 45 },
  rhMaxPercent: { words: "highest humidity", quantity: "humidity", unit: "%", min: 0, max: 100, slack: 1 },
  rhMinPercent: { words: "lowest humidity", quantity: "humidity", unit: "%", min: 0, max: 100, slack: 1 },
  rhMeanPercent: { words: "mean humidity", quantity: "humidity", unit: "%", min: 0, max: 100, slack: 1 },
  dewPointC: { words: "dew point", quantity: "temperature", unit: "°C", min: -90, max: 60 },
  wind2mMPerS: { words: "wind", quantity: "wind", unit: "m/s", min: 0, max: 75 },
  referenceEtMm: { words: "reference ET", quantity: "depth", unit: "mm", min: 0, max: 30, slack: 1 },
};

export const elementNames = Object.keys(elements) as readonly Element[];

/** Facts of a figure; a total of several days is rain, and may bring more than a day can. */
export function factsOf(figure: Figure): ElementFacts {
  if (figure === "multiDayRainMm") return { ...elements.rainMm, words: "rain of several days", max: 2000 };
  if (figure === "multiDayRainDays") {
    return { words: "days of a rain total", quantity: "depth", unit: "days", min: 1, max: 366 };
  }
  return elements[figure];
}

/** The conversion with wind brought from its height to 2 m. */
export function fromHeight(conversion: Conversion, heightM: number): Conversion {
  return heightM === 2 ? conversion : { scale: conversion.scale * windAt2mMPerS(1, heightM), offset: 0 };
}

/** The arrays of a record, by element; null where it has none. */
export function arrayOf(record: WeatherRecord, element: Element): Float64Array | null {
  return record[element];
}
