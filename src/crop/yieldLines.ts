import lineTable from "../../data-reference/yield-lines.json";
import { findCrop, type SourceMark } from "./crops.ts";
import { refuse } from "../problem.ts";
import { mmPerInch } from "../quantity/constants.ts";
import { nearestName } from "../nearestName.ts";
import {
  bushelsPerAcre,
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
  readonly choices: readonly LineChoice[];
  /** Measured worth of an inch stored at sowing. */
  readonly storedInch: { readonly note: string; readonly mark: SourceMark; readonly source: string } | null;
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

/** The names a user can choose from, the default first. */
export function lineChoiceNames(crop: string): readonly string[] {
  const { defaultChoice, choices } = linesOfCrop(crop);
  return [defaultChoice, ...choices.map(({ name }) => name).filter((name) => name !== defaultChoice)];
}

/**
 * The yield line of a crop in SI, without a cap.
 *
 * The slope is the crop's range. Where the chosen place published its own slope, that is the middle, and the range is
 * widened to hold it: a threshold belongs to its slope.
 *
 * @param crop a name or alias of the crop table
 * @param choice a name of `lineChoiceNames`; left out, the default
 * @param field where the choice stands, for the error
 */
export function yieldLineFor(crop: string, choice?: string, field = "yield.line"): YieldLine {
  const lines = linesOfCrop(crop);
  const chosen = choiceNamed(lines, choice ?? lines.defaultChoice, field);
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
    capKgPerHa: null,
    unit,
    source: saidSource(lines, chosen),
    storedInchNote: lines.storedInch
      ? `${lines.storedInch.note} (${lines.storedInch.source}; ${lines.storedInch.mark})`
      : null,
  };
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
