import type { QuantityKind, Units } from "../../../src/quantity/kinds.ts";
import { sayQuantity } from "../../../src/quantity/sayQuantity.ts";
import type { SoilLayer } from "../../../src/soil/layers/layer.ts";
import type { Json } from "../../state/json.ts";

/** What of a resolved layer can be written down again, by the key it is written with. */
const keys: readonly (readonly [key: string, kind: QuantityKind, value: (layer: SoilLayer) => number])[] = [
  ["organicMatter", "share", (layer) => layer.organicMatterPercent / 100],
  ["bulkDensity", "density", (layer) => layer.bulkDensityKgPerM3],
  ["gravelVolume", "share", (layer) => layer.gravelVolumeFraction],
  ["fieldCapacity", "share", (layer) => layer.fieldCapacity],
  ["wiltingPoint", "share", (layer) => layer.wiltingPoint],
  ["saturation", "share", (layer) => layer.saturation],
  ["saturatedConductivity", "conductivity", (layer) => layer.saturatedConductivityMmPerDay],
];

/**
 * The layers of a file of horizons as layers of a scenario. What the engine estimated is left out, so that it goes on being
 * estimated when something else is changed.
 *
 * @param isEstimated whether a default stands at a path
 */
export function inputLayers(
  layers: readonly SoilLayer[],
  isEstimated: (path: string) => boolean,
  units: Units,
): Json {
  return layers.map((layer) => {
    const path = `soil.horizons.${layer.name}`;
    const known = keys.filter(([key]) => !isEstimated(`${path}.${key}`));
    return {
      name: layer.name,
      bottom: sayQuantity(layer.bottomMm, "depth", units),
      sand: sayQuantity(layer.sandFraction, "share", units),
      clay: sayQuantity(layer.clayFraction, "share", units),
      ...Object.fromEntries(known.map(([key, kind, value]) => [key, sayQuantity(value(layer), kind, units)])),
    };
  });
}
