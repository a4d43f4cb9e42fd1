import type { SoilLayer } from "./layer.ts";

export type HydrologicGroup = "A" | "B" | "C" | "D";

/** um/s in one mm a day. */
const umPerSPerMmPerDay = 1000 / 86_400;

/**
 * Hydrologic soil group from the least conductive layer, for when none is stated.
 *
 * Down to 1 m where nothing restricts the column above that, with limits of 10, 4 and 0.4 um/s; where rock or a cemented layer
 * lies at 0.5 to 1 m, down to 0.5 m with 40, 10 and 1 um/s; shallower is D. A water table within 1 m is not looked for:
 * dryland.
 *
 * @param layers top first
 * @param restrictedAtMm depth of rock or a cemented layer; null where none is known
 * Source: [NEH 630 ch. 7] Table 7-1, memory, without its water table column.
 */
export function hydrologicGroup(
  layers: readonly SoilLayer[],
  restrictedAtMm: number | null,
): { readonly group: HydrologicGroup; readonly why: string } {
  if (restrictedAtMm !== null && restrictedAtMm < 500) {
    return {
      group: "D",
      why: `the column is restricted at ${Math.round(restrictedAtMm)} mm, above 500 mm (NEH 630 ch. 7)`,
    };
  }
  const deep = restrictedAtMm === null || restrictedAtMm >= 1000;
  const lookedAtMm = deep ? 1000 : 500;
  const [a, b, c] = deep ? [10, 4, 0.4] : [40, 10, 1];
  let slowest: SoilLayer | null = null;
  for (const layer of layers) {
    if (layer.topMm >= lookedAtMm) break;
    if (!slowest || layer.saturatedConductivityMmPerDay < slowest.saturatedConductivityMmPerDay)
      slowest = layer;
  }
  if (!slowest) throw new Error("a column has at least one layer");
  const conductivityUmPerS = slowest.saturatedConductivityMmPerDay * umPerSPerMmPerDay;
  const group =
    conductivityUmPerS > a ? "A" : conductivityUmPerS > b ? "B" : conductivityUmPerS > c ? "C" : "D";
  const mmPerHour = (slowest.saturatedConductivityMmPerDay / 24).toPrecision(2);
  return {
    group,
    why: `the least conductive layer within ${lookedAtMm} mm, ${slowest.name}, lets ${Number(mmPerHour)} mm an hour through when saturated (NEH 630 ch. 7)`,
  };
}
