import type { CasePart, CropPart, ModelPart, SoilPart, SurfacePart } from "../fields/file.ts";

/** One case as if it had a file of its own, and where each part of it stands in the real one. */
export interface MergedCase {
  readonly name: string;
  readonly path: string;
  readonly soil: SoilPart;
  /** Where each layer's own differences stand; the base's place for layers that do not differ. */
  readonly layerPaths: readonly string[];
  /** Where each layer's cores stand, and whether the case has its own there. */
  readonly coresPlaces: readonly CoresPlace[];
  readonly startingWaterPath: string;
  readonly surface: SurfacePart;
  readonly surfacePath: string;
  readonly crop: CropPart;
  readonly cropPath: string;
  readonly fallowLength: number | undefined;
  readonly model: ModelPart;
  readonly rootingDepth: CasePart["rootingDepth"];
}

export interface CoresPlace {
  readonly path: string;
  readonly ofCase: boolean;
}
