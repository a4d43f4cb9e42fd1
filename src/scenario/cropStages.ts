import type { CropPlan } from "../crop/crop.ts";
import type { StageLengths } from "../crop/stages.ts";
import { standShareOf } from "../crop/thinStand.ts";
import { tryQuantity } from "../quantity/index.ts";
import type { CropPart } from "./file.ts";
import { complain, orPlainDefault, type Notebook } from "./notebook.ts";

/** Stages and stand of a crop, from what the file gives of them. */

export interface Stages {
  readonly clock: CropPlan["clock"];
  /** As given; undefined = the crop's own. */
  readonly lengths: StageLengths | undefined;
  readonly days: StageLengths;
}

/** Undefined where the lengths do not fit the clock. */
export function stagesOf(
  part: CropPart,
  usual: CropPlan,
  path: string,
  notebook: Notebook,
): Stages | undefined {
  const clock = part.clock ?? clockOf(part) ?? usual.clock;
  const lengths = lengthsOf(part, clock, path, notebook);
  if (part.stageLengths !== undefined && lengths === undefined) return undefined;
  const days = part.stageDays === undefined ? undefined : asStages(part.stageDays);
  return {
    clock,
    lengths,
    days: days ?? (clock === "days" ? lengths : undefined) ?? usual.stageDaysFallback,
  };
}

/** What the stage lengths are written in; undefined for bare numbers. */
export function clockOf({ stageLengths = [] }: CropPart): CropPlan["clock"] | undefined {
  const [first] = stageLengths.filter((length) => typeof length === "string" && !/^[\d.\s]+$/.test(length));
  if (first === undefined) return undefined;
  return typeof tryQuantity(first, "thermalTime") === "number" ? "thermal time" : "days";
}

export function lengthsOf(
  { stageLengths }: CropPart,
  clock: CropPlan["clock"],
  path: string,
  notebook: Notebook,
): StageLengths | undefined {
  if (stageLengths === undefined) return undefined;
  const lengths: number[] = [];
  for (const [s, length] of stageLengths.entries()) {
    const value = tryQuantity(length, clock === "days" ? "duration" : "thermalTime");
    if (typeof value === "number") lengths.push(value);
    else {
      const expected = `${value.expected}, as the clock is "${clock}"`;
      complain(notebook, `${path}.stageLengths[${s}]`, expected, `"${length}"`, value.mend);
      return undefined;
    }
  }
  if (lengths.some((length) => length > 0)) return asStages(lengths);
  complain(notebook, `${path}.stageLengths`, "stages that last", "none that does", "give their lengths");
  return undefined;
}

export function asStages([a = 0, b = 0, c = 0, d = 0]: readonly number[]): StageLengths {
  return [a, b, c, d];
}

/** Leaf area against a full stand; null = not said, undefined = cannot be. */
export function standOf(
  { stand, population, fullPopulation, plantHabit }: CropPart,
  path: string,
  notebook: Notebook,
): number | null | undefined {
  if (population === undefined && fullPopulation === undefined) return stand ?? null;
  if (stand !== undefined) {
    complain(
      notebook,
      `${path}.stand`,
      "a stand, or population and fullPopulation",
      "both",
      "leave one way out",
    );
    return undefined;
  }
  if (population === undefined || fullPopulation === undefined) {
    const lacking = population === undefined ? "population" : "fullPopulation";
    complain(
      notebook,
      `${path}.${lacking}`,
      'population and fullPopulation together, such as "24,000 plants/ac"',
      undefined,
      "give it too",
    );
    return undefined;
  }
  const habit = orPlainDefault(
    notebook,
    plantHabit,
    "fills in",
    `${path}.plantHabit`,
    "plants branch or tiller into the room they have (FAO-56 Box 17)",
  );
  return standShareOf(population / fullPopulation, habit);
}
