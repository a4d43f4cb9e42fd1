import { type Problem, quoteFound } from "../../problem.ts";
import { layerOrigins } from "./layerOrigin.ts";
import { type LayerDescription, layerFieldNames } from "./layerDescription.ts";
import { soilStructures } from "../equations/penetrationFactor.ts";
import { deepestSoil, hardestReading } from "./soilLimits.ts";

type NumberKey = {
  [K in keyof LayerDescription]-?: number extends LayerDescription[K] ? K : never;
}[keyof LayerDescription];

interface Range {
  readonly low: number;
  readonly high: number;
  readonly expected: string;
  readonly mend: string;
}

const share = (what: string, high: number): Range => ({
  low: 0,
  high,
  expected: `${what} from 0 to ${high * 100} %`,
  mend: "check the unit: a bare number is a fraction, 0 to 1",
});
const depth: Range = {
  low: 0,
  high: deepestSoil.mm,
  expected: `a depth from 0 to ${deepestSoil.metric}`,
  mend: "give depths below the surface",
};
const water: Range = {
  low: 0.001,
  high: 0.95,
  expected: "water as a share of the soil's volume, above 0 and below 95 %",
  mend: "check the unit; weight percent needs the bulk density beside it",
};

/** What a single value can be; above or below it is a slip of the unit, not a soil. Judgement of ours. */
const ranges: Readonly<Record<NumberKey, Range>> = {
  topMm: depth,
  bottomMm: depth,
  sandFraction: share("sand", 1),
  clayFraction: share("clay", 1),
  organicMatterPercent: {
    low: 0,
    high: 100,
    expected: "organic matter from 0 to 100 % by weight",
    mend: "give percent, such as 1.5",
  },
  bulkDensityKgPerM3: {
    low: 500,
    high: 2200,
    expected: "a bulk density from 0.5 to 2.2 g/cm^3 (500 to 2200 kg/m^3)",
    mend: "give the dry density of the soil without its stones, or leave it out to estimate it from texture",
  },
  gravelVolumeFraction: share("stones by volume", 0.9),
  gravelMassFraction: share("stones by weight", 0.9),
  fieldCapacity: water,
  wiltingPoint: water,
  availableWater: water,
  saturation: water,
  saturatedConductivityMmPerDay: {
    low: 1e-6,
    high: 1e6,
    expected: "a saturated conductivity above 0 and below 1 km a day",
    mend: "for rock end the column there instead",
  },
  penetrationResistanceMPa: {
    low: 0,
    high: hardestReading.MPa,
    expected: `a penetrometer reading from 0 to ${hardestReading.metric} (${hardestReading.us})`,
    mend: "check the unit: 300 psi is about 2 MPa",
  },
  openShare: share("the share of cracks and old root channels", 1),
};

/** Every value of a description that cannot be, and values that exclude each other. Empty = go on. */
export function layerProblems(layer: LayerDescription, path: string): Problem[] {
  const problems: Problem[] = [];
  const field = (key: keyof LayerDescription): string => `${path}.${layerFieldNames[key]}`;
  for (const key of Object.keys(ranges) as NumberKey[]) {
    const value = layer[key];
    if (value === undefined) continue;
    const { low, high, expected, mend } = ranges[key];
    if (value >= low && value <= high) continue; // false for NaN
    problems.push({ field: field(key), expected, found: sayFound(key, value), mend });
  }
  if (problems.length > 0) return problems;

  if (layer.bottomMm <= layer.topMm) {
    problems.push({
      field: field("bottomMm"),
      expected: `a depth below the layer's top (${layer.topMm} mm)`,
      found: `${layer.bottomMm} mm`,
      mend: "depths are measured downward from the surface",
    });
  }
  if (layer.sandFraction !== undefined && layer.clayFraction !== undefined) {
    const both = layer.sandFraction + layer.clayFraction;
    if (both > 1 + 1e-9) {
      problems.push({
        field: field("clayFraction"),
        expected: "sand and clay that together make at most 100 %",
        found: `${percent(both)} together`,
        mend: "check both; silt is what they leave",
      });
    }
  }
  if (layer.gravelVolumeFraction !== undefined && layer.gravelMassFraction !== undefined) {
    problems.push({
      field: field("gravelMassFraction"),
      expected: "stones by volume or by weight",
      found: "both",
      mend: "leave one out",
    });
  }
  if (layer.structure !== undefined && !soilStructures.includes(layer.structure)) {
    problems.push({
      field: field("structure"),
      expected: `one of ${soilStructures.join(", ")}`,
      found: quoteFound(layer.structure),
      mend: "choose the one nearest to what the pit shows",
    });
  }
  if (layer.origin !== undefined && !layerOrigins.includes(layer.origin)) {
    problems.push({
      field: field("origin"),
      expected: `one of ${layerOrigins.join(", ")}`,
      found: quoteFound(layer.origin),
      mend: "say what made the layer dense, or leave it out",
    });
  }
  return problems;
}

function sayFound(key: NumberKey, value: number): string {
  if (!Number.isFinite(value)) return "no number";
  if (key === "bulkDensityKgPerM3") return `${round(value / 1000)} g/cm^3`;
  if (key === "penetrationResistanceMPa") return `${round(value)} MPa`;
  if (key === "organicMatterPercent") return `${round(value)} %`;
  if (key === "topMm" || key === "bottomMm") return `${round(value)} mm`;
  if (key === "saturatedConductivityMmPerDay") return `${value} mm a day`;
  return percent(value);
}

/** A share in words, to a hundredth of a percent. */
export const percent = (share: number): string => `${Math.round(share * 1e4) / 100} %`;
const round = (value: number): number => Math.round(value * 1e4) / 1e4;
