import { mmPerInch } from "../../../quantity/constants.ts";
import type { Formatters } from "../../tables/formatters.ts";
import { lineBetween, marksBetween, scaleTo, textAt, type Scale } from "./drawing.ts";
import { pencil, rule } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";

/** Where depths lie in a drawing; the same in the soil's and the roots', so that they can be read side by side. */
export interface DepthRoom {
  /** Soil shown, mm. */
  readonly depthMm: number;
  readonly top: number;
  readonly bottom: number;
  readonly height: number;
  readonly y: Scale;
}

const top = 22;
const below = 20;
const usualPx = 170;

/** Somewhat deeper than the deepest roots; taller where many layers want to be named. */
export function depthRoom({ scenario, comparison, season }: ReportInput): DepthRoom {
  const deepestMm = Math.max(
    ...comparison.cases.map(({ finalRootDepthMm }) => finalRootDepthMm),
    ...season.cases.flatMap(({ frontMm }) => frontMm.at(-1) ?? 0),
    100,
  );
  const soilMm = Math.max(...scenario.cases.map(({ layers }) => layers.at(-1)!.bottomMm));
  const depthMm = Math.min(soilMm, deepestMm * 1.12);
  const layers = scenario.cases[0].layers.filter(({ topMm }) => topMm < depthMm).length;
  const bottom = top + Math.max(usualPx, 13 * layers + 8);
  return { depthMm, top, bottom, height: bottom + below, y: scaleTo(0, depthMm, top, bottom) };
}

/** Marks and numbers left of `x`. */
export function depthAxis(room: DepthRoom, x: number, shown: Formatters, across = 0): string[] {
  const perUnit = shown.length === "in" ? mmPerInch : 1;
  const marks = marksBetween(0, room.depthMm / perUnit, 7);
  return [
    lineBetween(x, room.top, x, room.bottom),
    ...marks.flatMap((mark) => {
      const y = room.y(mark * perUnit);
      return [
        ...(across > 0 ? [lineBetween(x, y, x + across, y, rule, 0.6)] : []),
        lineBetween(x - 4, y, x, y),
        textAt(x - 6, y + 3.5, String(Math.round(mark)), { anchor: "end", fill: pencil }),
      ];
    }),
    textAt(x - 6, room.bottom + 14, `depth, ${shown.length}`, { anchor: "start", fill: pencil, size: 9 }),
  ];
}
