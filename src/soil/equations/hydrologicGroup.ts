import { sayBoth } from "../../quantity/sayQuantity.ts";
import type { SoilLayer } from "../layers/layer.ts";
import { textureClass, type TextureClass } from "./texture.ts";

export type HydrologicGroup = "A" | "B" | "C" | "D";

/** um/s in one mm a day. */
const umPerSPerMmPerDay = 1000 / 86_400;

/**
 * Group by the texture of the surface soil. Silt does not stand there: as silt loam, which it is nearest to (ours).
 * Source: [NRCS 1986, TR-55] appendix A, disturbed soil profiles not much compacted (A and B read, C and D memory).
 */
const groupOfTexture: Readonly<Record<TextureClass, HydrologicGroup>> = {
  sand: "A",
  "loamy sand": "A",
  "sandy loam": "A",
  "silt loam": "B",
  loam: "B",
  silt: "B",
  "sandy clay loam": "C",
  "clay loam": "D",
  "silty clay loam": "D",
  "sandy clay": "D",
  "silty clay": "D",
  clay: "D",
};

/**
 * Hydrologic soil group for when none is stated: by the texture of the surface soil, unless a conductivity was measured there or
 * beneath: then by the least conductive of the measured layers.
 *
 * By conductivity: down to 1 m where nothing restricts the column above that, with limits of 10, 4 and 0.4 um/s; where rock or a
 * cemented layer lies at 0.5 to 1 m, down to 0.5 m with 40, 10 and 1 um/s. Rock shallower than 0.5 m is D either way. A water
 * table within 1 m is not looked for: dryland.
 *
 * @param layers top first
 * @param restrictedAtMm depth of rock or a cemented layer; null where none is known
 * Source: [NEH 630 ch. 7] Table 7-1, memory, without its water table column.
 */
export function hydrologicGroup(
  layers: readonly SoilLayer[],
  restrictedAtMm: number | null,
): { readonly group: HydrologicGroup; readonly why: string } {
  const [top] = layers;
  if (!top) throw new Error("a column has at least one layer");
  if (restrictedAtMm !== null && restrictedAtMm < 500) {
    return {
      group: "D",
      why: `the column is restricted at ${sayBoth(restrictedAtMm, "depth")}, above 20 in (500 mm) (NEH 630 ch. 7)`,
    };
  }
  const deep = restrictedAtMm === null || restrictedAtMm >= 1000;
  const lookedAtMm = deep ? 1000 : 500;
  const slowest = layers
    .filter(({ topMm, conductivityMeasured }) => conductivityMeasured && topMm < lookedAtMm)
    .reduce<SoilLayer | null>(
      (least, layer) =>
        least !== null && least.saturatedConductivityMmPerDay <= layer.saturatedConductivityMmPerDay
          ? least
          : layer,
      null,
    );
  if (slowest === null) {
    const texture = textureClass(top.sandFraction, top.clayFraction);
    return {
      group: groupOfTexture[texture],
      why: `the surface soil is ${texture} (TR-55 appendix A); no conductivity was measured`,
    };
  }
  const [a, b, c] = deep ? [10, 4, 0.4] : [40, 10, 1];
  const conductivityUmPerS = slowest.saturatedConductivityMmPerDay * umPerSPerMmPerDay;
  const group =
    conductivityUmPerS > a ? "A" : conductivityUmPerS > b ? "B" : conductivityUmPerS > c ? "C" : "D";
  return {
    group,
    why: `the least conductive layer measured within ${sayBoth(lookedAtMm, "depth")}, ${slowest.name}, lets ${sayBoth(slowest.saturatedConductivityMmPerDay, "conductivity")} through when saturated (NEH 630 ch. 7)`,
  };
}
