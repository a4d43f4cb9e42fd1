import type { CropPlan } from "../../crop/crop.ts";
import { cropNamed } from "../../crop/crops.ts";
import { believableShares, fullStandOf } from "../../crop/fullStand.ts";
import type { StageLengths } from "../../crop/stages.ts";
import { standShareOf } from "../../crop/thinStand.ts";
import { sayBoth, tryQuantity } from "../../quantity/index.ts";
import { m2PerAcre } from "../../quantity/constants.ts";
import { alternatives, isSaidTwice } from "../fields/facts/alternatives.ts";
import { cropFields } from "../fields/cropFields.ts";
import type { CropPart } from "../fields/file.ts";
import { complain, orDefault, type Notebook } from "./notebook.ts";

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
export function standOf(part: CropPart, path: string, notebook: Notebook): number | null | undefined {
  const { stand, population, fullPopulation, plantHabit } = part;
  if (plantHabit !== undefined && population === undefined && fullPopulation === undefined) {
    complain(
      notebook,
      `${path}.plantHabit`,
      "a population that it belongs to",
      stand === undefined ? "none" : "stand, which says the leaves outright",
      stand === undefined
        ? "give population, or leave plantHabit out"
        : "leave plantHabit out, or give population in place of stand",
    );
    return undefined;
  }
  if (population === undefined && fullPopulation === undefined) return stand ?? null;
  if (isSaidTwice(part, "stand", alternatives.crop)) {
    complain(
      notebook,
      `${path}.stand`,
      "a stand, or population and fullPopulation",
      "both",
      "leave one way out",
    );
    return undefined;
  }
  if (population === undefined) {
    complain(
      notebook,
      `${path}.population`,
      'the plants that stand there, such as "16,000 plants/ac", beside a full population',
      undefined,
      "give them, or leave fullPopulation out",
    );
    return undefined;
  }
  const full = fullPopulation ?? usualFull(part, path, notebook);
  if (full === undefined || !isBelievable(population, full, part.name, path, notebook)) return undefined;
  const usualHabit = cropFields.shape.plantHabit.byDefault;
  const habit = orDefault(notebook, plantHabit, usualHabit, `${path}.plantHabit`);
  return standShareOf(population / full, habit);
}

/** The crop's own full stand, per m2; a crop of the user's own has none. */
function usualFull({ name }: CropPart, path: string, notebook: Notebook): number | undefined {
  const known = cropNamed(name);
  const usual = known === null ? null : fullStandOf(known);
  if (usual === null) {
    complain(
      notebook,
      `${path}.fullPopulation`,
      `the plants of a full stand of ${name}, such as "24,000 plants/ac"`,
      undefined,
      "give them too",
    );
    return undefined;
  }
  notebook.defaults.push({
    field: `${path}.fullPopulation`,
    value: sayBoth(usual.plantsPerM2, "population"),
    why: `a full dryland stand: ${usual.source} (${usual.mark})`,
  });
  return usual.plantsPerM2;
}

/** A count far from any stand was written in another unit: most often in thousands. */
function isBelievable(
  plantsPerM2: number,
  fullPerM2: number,
  name: string,
  path: string,
  notebook: Notebook,
): boolean {
  const share = plantsPerM2 / fullPerM2;
  if (share >= believableShares.from && share <= believableShares.to) return true;
  const asThousands = share * 1000 >= believableShares.from && share * 1000 <= believableShares.to;
  complain(
    notebook,
    `${path}.population`,
    `a stand of ${name}: a full one has ${plantsPerAcre(fullPerM2)}, a thin one a part of that`,
    plantsPerAcre(plantsPerM2),
    asThousands
      ? `write the thousands out: "${plantsPerAcre(1000 * plantsPerM2)}"`
      : 'count the plants of a thousandth of an acre and write the thousands out, such as "16,000 plants/ac"',
  );
  return false;
}

/** As the trade writes a stand: "16,000 plants/ac". */
function plantsPerAcre(plantsPerM2: number): string {
  return `${Math.round(plantsPerM2 * m2PerAcre).toLocaleString("en-US")} plants/ac`;
}
