import { lookUp } from "../lookUp.ts";

/** The international acre, 43,560 square feet. */
export const exactAcre = "exactAcre";

/** Spellings of the trade, turned into what mathjs knows. */
export const spellings: Readonly<Record<string, string>> = {
  inch: "in",
  inches: "in",
  ins: "in",
  feet: "ft",
  foot: "ft",
  millimeter: "mm",
  millimeters: "mm",
  millimetre: "mm",
  millimetres: "mm",
  centimeter: "cm",
  centimeters: "cm",
  centimetre: "cm",
  centimetres: "cm",
  meter: "m",
  meters: "m",
  metre: "m",
  metres: "m",
  cc: "cm^3",
  pcf: "lb/ft^3",
  ac: exactAcre,
  acre: exactAcre,
  acres: exactAcre,
  ha: "hectare",
  hectares: "hectare",
  lbs: "lb",
  pound: "lb",
  pounds: "lb",
  t: "tonne",
  d: "day",
  days: "day",
  h: "hour",
  hr: "hour",
  hrs: "hour",
  sec: "s",
  wk: "week",
  wks: "week",
  mo: "month",
  mos: "month",
  yr: "year",
  yrs: "year",
  mph: "mile/hour",
  kmh: "km/hour",
  kph: "km/hour",
  mpa: "MPa",
  kpa: "kPa",
  bars: "bar",
  f: "degF",
  degf: "degF",
  fahrenheit: "degF",
  c: "degC",
  degc: "degC",
  celsius: "degC",
  percent: "%",
  pct: "%",
};

/**
 * The unit of a quantity as mathjs spells it: `ac` to `acre`, `m3` to `m^3`, `per` to `/`.
 * What it does not know it leaves alone for mathjs to judge.
 */
export function spellUnit(text: string): string {
  const plain = text
    .replaceAll("\u00b2", "^2")
    .replaceAll("\u00b3", "^3")
    .replaceAll("\u207b\u00b9", "^-1")
    .replaceAll("\u207b", "^-")
    .replaceAll("^-^", "^-")
    .replace(/[\u00b5\u03bc]/g, "u")
    .replace(/[\u00b7\u00d7*]/g, " ")
    .replace(/(?:\u00b0|\bdeg(?:rees?)?)\s*(?=[cf]\b)/gi, "")
    .replace(/\bper\b/gi, "/")
    .trim();
  if (plain === '"' || plain === "\u2033") return "in";
  if (plain === "'" || plain === "\u2032") return "ft";
  return plain
    .replace(/([a-z])\.(?=\s|\/|$)/gi, "$1") // "in." and "bu./ac."
    .replace(/([a-z])(-?[123])(?![\d.])/gi, "$1^$2") // "m3", "kg m-3"
    .replace(/[a-z]+/gi, (word) => lookUp(spellings, word) ?? lookUp(spellings, word.toLowerCase()) ?? word);
}
