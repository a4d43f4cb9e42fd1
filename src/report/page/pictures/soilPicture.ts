import type { SoilLayer } from "../../../soil/layers/layer.ts";
import { passageOf } from "../../../soil/layers/slices.ts";
import { textureClass } from "../../../soil/equations/texture.ts";
import { percent, type Formatters } from "../../tables/formatters.ts";
import { apart, box, coordinate, lineBetween, shortened, svgOf, textAt } from "./drawing.ts";
import { depthAxis, depthRoom, type DepthRoom } from "./depthAxis.ts";
import { caseColour, caseLetter, earthColour, ink, pencil, slow } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";

export const defaults = {
  title: "The soil as in a pit, with the depth the roots of each case reach",
  width: 350,
  axisPx: 34,
  columnsPx: 100,
  /** Columns drawn; more cases stand in the table only. */
  mostColumns: 6,
  labelLinePx: 12,
  /** Roots are said to slow where the front keeps less of its pace than this. */
  slowBelow: 0.9,
} as const;

/** Layers of the first case with a column for each case: where roots slow, and how deep they come in the middle season. */
export function soilPicture(input: ReportInput): string {
  const { scenario, comparison, shown } = input;
  const cases = scenario.cases.slice(0, defaults.mostColumns);
  const room = depthRoom(input);
  const { layers } = scenario.cases[0];
  const left = defaults.axisPx;
  const width = defaults.columnsPx / cases.length;
  const columns = cases.map(({ layers: own }, c) => {
    const x = left + c * width;
    const reachMm = comparison.cases[c]!.finalRootDepthMm;
    return [
      ...own.filter(({ topMm }) => topMm < room.depthMm).map((layer) => band(layer, x, width, room)),
      rootMark(x, width, room.y(reachMm), c),
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
    parts: [
      ...depthAxis(room, left, shown),
      ...columns,
      ...labels(layers, left + defaults.columnsPx, room, shown),
    ],
  });
}

function band(layer: SoilLayer, x: number, width: number, { y, depthMm }: DepthRoom): string {
  const top = y(layer.topMm);
  const bottom = y(Math.min(layer.bottomMm, depthMm));
  const passage = passageOf(layer, 0);
  const earth = box(
    x,
    top,
    width,
    bottom - top,
    `fill="${earthColour(layer.sandFraction, layer.clayFraction)}" stroke="${ink}" stroke-width="0.6"`,
  );
  return passage < defaults.slowBelow ? earth + hatching(x, top, width, bottom - top, passage) : earth;
}

/** Strokes across a layer that slows roots, closer the less of their pace it leaves. */
function hatching(x: number, top: number, width: number, height: number, passage: number): string {
  const gap = 3 + 7 * Math.max(0, passage);
  let strokes = "";
  for (let along = gap / 2; along < width; along += gap) {
    const lean = Math.min(height, width - along);
    strokes += `M${coordinate(x + along)} ${coordinate(top + height)}l${coordinate(lean)} ${coordinate(-lean)}`;
  }
  return `<path d="${strokes}" stroke="${slow}" stroke-width="1.1" fill="none"/>`;
}

function rootMark(x: number, width: number, y: number, c: number): string {
  const colour = caseColour(c);
  return (
    lineBetween(x + 1, y, x + width - 1, y, colour, 2.4) +
    `<path d="M${coordinate(x + width / 2 - 4)} ${coordinate(y - 7)}h8l-4 6z" fill="${colour}"/>`
  );
}

/** What each layer of the first case is, beside it, a hair line away. */
function labels(layers: readonly SoilLayer[], from: number, room: DepthRoom, shown: Formatters): string[] {
  const { y, depthMm, top, bottom } = room;
  const drawn = layers.filter(({ topMm }) => topMm < depthMm);
  const isTight = 2 * defaults.labelLinePx * drawn.length + 6 > bottom - top;
  const height = (isTight ? 1 : 2) * defaults.labelLinePx + 1;
  const middles = drawn.map(({ topMm, bottomMm }) => y((topMm + Math.min(bottomMm, depthMm)) / 2));
  const places = apart(
    middles.map((middle) => middle - height / 2),
    height,
    top,
    bottom - height,
  );
  return drawn.flatMap((layer, l) => {
    const x = from + 18;
    const first = places[l]! + 9.5;
    const isSlow = passageOf(layer, 0) < defaults.slowBelow;
    const name = textAt(x, first, shortened(`${layer.name}, ${extentSaid(layer, shown)}`, 34), {
      bold: true,
    });
    const hair = `<path d="M${coordinate(from + 1)} ${coordinate(middles[l]!)}L${coordinate(x - 3)} ${coordinate(first - 3)}" stroke="${pencil}" stroke-width="0.6" fill="none"/>`;
    if (isTight) return [hair, name];
    const what = shortened(layerSaid(layer), 36);
    return [hair, name, textAt(x, first + defaults.labelLinePx - 0.5, what, isSlow ? { fill: slow } : {})];
  });
}

function extentSaid({ topMm, bottomMm }: SoilLayer, shown: Formatters): string {
  return `${shown.total(topMm)} to ${shown.total(bottomMm)} ${shown.length}`;
}

/** `silt loam, 1.62 g/cm³, roots keep 26 % of pace` */
function layerSaid(layer: SoilLayer): string {
  const { sandFraction, clayFraction, bulkDensityKgPerM3, gravelVolumeFraction } = layer;
  const passage = passageOf(layer, 0);
  return [
    textureClass(sandFraction, clayFraction),
    `${(bulkDensityKgPerM3 / 1000).toFixed(2)} g/cm³`,
    ...(gravelVolumeFraction >= 0.005 ? [`${percent(gravelVolumeFraction)} stones`] : []),
    ...(passage < defaults.slowBelow ? [`pace ${percent(passage)}`] : []),
  ].join(", ");
}

function soilSaid({ scenario, comparison, shown }: ReportInput): string {
  const [first, ...others] = scenario.cases;
  const all = (layers: readonly SoilLayer[]) =>
    layers.map((layer) => `${layer.name}, ${extentSaid(layer, shown)}: ${layerSaid(layer)}`).join("; ");
  const changed = others.flatMap(({ name, layers }) => {
    const told = all(layers);
    return told === all(first.layers) ? [] : [`In "${name}": ${told}.`];
  });
  const reach = comparison.cases.map(
    ({ name, finalRootDepthMm }) => `"${name}" ${shown.depth(finalRootDepthMm)} ${shown.length}`,
  );
  return [
    `Layers of "${first.name}": ${all(first.layers)}.`,
    ...changed,
    `Roots reach: ${reach.join(", ")}.`,
  ].join(" ");
}

/** What the other cases change in a layer, in words; empty where their soil is the first's. */
export function changesOfSoil({ scenario }: ReportInput): { c: number; name: string; changes: string[] }[] {
  const [first, ...others] = scenario.cases;
  return others.map(({ name, layers }, i) => ({
    c: i + 1,
    name,
    changes: layers
      .filter(
        (layer) =>
          !first.layers.some((one) => one.name === layer.name && layerSaid(one) === layerSaid(layer)),
      )
      .map((layer) => `${layer.name}: ${layerSaid(layer)}`),
  }));
}
