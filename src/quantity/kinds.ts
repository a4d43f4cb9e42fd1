import { kgPerPound, m2PerAcre, mmPerInch, mPerFoot } from "./constants.ts";

/** The kinds of quantity a person writes: what each is called, the units it may come in, and how it is shown again. */

export type Units = "us" | "metric";

export interface Kind {
  /** For errors: what is expected, with an example. */
  readonly expected: string;
  /** For errors: how to write it. */
  readonly mend: string;
  /** The unit of a bare number; null = there is none. */
  readonly bare: string | null;
  /** Inside: the unit behind the door of `quantity/`, as mathjs spells it. */
  readonly inside: string;
  /** How it is shown: unit, how many of it in one inside unit, most decimals. */
  readonly us: UnitFormat;
  readonly metric: UnitFormat;
}

export interface UnitFormat {
  readonly unit: string;
  readonly perInside: number;
  readonly decimals: number;
}

const acresPerHa = 10_000 / m2PerAcre;
const poundsPerAcrePerKgPerHa = 1 / (kgPerPound * acresPerHa);

const inches: UnitFormat = { unit: "in", perInside: 1 / mmPerInch, decimals: 2 };
const mm: UnitFormat = { unit: "mm", perInside: 1, decimals: 1 };
const gPerCm3: UnitFormat = { unit: "g/cm^3", perInside: 1 / 1000, decimals: 2 };
const percent: UnitFormat = { unit: "%", perInside: 100, decimals: 1 };
const days: UnitFormat = { unit: "days", perInside: 1, decimals: 0 };

const lengths = "write the unit as in, ft, mm, cm or m";

