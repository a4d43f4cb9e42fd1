/** How a layer that slows roots is marked. */

/** Roots are said to slow where the front keeps less of its pace than this; ours. */
export const slowBelow = 0.9;

/**
 * Strokes across a box, rising to the right, as the `d` of an SVG path; what passes the box is cut off.
 *
 * @param gap from stroke to stroke along the box, above 0
 */
export function hatching(
  { x, y, width, height }: { x: number; y: number; width: number; height: number },
  gap: number,
): string {
  let path = "";
  for (let at = gap / 2 - height; at < width; at += gap) {
    const [from, to] = [Math.max(0, at), Math.min(width, at + height)];
    path += `M${px(x + from)} ${px(y + height - (from - at))}L${px(x + to)} ${px(y + height - (to - at))}`;
  }
  return path;
}

function px(value: number): string {
  return String(Number(value.toFixed(2)));
}
