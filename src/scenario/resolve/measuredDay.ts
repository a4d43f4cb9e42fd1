import { dayInYear, type MonthDay } from "../../quantity/calendar.ts";
import { sayMonthDay } from "../../quantity/index.ts";
import type { CasePart, ScenarioFile } from "../fields/file.ts";
import type { CropPlace } from "./cropSeason.ts";
import { complain, openNotebook, type Notebook } from "./notebook.ts";
import { resolveCrop } from "./resolveCrop.ts";
import { statesWater, type RotationYear } from "./rotation/rotationYears.ts";

/** A year that stands for any. */
const someYear = 2003;

/** Days from the day on which the water was measured to the next sowing. */
export function daysToSowing(measured: MonthDay, sowing: MonthDay): number {
  const sown = dayInYear(someYear, sowing);
  const same = dayInYear(someYear, measured);
  return sown - (same <= sown ? same : dayInYear(someYear - 1, measured));
}

/**
 * The file as its runs begin on the day of the measurement: the time from there to sowing is the fallow that is run. Years in a
 * row have their own fallows; see `refuseOutsideFallow`.
 */
export function fromMeasuredDay(file: ScenarioFile, place: CropPlace, notebook: Notebook): ScenarioFile {
  const { waterMeasured: measured } = file.soil;
  if (measured === undefined) return file;
  if (refuseUnmeasured(file, notebook)) return file;
  const lengths = [
    { path: "fallow.length", length: file.fallow?.length },
    ...(file.cases ?? []).map(({ fallow }, c) => ({
      path: `cases[${c}].fallow.length`,
      length: fallow?.length,
    })),
  ];
  const twice = lengths.find(({ length }) => length !== undefined);
  if (twice !== undefined) {
    complain(
      notebook,
      twice.path,
      "no length beside soil.waterMeasured, from which day the run begins",
      "one",
      "leave one of the two out",
    );
    return file;
  }
  const length = fallowOf(file, undefined, measured, place);
  // What is wrong with the crop is told where it stands.
  if (length === null) return file;
  tellFallow(length, measured, notebook);
  const cases = file.cases?.map((part) => {
    const own = part.crop === undefined ? null : fallowOf(file, part, measured, place);
    return own === null || own === length ? part : { ...part, fallow: { length: own } };
  });
  return { ...file, fallow: { length }, ...(cases === undefined ? {} : { cases }) };
}

function fallowOf(
  file: ScenarioFile,
  part: CasePart | undefined,
  measured: MonthDay,
  place: CropPlace,
): number | null {
  const plan = resolveCrop({ ...file.crop, ...part?.crop }, file.crop, place, "crop", openNotebook());
  return plan === undefined ? null : daysToSowing(measured, plan.sowing);
}

export function tellFallow(days: number, measured: MonthDay, { defaults }: Notebook): void {
  defaults.push({
    field: "fallow.length",
    value: `${days} days`,
    why: `from ${sayMonthDay(measured)}, when the water was measured, to sowing`,
  });
}

/** Whether there is nothing that was measured on the day. */
function refuseUnmeasured(file: ScenarioFile, notebook: Notebook): boolean {
  if (statesWater(file)) return false;
  complain(
    notebook,
    "soil.waterMeasured",
    "water that was measured on it, in soil.startingWater or in the layers",
    "none",
    "give what was found, or leave the day out",
  );
  return true;
}

/** With years in a row the water is measured while the field lies between the crop before and the crop in question. */
export function refuseOutsideFallow(file: ScenarioFile, asked: RotationYear, notebook: Notebook): void {
  const { waterMeasured: measured } = file.soil;
  if (measured === undefined || refuseUnmeasured(file, notebook)) return;
  const { plan, before, fallowDays } = asked;
  if (daysToSowing(measured, plan.sowing) <= fallowDays) return;
  complain(
    notebook,
    "soil.waterMeasured",
    `a day between the harvest of ${before} and the sowing of ${plan.name}, the ${fallowDays} days before ${sayMonthDay(plan.sowing)}`,
    sayMonthDay(measured),
    "give the day of a probe between the two; one in the growing crop belongs to outlook",
  );
}
