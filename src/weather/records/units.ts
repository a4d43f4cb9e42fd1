import { mmPerInch } from "../../quantity/constants.ts";

/** Units of weather files: what a unit text means. */

/** What a weather figure measures. */
export type Quantity = "depth" | "temperature" | "solar" | "humidity" | "wind";

/** Our figure = the file's figure × scale + offset, in mm, °C, MJ/m2 a day, %, m/s. */
export interface Conversion {
  readonly scale: number;
  readonly offset: number;
}

const times = (scale: number): Conversion => ({ scale, offset: 0 });

/** Keys are unit texts as `plainUnit` leaves them. Exact by definition unless marked. */
const conversions: Readonly<Record<Quantity, Readonly<Record<string, Conversion>>>> = {
  depth: {
    mm: times(1),
    millimeter: times(1),
    millimetre: times(1),
    "kg/m2": times(1), // water of 1000 kg/m3
    "0.1mm": times(0.1),
    tenthsmm: times(0.1),
    tenthsofmm: times(0.1),
    cm: times(10),
    centimeter: times(10),
    centimetre: times(10),
    in: times(mmPerInch),
    inch: times(mmPerInch),
    inche: times(mmPerInch), // "inches" without its s
  },
  temperature: {
    c: times(1),
    celsius: times(1),
    celciu: times(1), // a frequent slip, without its s
    celsiu: times(1),
    centigrade: times(1),
    "0.1c": times(0.1),
    tenthsc: times(0.1),
    tenthsofc: times(0.1),
    f: { scale: 5 / 9, offset: -160 / 9 },
    fahrenheit: { scale: 5 / 9, offset: -160 / 9 },
    k: { scale: 1, offset: -273.15 },
    kelvin: { scale: 1, offset: -273.15 },
  },
  solar: {
    "mj/m2": times(1),
    mjm2: times(1),
    "kj/m2": times(0.001),
    "j/m2": times(1e-6),
    "w/m2": times(0.0864), // 86 400 s a day
    wm2: times(0.0864),
    "kwh/m2": times(3.6),
    "kw-hr/m2": times(3.6),
    ly: times(0.04184), // thermochemical calorie a cm2
    langley: times(0.04184),
    "cal/cm2": times(0.04184),
  },
  humidity: { "%": times(1), percent: times(1), pct: times(1), fraction: times(100), frac: times(100) },
  wind: {
    "m/s": times(1),
    ms: times(1),
    "0.1m/s": times(0.1),
    "m/sec": times(1),
    mp: times(1), // "mps" without its s
    "km/h": times(1 / 3.6),
    "km/hr": times(1 / 3.6),
    kph: times(1 / 3.6),
    kmh: times(1 / 3.6),
    "km/d": times(1 / 86.4),
    "mi/h": times(0.44704),
    mph: times(0.44704),
    kt: times(1852 / 3600),
    kn: times(1852 / 3600),
    knot: times(1852 / 3600),
  },
};

/** Units to write, for messages. */
export const unitExamples: Readonly<Record<Quantity, string>> = {
  depth: "mm, cm or in",
  temperature: "C, F or K",
  solar: "MJ/m2 (a day), W/m2 or kWh/m2",
  humidity: "%",
  wind: "m/s, km/h, mph or kn",
};

/** What the unit text says, or null when it is none that we know for this quantity. Case and spaces do not matter. */
export function conversionFrom(unitText: string, quantity: Quantity): Conversion | null {
  const table = conversions[quantity];
  const plain = plainUnit(unitText);
  if (Object.hasOwn(table, plain)) return table[plain]!;
  const singular = plain.replace(/s$/, "");
  return Object.hasOwn(table, singular) ? table[singular]! : null;
}

/**
 * One spelling for the many of a unit: `W m-2`, `W/m²` and `w per m2` become `w/m2`.
 * "a day" at the end goes, since every figure is one of a day; `km/day` keeps it.
 */
function plainUnit(text: string): string {
  let unit = text
    .toLowerCase()
    .replace(/[°º\ufffd·*^"']/g, "")
    .replace(/²/g, "2")
    .replace(/\b(?:degrees?|deg)\b|^deg(?=[cfk]$)/g, "")
    .replace(/\bper\b/g, "/")
    .replace(
      /\b([a-z]+) ?-([12])\b/g,
      (_, base: string, power: string) => `/${base}${power === "1" ? "" : power}`,
    )
    .replace(/\s+/g, "")
    .replace(/hours?|hr$/g, "h")
    .replace(/days?/g, "d")
    .replace(/^kilowatt-?/, "kw");
  if (unit.startsWith("/")) unit = unit.slice(1);
  return unit.startsWith("km/") ? unit : unit.replace(/\/d$/, "").replace(/^kw-h\//, "kw-hr/");
}
