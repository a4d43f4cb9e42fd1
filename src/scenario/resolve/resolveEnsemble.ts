import { ensembleFields, type ScenarioFile } from "../fields/file.ts";
import { orDefault, type Notebook } from "./notebook.ts";
import { spreadSaid, spreads } from "../../soil/equations/availableWaterSpread.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import { percent } from "../../soil/layers/layerRanges.ts";
import type { EnsemblePlan } from "../scenario.ts";

/** How uncertain things are drawn. */
export function resolveEnsemble(
  part: NonNullable<ScenarioFile["ensemble"]>,
  layers: readonly SoilLayer[],
  notebook: Notebook,
): EnsemblePlan {
  const usual = ensembleFields.shape;
  if (part.availableCapacitySpread === undefined && layers.length > 0) {
    notebook.defaults.push({
      field: "ensemble.availableCapacitySpread",
      value: `${spreadSaid(layers)}, layer by layer`,
      why: `standard deviation: ${percent(spreads.estimated)} where field capacity and wilting point are estimated from texture, ${percent(spreads.fieldCapacityMeasured)} where field capacity is measured, ${percent(spreads.measured)} where both are (Saxton & Rawls 2006 and open laboratory and survey horizons); field capacity moves, the wilting point stays`,
    });
  }
  return {
    years: orDefault(notebook, part.years, usual.years.byDefault, "ensemble.years"),
    seed: orDefault(notebook, part.seed, usual.seed.byDefault, "ensemble.seed"),
    availableCapacitySd: part.availableCapacitySpread ?? null,
    deepWaterSd: orDefault(
      notebook,
      part.deepWaterSpread,
      usual.deepWaterSpread.byDefault,
      "ensemble.deepWaterSpread",
    ),
    deepUptakeSpread: orDefault(
      notebook,
      part.deepUptakeSpread,
      usual.deepUptakeSpread.byDefault,
      "ensemble.deepUptakeSpread",
    ),
    deepBelowMm: orDefault(notebook, part.deepBelow, usual.deepBelow.byDefault, "ensemble.deepBelow"),
    densityReading: orDefault(notebook, part.density, usual.density.byDefault, "ensemble.density"),
  };
}
