import lineTable from "../../../data-reference/yield-lines.json";
import { findCrop, type SourceMark } from "../crops.ts";
import { refuse } from "../../problem.ts";
import { mmPerInch } from "../../quantity/constants.ts";
import { nearestName } from "../../nearestName.ts";
import { floweringLossOf } from "./floweringStress.ts";
import type { SeasonSlopes, Slope } from "./seasonSlope.ts";
import {
  bushelsPerAcre,
  kgPerHaOfUs,
  poundsPerAcre,
  slopeOfUsPerInch,
  type YieldLine,
  type YieldUnit,
} from "./yieldLine.ts";

/** A published line of one place, in the units it was published in. */
export interface LineChoice {
  readonly name: string;
  readonly place: string;
  readonly years: string | null;
  /** Where it holds. */
  readonly region: string;
  readonly thresholdIn: number;
  readonly thresholdMark: SourceMark;
  /** The place's own slope; null: the crop's range alone. */
  readonly slopeUsPerInch: number | null;
  readonly mark: SourceMark;
  readonly source: string;
  readonly locator: string;
  readonly note: string | null;
}

/** What is published of a crop's yield and its water use: see `data-reference/yield-lines.json`. */
export interface CropLines {
  readonly crop: string;
  readonly us: YieldUnit["us"];
  readonly lbPerUsUnit: number;
  readonly slopeUsPerInch: { readonly low: number; readonly middle: number; readonly high: number };
  readonly slopeWhy: string;
  readonly slopeMark: SourceMark;
  readonly defaultChoice: string;
  /** The usual line from a latitude on, degrees from the equator. */
  readonly north: { readonly fromLatitude: number; readonly choice: string } | null;
  /** The greatest yield published of dryland crops; null where none stands in our sources. */
  readonly cap: { readonly us: number; readonly source: string; readonly mark: SourceMark } | null;
  readonly seasons: PublishedSeasons | null;
  readonly choices: readonly LineChoice[];
  /** Measured worth of an inch stored at sowing. */
  readonly storedInch: { readonly note: string; readonly mark: SourceMark; readonly source: string } | null;
}

/** Slopes of stored water in dry and wet seasons as published: ranges of season rain, mm, and of slope, kg/ha per mm. */
export interface PublishedSeasons {
  readonly dryRainMm: readonly number[];
  readonly wetRainMm: readonly number[];
  readonly dry: readonly number[];
  readonly wet: readonly number[];
  readonly ordinaryDrawMm: number;
  readonly drawWhy: string;
  readonly source: string;
  readonly mark: SourceMark;
  readonly locator: string;
}

/** Our own file: a test goes through every line of it. */
export const cropLines = lineTable.lines as readonly CropLines[];

/** The lines of a crop by its name or alias; an InputError for a crop that is not in the table. */
export function linesOfCrop(crop: string, field = "yield.crop"): CropLines {
  const { name } = findCrop(crop, field);
  const lines = cropLines.find((one) => one.crop === name);
  if (!lines) throw new Error(`no yield line for ${name}`);
  return lines;
}

/**
 * The crop's usual line at a place: some have one for the south and one for the north.
 *
 * @param latitudeDeg null where the place is not known
 */
export function usualLine({ defaultChoice, north }: CropLines, latitudeDeg: number | null): string {
  return north !== null && latitudeDeg !== null && Math.abs(latitudeDeg) >= north.fromLatitude
    ? north.choice
    : defaultChoice;
}

/** The names a user can choose from, the usual one first. */
export function lineChoiceNames(crop: string, latitudeDeg: number | null = null): readonly string[] {
  const lines = linesOfCrop(crop);
  const usual = usualLine(lines, latitudeDeg);
  return [usual, ...lines.choices.map(({ name }) => name).filter((name) => name !== usual)];
}

