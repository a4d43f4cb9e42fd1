import table from "../../../data-reference/available-water-spread.json" with { type: "json" };
import type { SoilLayer } from "../layers/layer.ts";
import type { LayerDescription } from "../layers/layerDescription.ts";
import { percent } from "../layers/layerRanges.ts";

/**
 * Standard deviation of a layer's available water (field capacity less wilting point), share of the whole volume: wide where the
 * limits are estimated from texture, narrow where they are measured; never more than a third of the available water itself.
 *
 * @param stated what of the limits was measured or given
 * @param availableWater of the layer as resolved, share of the whole volume
 * @param fine share of the whole volume that is not stones; estimates are of the fine earth
 * Source: `data-reference/available-water-spread.json`
 */
export function availableWaterSd(
  stated: Pick<LayerDescription, "fieldCapacity" | "wiltingPoint" | "availableWater">,
  availableWater: number,
  fine: number,
): number {
  const hasBoth = stated.fieldCapacity !== undefined && stated.wiltingPoint !== undefined;
  if (hasBoth || stated.availableWater !== undefined) return Math.min(spreads.measured, most(availableWater));
  const ofFineEarth =
    stated.fieldCapacity !== undefined
      ? spreads.fieldCapacityMeasured
      : stated.wiltingPoint !== undefined
        ? spreads.wiltingPointMeasured
        : spreads.estimated;
  return Math.min(ofFineEarth * fine, most(availableWater));
}

/** The same layers with a spread that is one share of each layer's own available water. */
export function withSpread(layers: readonly SoilLayer[], share: number): SoilLayer[] {
  return layers.map((layer) => ({
    ...layer,
    availableWaterSd: share * (layer.fieldCapacity - layer.wiltingPoint),
  }));
}

/** `5 % of the soil's volume`, `2 to 5 % of the soil's volume` */
export function spreadSaid(layers: readonly Pick<SoilLayer, "availableWaterSd">[]): string {
  const sds = layers.map(({ availableWaterSd: sd }) => sd);
  const [least, most] = [percent(round(Math.min(...sds))), percent(round(Math.max(...sds)))];
  const said = least === most ? least : `${least.replace(" %", "")} to ${most}`;
  return `${said} of the soil's volume`;
}

/** By how the limits are known, share of the volume. */
export const spreads = {
  estimated: sdOf("spread-estimated"),
  wiltingPointMeasured: sdOf("spread-wilting-point-measured"),
  fieldCapacityMeasured: sdOf("spread-field-capacity-measured"),
  measured: sdOf("spread-measured"),
} as const;

function sdOf(id: string): number {
  const sd = table.find((row) => row.id === id)?.expected.sd;
  if (sd === undefined) throw new Error(`no spread of available water ${id}`);
  return sd;
}

function most(availableWater: number): number {
  const share = table.find(({ id }) => id === "spread-at-most")?.expected.share;
  if (share === undefined) throw new Error("no largest spread of available water");
  return share * availableWater;
}

const round = (share: number): number => Math.round(share * 1000) / 1000;
