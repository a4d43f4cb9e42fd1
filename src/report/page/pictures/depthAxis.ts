import type { Formatters } from "../../tables/formatters.ts";
import { scaleTo, type Scale } from "../../../drawing/axis.ts";
import { lineBetween, textAt } from "./drawing.ts";
import { pencil, rule } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";
import { depthTicks } from "../../../drawing/depths.ts";

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
const usualPx = 150;
/** From one number to the next. */
const leastPx = 20;

/** Somewhat deeper than the deepest roots; taller where many layers want to be named. */
export function depthRoom(input: ReportInput): DepthRoom {
  const { scenario, comparison, season } = input;
  const deepestMm = Math.max(
    ...comparison.cases.map(({ finalRootDepthMm }) => finalRootDepthMm),
    ...season.cases.flatMap(({ frontMm }) => frontMm.at(-1) ?? 0),
    ...(scenario.evidence?.dig?.groups ?? []).flatMap(({ depthsMm }) => depthsMm),
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
  const ticks = depthTicks(room.depthMm, room.bottom - room.top, shown.length === "in", leastPx);
  return [
    lineBetween(x, room.top, x, room.bottom),
    ...ticks.flatMap(({ mm, text }) => {
      const y = room.y(mm);
      return [
        ...(across > 0 ? [lineBetween(x, y, x + across, y, rule, 0.6)] : []),
        lineBetween(x - 4, y, x, y),
        textAt(x - 6, y + 3.5, text, { anchor: "end", fill: pencil }),
      ];
    }),
    textAt(x - 6, room.bottom + 14, `depth, ${shown.length}`, { anchor: "start", fill: pencil, size: 9 }),
  ];
}
