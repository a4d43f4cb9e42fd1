import type { LayerOrigin } from "../../soil/layers/layerOrigin.ts";
import { passageOf } from "../../soil/layers/slices.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import { textureClass } from "../../soil/equations/texture.ts";
import type { Formatters } from "../tables/formatters.ts";

/** What of a case the line is of. */
export interface FieldInALine {
  readonly crop: { readonly name: string };
  readonly layers: readonly SoilLayer[];
}

/** A layer is named where roots keep less of their pace than this, in the usual reading. As in the cautions. */
const tellingPace = 0.9;

const called: Readonly<Record<LayerOrigin, string>> = {
  "tillage pan": "plow pan",
  "wheel track": "wheel track",
  natural: "dense layer",
};

/** A field in a line: crop, texture of the topsoil, and what slows roots most. @example // "grain sorghum, silt loam, plow pan 6 to 10 in" */
export function fieldInALine({ crop, layers }: FieldInALine, shown: Formatters): string {
  const [top] = layers;
  const [densest] = layers
    .filter((layer) => passageOf(layer, 0) < tellingPace)
    .toSorted((a, b) => passageOf(a, 0) - passageOf(b, 0));
  const depth = (mm: number) => shown.total(mm);
  return [
    crop.name,
    ...(top === undefined ? [] : [textureClass(top.sandFraction, top.clayFraction)]),
    densest === undefined
      ? "no dense layer"
      : `${called[densest.origin]} ${depth(densest.topMm)} to ${depth(densest.bottomMm)} ${shown.length}`,
  ].join(", ");
}
