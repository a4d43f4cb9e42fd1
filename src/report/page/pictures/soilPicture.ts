import type { Case } from "../../../scenario/scenario.ts";
import type { SoilLayer } from "../../../soil/layers/layer.ts";
import { textureClass } from "../../../soil/equations/texture.ts";
import { percent, type Formatters } from "../../tables/formatters.ts";
import { apart } from "../../../drawing/labels.ts";
import { shortened } from "../../../drawing/text.ts";
import { box, coordinate, lineBetween, svgOf, textAt } from "./drawing.ts";
import { depthAxis, depthRoom, type DepthRoom } from "./depthAxis.ts";
import { caseColour, caseLetter, earthColour, ink, pencil, slow } from "../reportStyle.ts";
import { dugInColumn, dugInWords } from "./dugMarks.ts";
import { paceUsed, type PaceUsed } from "../paceUsed.ts";
import type { ReportInput } from "../reportInput.ts";
import { hatching, slowBelow } from "../../../drawing/denseLayer.ts";

export const defaults = {
  title: "The soil as in a pit, with the depth the roots of each case reach",
  width: 350,
  axisPx: 34,
  columnsPx: 100,
  /** Columns drawn; more cases stand in the table only. */
  mostColumns: 6,
  labelLinePx: 12,
} as const;

/** Layers of the first case with a column for each case: where roots slow, and how deep they come in the middle season. */
export function soilPicture(input: ReportInput): string {
  const { scenario, comparison, shown } = input;
  const cases = scenario.cases.slice(0, defaults.mostColumns);
  const room = depthRoom(input);
  const left = defaults.axisPx;
  const width = defaults.columnsPx / cases.length;
  const columns = cases.map(({ name, layers: own }, c) => {
    const x = left + c * width;
    const reachMm = comparison.cases[c]!.finalRootDepthMm;
    return [
      ...own
        .filter(({ topMm }) => topMm < room.depthMm)
        .map((layer) => band(layer, paceUsed(input, name, layer).share, x, width, room)),
      rootMark(x, width, room.y(reachMm), c),
      ...dugInColumn(input, c, x, width, room),
      textAt(x + width / 2, room.top - 5, caseLetter(c), {
        anchor: "middle",
        bold: true,
        fill: caseColour(c),
      }),
    ].join("");
  });
  return svgOf({
    id: "soil",
    width: defaults.width,
    height: room.height,
    title: defaults.title,
    says: soilSaid(input),
    parts: [...depthAxis(room, left, shown), ...columns, ...labels(input, left + defaults.columnsPx, room)],
  });
}

function band(
  layer: SoilLayer,
  passage: number,
  x: number,
  width: number,
  { y, depthMm }: DepthRoom,
): string {
  const top = y(layer.topMm);
  const bottom = y(Math.min(layer.bottomMm, depthMm));
  const place = [x, top, width, bottom - top] as const;
  const earth = `fill="${earthColour(layer.sandFraction, layer.clayFraction)}" stroke="${ink}" stroke-width="0.6"`;
  return box(...place, earth) + (passage < slowBelow ? hatched(...place, passage) : "");
}

/** Closer the less of their pace a layer leaves to roots. */
function hatched(x: number, y: number, width: number, height: number, passage: number): string {
  return `<path d="${hatching({ x, y, width, height }, 3 + 7 * Math.max(0, passage))}" stroke="${slow}" stroke-width="1.1" fill="none"/>`;
}

function rootMark(x: number, width: number, y: number, c: number): string {
  const colour = caseColour(c);
  return (
    lineBetween(x + 1, y, x + width - 1, y, colour, 2.4) +
    `<path d="M${coordinate(x + width / 2 - 4)} ${coordinate(y - 7)}h8l-4 6z" fill="${colour}"/>`
  );
}