export const kinds = {
  /** Thickness or depth of soil or roots, mm. */
  depth: kind(
    'a depth such as "14 in" or "350 mm"',
    lengths,
    "mm",
    "mm",
    { ...inches, decimals: 1 },
    {
      ...mm,
      decimals: 0,
    },
  ),
  /** Depth of water, mm. */
  rain: kind('a depth of water such as "13 in" or "330 mm"', lengths, "mm", "mm", inches, mm),
  /** Elevation, m. */
  elevation: kind(
    'a height such as "3300 ft" or "1000 m"',
    "write the unit as ft or m",
    "m",
    "m",
    { unit: "ft", perInside: 1 / mPerFoot, decimals: 0 },
    { unit: "m", perInside: 1, decimals: 0 },
  ),
  /** Crop height, mm. */
  height: kind(
    'a height such as "4 ft" or "1.2 m"',
    lengths,
    "mm",
    "mm",
    { ...inches, decimals: 0 },
    {
      ...mm,
      decimals: 0,
    },
  ),
  /** kg/m3; bare numbers are g/cm^3, as people write it. */
  density: kind(
    'mass per volume such as "1.42 g/cm^3"',
    "write the unit as g/cm^3, kg/m^3 or lb/ft^3",
    "g/cm^3",
    "kg/m^3",
    gPerCm3,
    gPerCm3,
  ),
  /** Air or soil, C. */
  temperature: kind(
    'a temperature such as "50 F" or "10 C"',
    "write the unit as F or C",
    "degC",
    "degC",
    { unit: "F", perInside: 1.8, decimals: 0 },
    { unit: "C", perInside: 1, decimals: 1 },
  ),
  /** A step or spread of temperature, C. */
  temperatureDifference: kind(
    'a difference of temperature such as "9 F" or "5 C"',
    "write the unit as F or C",
    "degC",
    "degC",
    { unit: "F", perInside: 1.8, decimals: 1 },
    { unit: "C", perInside: 1, decimals: 1 },
  ),
  /** Degree days, C. */
  thermalTime: kind(
    'degree days such as "900 F day" or "500 C day"',
    "write the unit as F day or C day",
    "C day",
    "C day",
    { unit: "F day", perInside: 1.8, decimals: 0 },
    { unit: "C day", perInside: 1, decimals: 0 },
  ),
  /** Part of a whole, 0 to 1. */
  share: kind(
    'a share such as "35 %" or 0.35',
    "write it in percent with the sign, or as a number from 0 to 1",
    "1",
    "1",
    percent,
    percent,
  ),
  /** Part of a whole a day, 0 to 1. */
  sharePerDay: kind(
    'a share a day such as "9.6 %/day" or 0.096',
    "write it in percent a day, or as a number from 0 to 1",
    "1",
    "1",
    { ...percent, unit: "%/day" },
    { ...percent, unit: "%/day" },
  ),
  /** Penetrometer reading, MPa; 300 alone may be psi or kPa, so a bare number is none. */
  resistance: kind(
    'a penetrometer reading such as "300 psi" or "2.1 MPa"',
    "write the unit as psi, kPa, MPa or bar",
    null,
    "MPa",
    { unit: "psi", perInside: 145.037738, decimals: 0 },
    { unit: "MPa", perInside: 1, decimals: 2 },
  ),
  /** Wind, m/s. */
  speed: kind(
    'a speed such as "8 mph" or "3.5 m/s"',
    "write the unit as mph, km/h or m/s",
    "m/s",
    "m/s",
    { unit: "mph", perInside: 3600 / 1609.344, decimals: 1 },
    { unit: "m/s", perInside: 1, decimals: 1 },
  ),
  /** Depth a day, mm/day. */
  rate: kind(
    'a depth a day such as "0.6 in/day" or "15 mm/day"',
    "write the unit as in/day, cm/day or mm/day",
    "mm/day",
    "mm/day",
    { ...inches, unit: "in/day" },
    { ...mm, unit: "mm/day" },
  ),
  /** Saturated conductivity, mm/day. */
  conductivity: kind(
    'a conductivity such as "0.5 in/h", "9 um/s" or "12 mm/h"',
    "write the unit as in/h, mm/h, um/s or cm/day",
    "mm/day",
    "mm/day",
    { unit: "in/h", perInside: 1 / (24 * mmPerInch), decimals: 3 },
    { unit: "mm/h", perInside: 1 / 24, decimals: 2 },
  ),
  /** Days. */
  duration: kind(
    'a time such as "14 months" or "120 days"',
    "write the unit as days, weeks, months or years",
    "day",
    "day",
    days,
    days,
  ),
  /** Melt for each degree above freezing, mm per C and day. */
  meltFactor: kind(
    'a melt rate such as "0.06 in/F/day" or "2.7 mm/C/day"',
    "write the unit as in/F/day or mm/C/day",
    "mm/degC/day",
    "mm/degC/day",
    { unit: "in/F/day", perInside: 1 / (mmPerInch * 1.8), decimals: 3 },
    { unit: "mm/C/day", perInside: 1, decimals: 2 },
  ),
  /** Plants on the ground, per m2. */
  population: kind(
    'a plant count per area such as "24,000 plants/ac" or "6 plants/m^2"',
    'write the unit, and the thousands out: "16,000 plants/ac", or plants/ha or plants/m^2',
    null,
    "plants/m^2",
    { unit: "plants/ac", perInside: m2PerAcre, decimals: 0 },
    { unit: "plants/m^2", perInside: 1, decimals: 1 },
  ),
  /** Land, ha. */
  area: kind(
    'an area such as "160 ac" or "65 ha"',
    "write the unit as ac or ha",
    "hectare",
    "hectare",
    { unit: "ac", perInside: acresPerHa, decimals: 1 },
    { unit: "ha", perInside: 1, decimals: 1 },
  ),
  /** kg/ha; bushels need the crop's test weight. 61 alone may be bushels, so a bare number is none. */
  yieldPerArea: kind(
    'a yield such as "45 bu/ac" or "2800 kg/ha"',
    "write the unit as bu/ac, lb/ac, kg/ha or t/ha",
    null,
    "kg/hectare",
    { unit: "lb/ac", perInside: poundsPerAcrePerKgPerHa, decimals: 0 },
    { unit: "kg/ha", perInside: 1, decimals: 0 },
  ),
  /** Slope of a yield line, kg/ha for each mm; no bare numbers, as for a yield. */
  yieldPerWater: kind(
    'yield for each depth of water such as "4.9 bu/ac/in" or "12 kg/ha/mm"',
    "write the unit as bu/ac/in, lb/ac/in or kg/ha/mm",
    null,
    "kg/hectare/mm",
    { unit: "lb/ac/in", perInside: poundsPerAcrePerKgPerHa * mmPerInch, decimals: 1 },
    { unit: "kg/ha/mm", perInside: 1, decimals: 1 },
  ),
  /** Mass of a bushel, kg. */
  testWeight: kind(
    'a test weight such as "56 lb/bu"',
    "write the unit as lb/bu or kg/bu",
    null,
    "kg",
    { unit: "lb/bu", perInside: 1 / kgPerPound, decimals: 1 },
    { unit: "kg/bu", perInside: 1, decimals: 2 },
  ),
  /** A soil sample on the scale, g. */
  sampleMass: kind(
    'a weight such as "512 g"',
    "write the unit as g, kg, oz or lb",
    "g",
    "g",
    { unit: "g", perInside: 1, decimals: 1 },
    { unit: "g", perInside: 1, decimals: 1 },
  ),
  /** Of a soil core, cm3. */
  sampleVolume: kind(
    'a volume such as "318 cm^3" or "19.4 in^3"',
    "write the unit as cm^3 or in^3",
    "cm^3",
    "cm^3",
    { unit: "cm^3", perInside: 1, decimals: 1 },
    { unit: "cm^3", perInside: 1, decimals: 1 },
  ),
} satisfies Record<string, Kind>;

export type QuantityKind = keyof typeof kinds;

function kind(
  expected: string,
  mend: string,
  bare: string | null,
  inside: string,
  us: UnitFormat,
  metric: UnitFormat,
): Kind {
  return { expected, mend, bare, inside, us, metric };
}