/**
 * The yield line of a crop in SI, with the cap published for the crop.
 *
 * The slope is the crop's range. Where the chosen place published its own slope, that is the middle, and the range is
 * widened to hold it: a threshold belongs to its slope.
 *
 * @param crop a name or alias of the crop table
 * @param choice a name of `lineChoiceNames`; left out, the usual one
 * @param field where the choice stands, for the error
 * @param latitudeDeg of the field, for the usual line; null where it is not known
 */
export function yieldLineFor(
  crop: string,
  choice?: string,
  field = "yield.line",
  latitudeDeg: number | null = null,
): YieldLine {
  const lines = linesOfCrop(crop);
  const chosen = choiceNamed(lines, choice ?? usualLine(lines, latitudeDeg), field);
  const unit = yieldUnitOf(lines);
  const { low, middle, high } = lines.slopeUsPerInch;
  const own = chosen.slopeUsPerInch ?? middle;
  return {
    slopeKgPerHaPerMm: {
      low: slopeOfUsPerInch(Math.min(low, own), unit),
      middle: slopeOfUsPerInch(own, unit),
      high: slopeOfUsPerInch(Math.max(high, own), unit),
    },
    thresholdMm: chosen.thresholdIn * mmPerInch,
    capKgPerHa: lines.cap === null ? null : kgPerHaOfUs(lines.cap.us, unit),
    capSource: lines.cap === null ? null : `${lines.cap.source} (${lines.cap.mark})`,
    region: chosen.region,
    seasons: lines.seasons === null ? null : seasonsOf(lines.seasons),
    floweringLoss: floweringLossOf(lines.crop),
    unit,
    source: saidSource(lines, chosen),
    storedInchNote: lines.storedInch
      ? `${lines.storedInch.note} (${lines.storedInch.source}; ${lines.storedInch.mark})`
      : null,
  };
}

/**
 * Dry and wet slopes hold at the middles of the seasons they were measured in, and blend between those (ours). Their own ends
 * are low and high, the middle half-way (ours).
 */
function seasonsOf({
  dryRainMm,
  wetRainMm,
  dry,
  wet,
  ordinaryDrawMm,
  source,
  mark,
}: PublishedSeasons): SeasonSlopes {
  return {
    dryRainMm: halfWay(dryRainMm),
    wetRainMm: halfWay(wetRainMm),
    dry: slopeOf(dry),
    wet: slopeOf(wet),
    ordinaryDrawMm,
    source: `${source} (${mark})`,
  };
}

function halfWay([from = 0, to = 0]: readonly number[]): number {
  return (from + to) / 2;
}

function slopeOf(range: readonly number[]): Slope {
  const [low = 0, high = 0] = range;
  return { low, middle: halfWay(range), high };
}

/** How a crop's yield is counted. */
export function yieldUnitOf({ us, lbPerUsUnit }: CropLines): YieldUnit {
  return us === "bu/ac" ? bushelsPerAcre(lbPerUsUnit) : poundsPerAcre;
}

function choiceNamed({ crop, choices }: CropLines, wanted: string, field: string): LineChoice {
  const plain = wanted.trim().toLowerCase();
  const found = choices.find(({ name }) => name.toLowerCase() === plain);
  if (found) return found;
  const names = choices.map(({ name }) => name);
  const near = nearestName(wanted, names);
  return refuse(
    field,
    `a yield line of ${crop}: ${names.join("; ")}`,
    wanted,
    near === null ? "choose one of these, or give slope and threshold" : `did you mean "${near}"?`,
  );
}

function saidSource({ slopeWhy, slopeMark }: CropLines, chosen: LineChoice): string {
  const { name, years, source, mark, thresholdIn, thresholdMark, note } = chosen;
  const when = years === null || name.includes(years) ? "" : `, ${years}`;
  const threshold = thresholdMark === mark ? "" : `; threshold ${thresholdIn} in (${thresholdMark})`;
  const more = note === null ? "" : `; ${note}`;
  return `${name}${when}: ${source} (${mark})${threshold}${more}. Slope range (${slopeMark}): ${slopeWhy}`;
}
