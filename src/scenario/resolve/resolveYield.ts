import {
  bushelsPerAcre,
  poundsPerAcre,
  usOfKgPerHa,
  usPerInchOfSlope,
  type YieldLine,
  type YieldUnit,
} from "../../crop/yield/yieldLine.ts";
import { lineChoiceNames, yieldLineFor } from "../../crop/yield/yieldLines.ts";
import { cropNamed } from "../../crop/crops.ts";
import { kgPerPound } from "../../quantity/constants.ts";
import { sayBoth, sayNumber, tryQuantity, type QuantityKind } from "../../quantity/index.ts";
import type { YieldPart } from "../fields/file.ts";
import { attempt, complain, type Notebook } from "./notebook.ts";

/** The yield line; undefined where it cannot be, with the problems written down. */
export function resolveYield(
  part: YieldPart,
  cropName: string,
  latitudeDeg: number | null,
  notebook: Notebook,
): YieldLine | undefined {
  const published =
    cropNamed(cropName) === null
      ? null
      : attempt(notebook, () => yieldLineFor(cropName, part.line, "yield.line", latitudeDeg));
  if (published === undefined) return undefined;
  if (published === null && part.line !== undefined) {
    complain(
      notebook,
      "yield.line",
      `slope and threshold: there is no published line of ${cropName}`,
      part.line,
      "leave line out",
    );
  }
  const unit =
    published === null ? unitGiven(part, notebook) : withTestWeight(published.unit, part, notebook);
  const threshold = part.threshold ?? published?.thresholdMm;
  if (threshold === undefined) {
    complain(
      notebook,
      "yield.threshold",
      `the water use below which ${cropName} gives no grain, such as "6 in"`,
      undefined,
      "give it: there is no published line of this crop",
    );
  }
  if (unit === undefined) return undefined;
  const slope =
    part.slope === undefined ? published?.slopeKgPerHaPerMm : slopeGiven(part.slope, unit, notebook);
  if (published === null && part.slope === undefined) {
    complain(
      notebook,
      "yield.slope",
      `low, middle and high extra yield of ${cropName} for each inch of water, such as "5 bu/ac/in"`,
      undefined,
      "give them: there is no published line of this crop",
    );
  }
  const cap =
    part.cap === undefined
      ? (published?.capKgPerHa ?? null)
      : readYield(part.cap, "yieldPerArea", unit, "yield.cap", notebook);
  if (slope === undefined || threshold === undefined || cap === undefined) return undefined;
  const own = part.slope !== undefined || part.threshold !== undefined;
  if (published !== null)
    sayLineDefaults(part, lineChoiceNames(cropName, latitudeDeg)[0]!, published, notebook);
  const source =
    part.source ??
    (published === null
      ? "given in the scenario"
      : own
        ? `${ownParts(part)} given in the scenario; otherwise ${published.source}`
        : published.source);
  return {
    slopeKgPerHaPerMm: slope,
    thresholdMm: threshold,
    capKgPerHa: cap,
    capSource: part.cap === undefined ? (published?.capSource ?? null) : null,
    region: own ? null : (published?.region ?? null),
    // Dry and wet slopes belong to the published line, not to a slope or threshold given.
    seasons: own ? null : (published?.seasons ?? null),
    floweringLoss: published?.floweringLoss ?? null,
    unit,
    source,
    storedInchNote: published?.storedInchNote ?? null,
  };
}

function sayLineDefaults(
  { line, slope, threshold, cap }: YieldPart,
  usual: string,
  published: YieldLine,
  { defaults }: Notebook,
): void {
  const { low, middle, high } = published.slopeKgPerHaPerMm;
  const why = line === undefined ? "the crop's usual published line" : "of the published line chosen";
  if (line === undefined && (slope === undefined || threshold === undefined)) {
    defaults.push({
      field: "yield.line",
      value: usual,
      why: `the crop's usual one here; it is for: ${published.region}`,
    });
  }
  if (slope === undefined)
    defaults.push({
      field: "yield.slope",
      value: `${saySlope(low, published)}, ${saySlope(middle, published)}, ${saySlope(high, published)}`,
      why,
    });
  if (threshold === undefined)
    defaults.push({ field: "yield.threshold", value: sayBoth(published.thresholdMm, "rain"), why });
  if (cap === undefined)
    defaults.push({
      field: "yield.cap",
      value: published.capKgPerHa === null ? "none" : sayYield(published.capKgPerHa, published),
      why: published.capSource ?? "no greatest yield of dryland crops is published in our sources",
    });
}

function sayYield(kgPerHa: number, { unit }: YieldLine): string {
  return `${sayNumber(usOfKgPerHa(kgPerHa, unit), 0)} ${unit.us}`;
}

function saySlope(kgPerHaPerMm: number, { unit }: YieldLine): string {
  return `${sayNumber(usPerInchOfSlope(kgPerHaPerMm, unit))} ${unit.us}/in`;
}

function ownParts({ slope, threshold }: YieldPart): string {
  if (slope !== undefined && threshold !== undefined) return "slope and threshold";
  return slope === undefined ? "threshold" : "slope";
}

function unitGiven({ unit, testWeight }: YieldPart, notebook: Notebook): YieldUnit | undefined {
  if (unit === "bu/ac") {
    if (testWeight !== undefined) return { us: "bu/ac", kgPerUsUnit: testWeight };
    complain(
      notebook,
      "yield.testWeight",
      'the mass of a bushel, such as "56 lb/bu"',
      undefined,
      'give it, or count the yield in "lb/ac"',
    );
    return undefined;
  }
  if (unit === undefined)
    notebook.defaults.push({ field: "yield.unit", value: "lb/ac", why: "a crop of your own" });
  return poundsPerAcre;
}

function withTestWeight(
  usual: YieldUnit,
  { unit, testWeight }: YieldPart,
  notebook: Notebook,
): YieldUnit | undefined {
  if (unit === "lb/ac") return poundsPerAcre;
  if (unit === "bu/ac" && usual.us === "lb/ac" && testWeight === undefined)
    return unitGiven({ unit, testWeight }, notebook);
  return testWeight === undefined ? usual : bushelsPerAcre(testWeight / kgPerPound);
}

function slopeGiven(
  slope: NonNullable<YieldPart["slope"]>,
  unit: YieldUnit,
  notebook: Notebook,
): YieldLine["slopeKgPerHaPerMm"] | undefined {
  const read = (end: "low" | "middle" | "high") =>
    readYield(slope[end], "yieldPerWater", unit, `yield.slope.${end}`, notebook);
  const [low, middle, high] = [read("low"), read("middle"), read("high")];
  if (low === undefined || middle === undefined || high === undefined) return undefined;
  if (low <= middle && middle <= high) return { low, middle, high };
  complain(
    notebook,
    "yield.slope",
    "low, middle and high in that order",
    `${slope.low}, ${slope.middle}, ${slope.high}`,
    "put the smallest first",
  );
  return undefined;
}

function readYield(
  written: string | number,
  kind: QuantityKind,
  unit: YieldUnit,
  field: string,
  notebook: Notebook,
): number | undefined {
  const kgPerBushel = unit.us === "bu/ac" ? unit.kgPerUsUnit : null;
  const value = tryQuantity(written, kind, { kgPerBushel });
  if (typeof value === "number") return value;
  complain(
    notebook,
    field,
    value.expected,
    `"${written}"`,
    kgPerBushel === null
      ? "this crop is not counted in bushels: write lb/ac or kg/ha, or give yield.unit and yield.testWeight"
      : value.mend,
  );
  return undefined;
}
