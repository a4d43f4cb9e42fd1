import { isSod, type CropPlan } from "../../../crop/crop.ts";
import { cropNamed, findCrop } from "../../../crop/crops.ts";
import { usualSeasonDays } from "../../../crop/stages.ts";
import { dayInYear, dayOfMonth, monthOf, yearOf } from "../../../quantity/calendar.ts";
import { sayMonthDay } from "../../../quantity/index.ts";
import type { CropPart, ScenarioFile } from "../../fields/file.ts";
import { fallowYear, type RotationPart } from "../../fields/rotationFields.ts";
import type { CropPlace } from "../cropSeason.ts";
import { attempt, complain, openNotebook, type Notebook } from "../notebook.ts";
import { isDescribed, resolveCrop } from "../resolveCrop.ts";

/** A crop of a rotation as the file tells it, and its usual days. */
export interface RotationYear {
  readonly path: string;
  readonly part: CropPart;
  readonly plan: CropPlan;
  readonly isAsked: boolean;
  readonly sownYearBefore: boolean;
  /** The crop before, and the usual days without a crop since its harvest. */
  readonly before: string;
  readonly fallowDays: number;
}

/** What each year of a named rotation grows; "wheat" is the scenario's own wheat where it asks about one. */
const named = {
  "wheat-fallow": ["wheat", fallowYear],
  "wheat-corn-fallow": ["wheat", "corn", fallowYear],
  "wheat-sorghum-fallow": ["wheat", "grain sorghum", fallowYear],
  "wheat-sunflower-fallow": ["wheat", "sunflower", fallowYear],
} as const;

/**
 * The years of a rotation with their usual days; undefined where it cannot be, with the problems written down.
 *
 * @param inItsSpring a crop without a sowing day on the other side of the equator
 */
export function rotationYears(
  rotation: RotationPart,
  asked: CropPart,
  place: CropPlace,
  inItsSpring: (part: CropPart) => CropPart,
  notebook: Notebook,
): (RotationYear | null)[] | undefined {
  const known = notebook.problems.length;
  const parts = partsOf(rotation, asked);
  const isOne = (name: string) => sameCrop(name, asked.name);
  const plans = parts.map((part, i) => {
    if (part === null) return null;
    const path = typeof rotation === "string" ? "rotation" : `rotation[${i}]`;
    const isAsked = isOne(part.name);
    if (isAsked) refuseOtherNumbers(part, asked, path, notebook);
    const own = inItsSpring(isAsked ? asked : part);
    const plan = planOf(own, isAsked, place, path, notebook);
    return plan === undefined ? undefined : { path, part: own, plan, isAsked };
  });
  if (plans.every((one) => one === null))
    complain(notebook, "rotation", "at least one crop", "only fallow", "name the crops between the fallows");
  else if (notebook.problems.length === known && !parts.some((part) => part !== null && isOne(part.name)))
    complain(
      notebook,
      "rotation",
      `the crop that the question is about among its crops, ${asked.name}`,
      parts.map((part) => part?.name ?? fallowYear).join(", "),
      "add it, or ask about one of these: change crop.name",
    );
  // A crop in question that cannot be is told where it stands.
  if (notebook.problems.length > known || plans.includes(undefined)) return undefined;
  const whole = plans.map((one) => one ?? null);
  const years = whole.map((one, i) =>
    one === null ? null : { ...one, ...fallowBefore(whole, i, notebook) },
  );
  return notebook.problems.length > known ? undefined : years;
}

function partsOf(rotation: RotationPart, asked: CropPart): (CropPart | null)[] {
  if (rotation === "every year") return [asked];
  const list = typeof rotation === "string" ? named[rotation] : rotation;
  const ownWheat = /wheat/i.test(asked.name) ? asked.name : "winter wheat";
  return list.map((one) => {
    if (typeof one !== "string") return one;
    if (one.trim().toLowerCase() === fallowYear) return null;
    return { name: typeof rotation === "string" && one === "wheat" ? ownWheat : one };
  });
}

