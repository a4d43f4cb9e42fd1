import type { Box } from "../../pictures/kit/box.ts";

/** A box of the drawing as shares of it, for what lies over the drawing however large it is shown. */
export function sharesOf(
  box: Box,
  width: number,
  height: number,
): { left: string; top: string; width: string; height: string } {
  return {
    left: percentOf(box.x / width),
    top: percentOf(box.y / height),
    width: percentOf(box.width / width),
    height: percentOf(box.height / height),
  };
}

export function percentOf(share: number): string {
  return `${(100 * share).toFixed(3)}%`;
}
