import { slowBelow } from "../../../src/drawing/denseLayer.ts";
import type { CaseSeason, LayerShown } from "../../worker/protocol.ts";
import { depthY, type Box, type Window } from "./box.ts";

/** A layer where it is drawn. */
export interface LayerBand {
  readonly layer: LayerShown;
  readonly band: Box;
  readonly passage: number;
  readonly isSlow: boolean;
}

/**
 * Layers that begin within the depth shown, cut off at its end.
 *
 * @param season tells where roots slow; null where that is not known or not told
 */
export function layerBands(
  layers: readonly LayerShown[],
  season: CaseSeason | null,
  box: Box,
  window: Pick<Window, "depthMm">,
): LayerBand[] {
  return layers
    .filter(({ topMm }) => topMm < window.depthMm)
    .map((layer) => {
      const y = depthY(box, window, layer.topMm);
      const height = depthY(box, window, Math.min(layer.bottomMm, window.depthMm)) - y;
      const passage = season === null ? 1 : leastPassageIn(season, layer.topMm, layer.bottomMm);
      return { layer, passage, isSlow: passage < slowBelow, band: { ...box, y, height } };
    });
}

/** The least share of its pace that the root front keeps in a layer, in this season; 1 where no slice is known. */
export function leastPassageIn(
  { sliceTopMm, sliceThicknessMm, passage }: CaseSeason,
  topMm: number,
  bottomMm: number,
): number {
  let least = 1;
  for (let slice = 0; slice < sliceTopMm.length; slice++) {
    const middle = sliceTopMm[slice]! + sliceThicknessMm[slice]! / 2;
    if (middle > topMm && middle < bottomMm) least = Math.min(least, passage[slice]!);
  }
  return least;
}
