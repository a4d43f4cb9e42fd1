import {
  pastureGroundCover,
  usualPastureCondition,
  type Condition,
  type GroundCover,
} from "../../../season/curveNumber.ts";
import type { SurfacePart } from "../../fields/file.ts";
import { usualDecay } from "../../fields/facts/usualDecay.ts";
import { bareGround } from "../../fields/surfaceFields.ts";
import { orDefault, type Notebook } from "../notebook.ts";

/** What grows, and whether the run begins with a fallow. */
export interface Standing {
  readonly cropName: string;
  readonly isSod: boolean;
  readonly hasFallow: boolean;
}

export interface StatedResidue {
  readonly fallow: number;
  /** Null: what the fallow leaves. */
  readonly crop: number | null;
  /** On the first day of the run. */
  readonly first: number;
  readonly decays: boolean;
}

/** Residue of the run's first day and of sowing, by whichever of the three fields are given. */
export function residueOf(
  { residueCover, ...part }: SurfacePart,
  { isSod, hasFallow }: Standing,
  cover: GroundCover,
  field: (key: keyof SurfacePart) => string,
  notebook: Notebook,
): StatedResidue {
  const usual =
    cover === "pasture or range"
      ? {
          value: pastureGroundCover(part.condition ?? usualPastureCondition),
          kind: "share" as const,
          why: sodCoverWhy(part.condition),
        }
      : bareGround;
  const inFallow = part.residueCoverFallow ?? residueCover;
  // Beside a cover of its own for fallow, the one for both is the crop's.
  const ownCrop = hasFallow && part.residueCoverFallow === undefined ? undefined : residueCover;
  const inCrop = part.residueCoverCrop ?? ownCrop;
  const fallow = orDefault(notebook, inFallow, usual, field("residueCoverFallow"));
  const leaves = hasFallow && inCrop === undefined && fallow > 0;
  const crop = leaves
    ? null
    : orDefault(notebook, inCrop ?? (hasFallow ? inFallow : undefined), usual, field("residueCoverCrop"));
  const first = hasFallow ? fallow : (crop ?? 0);
  return { fallow, crop, first, decays: decaysOf(part.residueDecay, first, crop, isSod, field, notebook) };
}

/** Told only where there is residue. */
function decaysOf(
  stated: SurfacePart["residueDecay"],
  first: number,
  crop: number | null,
  isSod: boolean,
  field: (key: keyof SurfacePart) => string,
  notebook: Notebook,
): boolean {
  if (stated !== undefined) return stated !== "none";
  if (first <= 0 && (crop ?? 0) <= 0) return false;
  const [value, why] = isSod
    ? ([usualDecay.underSod, "sod lays new litter every year"] as const)
    : ([
        usualDecay.value,
        "the stated cover is that of the first day; straw rots by rain and warmth (Renard et al. 1997, USDA Handbook 703 ch. 5, memory)",
      ] as const);
  return orDefault<string>(notebook, undefined, { value, why }, field("residueDecay")) !== "none";
}

function sodCoverWhy(stated: Condition | undefined): string {
  return `live and dead grass of a pasture or range in ${stated ?? usualPastureCondition} condition: class of TR-55 Table 2-2c (memory), its middle is ours`;
}
