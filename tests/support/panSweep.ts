import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import { resolved } from "./demos.ts";

/** What a layer of 4 to 8 in costs a crop, against the same soil with a loose one. */
export interface PanStep {
  /** g/cm3 or psi. */
  readonly value: number;
  /** Median over the runs. */
  readonly rootsMm: number;
  /** Of the median yields. */
  readonly yieldLossPercent: number;
  /** Of the means over the runs. */
  readonly transpirationLossPercent: number;
}

const median = (values: Float64Array): number => Float64Array.from(values).sort()[values.length >> 1]!;
const sum = (values: Float64Array): number => values.reduce((all, value) => all + value, 0);
/** The file takes twenty cases; the first is the loose one. */
const atOnce = 19;

/**
 * Silt loam moist to 36 in, 30 % of its water below, 13 in of rain on wheat stubble: an invented field of the dry plains. The
 * layer is a tillage pan.
 *
 * @param as how a value of the layer is written, such as `{ bulkDensity: "1.70 g/cm^3" }`
 */
export async function panSweep(
  crop: { readonly name: string; readonly sowing: string },
  values: readonly number[],
  as: (value: number) => Readonly<Record<string, string>>,
): Promise<PanStep[]> {
  const steps: PanStep[] = [];
  for (let from = 0; from < values.length; from += atOnce) {
    const these = values.slice(from, from + atOnce);
    const { byRainTotal } = runEnsemble(await resolved(fieldWith(crop, these.map(as))));
    const [loose, ...dense] = byRainTotal[0]!.cases;
    const lossOf = (free: Float64Array, held: Float64Array) => 100 * (1 - median(held) / median(free));
    dense.forEach(({ byRun, yieldKgPerHaByRun }, i) =>
      steps.push({
        value: these[i]!,
        rootsMm: median(byRun.finalRootDepthMm),
        yieldLossPercent: lossOf(loose!.yieldKgPerHaByRun, yieldKgPerHaByRun),
        transpirationLossPercent: 100 * (1 - sum(byRun.transpirationMm) / sum(loose!.byRun.transpirationMm)),
      }),
    );
  }
  return steps;
}

function fieldWith(
  crop: { readonly name: string; readonly sowing: string },
  layers: readonly Readonly<Record<string, string>>[],
): unknown {
  const loose = { name: "layer", bottom: "8 in", texture: "silt loam", bulkDensity: "1.35 g/cm^3" };
  return {
    format: "rootfront-scenario/1",
    name: "what a pan costs",
    invented: true,
    site: { latitude: "38.5 N", elevation: "3300 ft" },
    soil: {
      layers: [
        { name: "topsoil", bottom: "4 in", texture: "silt loam", bulkDensity: "1.35 g/cm^3" },
        { ...loose, origin: "tillage pan" },
        { name: "subsoil", bottom: "84 in", texture: "silt loam", bulkDensity: "1.38 g/cm^3" },
      ],
      startingWater: { moistDepth: "36 in", shareBelow: "30 %" },
    },
    weather: { pattern: "summer-peak", annualRain: "13 in" },
    crop,
    surface: { residueCover: "60 %" },
    cases: [
      { name: "loose" },
      ...layers.map((layer, i) => ({
        name: `dense ${i}`,
        soil: { layers: [{ name: "layer", ...layer }] },
      })),
    ],
    ensemble: { years: 60, seed: 1 },
  };
}
