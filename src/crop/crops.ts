import { lookUp } from "../lookUp.ts";
import cropTable from "../../data-reference/crops.json";
import { refuse } from "../problem.ts";
import { nearestName } from "../nearestName.ts";
import type { CropPlan } from "./crop.ts";

/** Where a value comes from: read in its source, recalled, a rule of the trade, or a choice of ours. */
export type SourceMark = "read" | "memory" | "common practice, no source" | "ours";

/** A default with its reason, for `check` and for results. */
export interface Sourced<T> {
  readonly value: T;
  readonly mark: SourceMark;
  readonly why: string;
}

export type CropField = Exclude<keyof CropPlan, "name">;

/** How deep the crop was seen to root, m: one figure, or the range of a study. Shown, not reckoned with. */
export interface RootDepthSeen {
  readonly depthM: readonly number[];
  readonly where: string;
  readonly source: string;
  readonly mark: SourceMark;
}

/** Covers of the curve number table that a crop can be. */
export type CoverUnderCrop = "row crops" | "small grain" | "close-seeded legumes" | "pasture or range";

/** A crop of the table: every number of its plan with its source. */
export interface CropDefaults {
  readonly name: string;
  /** Other names it goes by, lower case. */
  readonly aliases: readonly string[];
  /** Growers choose a type that fills the season of their place: see `cropCalendar.ts`. */
  readonly heatNeedFitsSite: boolean;
  /** Days to maturity of early and full types against the medium one of the table. */
  readonly maturity: {
    readonly early: number;
    readonly full: number;
    readonly mark: SourceMark;
    readonly why: string;
  };
  /** Usual days from ripe to harvest; common practice, no source. */
  readonly harvestAfterDays: number;
  /** What the ground looks like under it, for the curve number. */
  readonly cover: Sourced<CoverUnderCrop>;
  /** Plants per acre, as the guides give them; null for sod, whose plants nobody counts. See `fullStand.ts`. */
  readonly fullStandPerAcre: (Sourced<number> & { readonly range: readonly [number, number] }) | null;
  readonly values: { readonly [F in CropField]: Sourced<CropPlan[F]> };
  readonly rootDepthsSeen: readonly RootDepthSeen[];
}

/** The crops of `data-reference/crops.json`, in its order. Our own file: a test goes through every value of it. */
export const cropDefaults = cropTable.crops as unknown as readonly CropDefaults[];

export const cropNames: readonly string[] = cropDefaults.map((crop) => crop.name);

/** Names that leave open which crop is meant, with what to ask. */
const openNames: Readonly<Record<string, readonly string[]>> = {
  wheat: ["winter wheat", "spring wheat"],
  "wheat (bread)": ["winter wheat", "spring wheat"],
};

/** The crop of that name or alias, in any case and with any spaces; null when the table has none or the name is open. */
export function cropNamed(name: string): CropDefaults | null {
  const wanted = plainName(name);
  return cropDefaults.find((crop) => crop.name === wanted || crop.aliases.includes(wanted)) ?? null;
}

/**
 * The crop of that name or alias. An InputError when there is none: it asks which is meant, suggests the nearest name,
 * or lists them all.
 *
 * @param field where the name stands, for the error
 */
export function findCrop(name: string, field = "crop.name"): CropDefaults {
  const found = cropNamed(name);
  if (found) return found;
  const open = lookUp(openNames, plainName(name));
  if (open) {
    return refuse(field, "one crop", name, `say ${open.map((crop) => `"${crop}"`).join(" or ")}`);
  }
  const near = nearestName(
    name,
    cropDefaults.flatMap((crop) => [crop.name, ...crop.aliases]),
  );
  return refuse(
    field,
    `one of ${cropNames.join(", ")}`,
    name,
    near === null ? "name one of these, or give the crop by its numbers" : `did you mean "${near}"?`,
  );
}

/** The crop as it stands in the table, ready to run or to be changed. */
export function defaultPlan({ name, values }: CropDefaults): CropPlan {
  const plain = Object.entries(values).map(([field, { value }]) => [field, value]);
  return { name, ...Object.fromEntries(plain) } as CropPlan;
}

function plainName(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ");
}

/** The type that a season of so many calendar days makes of a crop of ours, in the trade's words. */
export function maturityOf({
  name,
  stageDaysFallback,
  springFrom,
}: CropPlan): "early" | "medium" | "between early and medium" {
  const known = cropNamed(name);
  // A winter crop's days follow spring, not the type.
  if (known === null || springFrom !== null) return "medium";
  const sum = (days: readonly number[]) => days.reduce((all, one) => all + one, 0);
  const share = sum(stageDaysFallback) / sum(known.values.stageDaysFallback.value);
  if (share >= 0.995) return "medium";
  return share <= known.maturity.early + 0.005 ? "early" : "between early and medium";
}
