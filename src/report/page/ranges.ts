import type { Spread } from "../../statistics/quantiles.ts";
import type { Scale } from "../../drawing/axis.ts";
import { box, lineBetween, textAt } from "./pictures/drawing.ts";
import { pencil, rule } from "./reportStyle.ts";

/** A value of 0 and all that is shown lie on the axis. */
export function reachOf(values: readonly number[]): [from: number, to: number] {
  const from = Math.min(0, ...values);
  const to = Math.max(0, ...values);
  return to > from ? [from, to] : [0, 1];
}

/** A range as a bar from P10 to P90 with its middle marked. */
export function rangeBar(
  { p10, p50, p90 }: Spread,
  x: Scale,
  y: number,
  height: number,
  colour: string,
): string {
  const left = x(p10);
  const width = Math.max(1, x(p90) - left);
  return (
    box(
      left,
      y + height * 0.2,
      width,
      height * 0.6,
      `fill="${colour}" fill-opacity="0.35" stroke="${colour}" stroke-width="0.8"`,
    ) + lineBetween(x(p50), y, x(p50), y + height, colour, 2.4)
  );
}

/** Where nothing is gained or lost. */
export function zeroLine(x: Scale, top: number, bottom: number): string {
  return lineBetween(x(0), top, x(0), bottom, pencil, 0.8);
}

/** Marks and numbers along the bottom. */
export function bottomAxis(
  marks: readonly number[],
  say: (mark: number) => string,
  x: Scale,
  top: number,
  bottom: number,
  unit: string,
): string[] {
  return marks.flatMap((mark, m) => [
    lineBetween(x(mark), top, x(mark), bottom, rule, 0.6),
    textAt(x(mark), bottom + 11, m === marks.length - 1 ? `${say(mark)} ${unit}` : say(mark), {
      anchor: "middle",
      fill: pencil,
      size: 9,
    }),
  ]);
}