/** The crop in question takes the numbers of `crop`: others beside its name here would go unheeded. */
function refuseOtherNumbers(part: CropPart, asked: CropPart, path: string, notebook: Notebook): void {
  for (const [key, value] of Object.entries(part)) {
    const theirs = asked[key as keyof CropPart];
    if (key === "name" || value === undefined || JSON.stringify(value) === JSON.stringify(theirs)) continue;
    complain(
      notebook,
      `${path}.${key}`,
      `nothing beside the name of ${asked.name}, the crop in question: it takes the numbers of crop`,
      "another number",
      `give it as crop.${key}`,
    );
    return;
  }
}

function sameCrop(a: string, b: string): boolean {
  const [one, other] = [cropNamed(a)?.name ?? a, cropNamed(b)?.name ?? b];
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}

function planOf(
  part: CropPart,
  isAsked: boolean,
  place: CropPlace,
  path: string,
  notebook: Notebook,
): CropPlan | undefined {
  if (!isAsked && cropNamed(part.name) === null) {
    if (!isDescribed(part)) attempt(notebook, () => findCrop(part.name, path));
    else
      complain(
        notebook,
        path,
        "a crop with a published yield line, or the crop of crop itself with yield beside it",
        `"${part.name}"`,
        "ask about this crop, or name one that we have numbers of",
      );
    return undefined;
  }
  // What is wrong with the crop in question is told at its own place.
  const scratch = openNotebook();
  const plan = resolveCrop(part, part, place, path, scratch);
  if (!isAsked) notebook.problems.push(...scratch.problems);
  if (plan !== undefined && isSod(plan)) {
    complain(notebook, path, "crops that are sown and ripen", `"${part.name}"`, "leave rotation out for sod");
    return undefined;
  }
  return plan;
}

type Planned = Pick<RotationYear, "path" | "part" | "plan" | "isAsked">;

/** A year that stands for any, with one before it. */
const someYear = 2003;

/** Years are of harvest: a crop that is ripe only in the next calendar year was sown in the one before. */
function daysIn(year: number, plan: CropPlan): { sowing: number; maturity: number; sownYearBefore: boolean } {
  const crosses = yearOf(dayInYear(someYear, plan.sowing) + usualSeasonDays(plan) - 1) > someYear;
  const sowing = dayInYear(crosses ? year - 1 : year, plan.sowing);
  return { sowing, maturity: sowing + usualSeasonDays(plan) - 1, sownYearBefore: crosses };
}

function fallowBefore(
  years: readonly (Planned | null)[],
  i: number,
  notebook: Notebook,
): Pick<RotationYear, "sownYearBefore" | "before" | "fallowDays"> {
  const { plan, path, part } = years[i]!;
  let back = 1;
  while (years[mod(i - back, years.length)] === null) back++;
  const last = years[mod(i - back, years.length)]!;
  const { sowing, sownYearBefore } = daysIn(someYear, plan);
  const { maturity } = daysIn(someYear - back, last.plan);
  const fallowDays = sowing - maturity - 1;
  if (fallowDays < 0)
    complain(
      notebook,
      path,
      `${part.name} sown after the harvest of ${last.part.name} before it`,
      `${part.name} sown ${sayDay(sowing)}, ${last.part.name} ripe ${sayDay(maturity)}`,
      "put a fallow between, or change the days of sowing",
    );
  return { sownYearBefore, before: last.part.name, fallowDays };
}

const mod = (a: number, n: number): number => ((a % n) + n) % n;
const sayDay = (day: number): string => sayMonthDay({ month: monthOf(day), day: dayOfMonth(day) });

/** Whether the file states any water to start with. */
export function statesWater({ soil, cases = [] }: ScenarioFile): boolean {
  const states = (
    part: { startingWater?: unknown; layers?: readonly { water?: unknown }[] | undefined } = {},
  ) => part.startingWater !== undefined || (part.layers ?? []).some(({ water }) => water !== undefined);
  return states(soil as never) || cases.some((one) => states((one.soil ?? {}) as never));
}