/** What each layer of the first case is, beside it, a hair line away. */
function labels(input: ReportInput, from: number, room: DepthRoom): string[] {
  const { y, depthMm, top, bottom } = room;
  const { shown } = input;
  const [{ name: caseName, layers }] = input.scenario.cases;
  const drawn = layers.filter(({ topMm }) => topMm < depthMm);
  const isTight = 2 * defaults.labelLinePx * drawn.length + 6 > bottom - top;
  const height = (isTight ? 1 : 2) * defaults.labelLinePx + 1;
  const middles = drawn.map(({ topMm, bottomMm }) => y((topMm + Math.min(bottomMm, depthMm)) / 2));
  const places = apart(middles, height, top, bottom);
  return drawn.flatMap((layer, l) => {
    const x = from + 18;
    const first = places[l]! - height / 2 + 9.5;
    const pace = paceUsed(input, caseName, layer);
    const name = textAt(x, first, shortened(`${layer.name}, ${extentSaid(layer, shown)}`, 34), {
      bold: true,
    });
    const hair = `<path d="M${coordinate(from + 1)} ${coordinate(middles[l]!)}L${coordinate(x - 3)} ${coordinate(first - 3)}" stroke="${pencil}" stroke-width="0.6" fill="none"/>`;
    if (isTight) return [hair, name];
    const what = shortened(layerSaid(layer, pace), 40);
    return [
      hair,
      name,
      textAt(x, first + defaults.labelLinePx - 0.5, what, pace.share < slowBelow ? { fill: slow } : {}),
    ];
  });
}

function extentSaid({ topMm, bottomMm }: SoilLayer, shown: Formatters): string {
  return `${shown.total(topMm)} to ${shown.total(bottomMm)} ${shown.length}`;
}

/** `silt loam, 1.62 g/cm³, pace 26 %`, `…, pace 7 % as dug` */
function layerSaid(layer: SoilLayer, pace: PaceUsed): string {
  const { sandFraction, clayFraction, bulkDensityKgPerM3, gravelVolumeFraction } = layer;
  return [
    textureClass(sandFraction, clayFraction),
    `${(bulkDensityKgPerM3 / 1000).toFixed(2)} g/cm³`,
    ...(gravelVolumeFraction >= 0.005 ? [`${percent(gravelVolumeFraction)} stones`] : []),
    ...(pace.share < slowBelow ? [`pace ${percent(pace.share)}${pace.byDig ? " as dug" : ""}`] : []),
  ].join(", ");
}

function soilSaid(input: ReportInput): string {
  const { scenario, comparison, shown } = input;
  const [first, ...others] = scenario.cases;
  const all = ({ name, layers }: Case) =>
    layers
      .map(
        (layer) =>
          `${layer.name}, ${extentSaid(layer, shown)}: ${layerSaid(layer, paceUsed(input, name, layer))}`,
      )
      .join("; ");
  const changed = others.flatMap((one) => {
    const told = all(one);
    return told === all(first) ? [] : [`In "${one.name}": ${told}.`];
  });
  const reach = comparison.cases.map(
    ({ name, finalRootDepthMm }) => `"${name}" ${shown.depth(finalRootDepthMm)} ${shown.length}`,
  );
  return [
    `Layers of "${first.name}": ${all(first)}.`,
    ...changed,
    `Roots reach: ${reach.join(", ")}.`,
    ...dugInWords(input),
  ].join(" ");
}

/** What the other cases change in a layer, in words; empty where their soil is the first's. */
export function changesOfSoil(input: ReportInput): { c: number; name: string; changes: string[] }[] {
  const [first, ...others] = input.scenario.cases;
  const said = (caseName: string, layer: SoilLayer) => layerSaid(layer, paceUsed(input, caseName, layer));
  return others.map(({ name, layers }, i) => ({
    c: i + 1,
    name,
    changes: layers
      .filter(
        (layer) =>
          !first.layers.some((one) => one.name === layer.name && said(first.name, one) === said(name, layer)),
      )
      .map((layer) => `${layer.name}: ${said(name, layer)}`),
  }));
}
