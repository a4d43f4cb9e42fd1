import type { ReadonlySignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { CaseSeason, LayerShown, SeasonShown } from "../../worker/protocol.ts";
import { fontFamily, type Palette } from "../kit/palette.ts";
import { earthOf, handLine } from "../pit/pitWallEarth.ts";
import { depthY, type Box, type Window } from "../pit/pitWallLayout.ts";
import { passageOf } from "../pit/pitWallReading.ts";
import { rootSystemOf } from "./rootSystem.ts";
import { FrontLines, FrontNumber, GrownRoots, Plant, RainFalling, WaterBehind } from "./twoRootsDay.tsx";
import { CaseName, DepthAxis, WaterKey } from "./twoRootsFrame.tsx";
import { crownIn, slipsOf, slipWeight, type Slip, type TwoRootsLayout } from "./twoRootsLayout.ts";
import { sliceAt } from "../pit/waterHeatmap.ts";

export const defaults = {
  name: "Two root systems side by side in the soil's available water",
  fileName: "two-root-systems",
  /** A layer in which roots keep less of their pace is marked. */
  slowBelow: 0.9,
} as const;

export interface TwoRootsProps {
  readonly season: SeasonShown;
  /** Places of the cases, left to right. */
  readonly pair: readonly number[];
  /** Of each case of the pair. */
  readonly layers: readonly (readonly LayerShown[])[];
  readonly layout: TwoRootsLayout;
  readonly depthMm: number;
  /** Counted from the season's first day. */
  readonly day: ReadonlySignal<number>;
  readonly colours: Palette;
  readonly shown: Formatters;
  /** Keeps the clipping of two drawings on one page apart. */
  readonly id: string;
}

/** Both root systems down the same soil, on one axis: what moves with the day is drawn by parts of their own. */
export function TwoRoots({ season, pair, layers, layout, depthMm, day, colours, shown, id }: TwoRootsProps) {
  const window: Window = { fromDay: 0, toDay: season.days, depthMm };
  const here = pair.filter((c) => season.cases[c] !== undefined);
  return (
    <g font-family={fontFamily} font-size={layout.sizePx} fill={colours.ink}>
      <rect width={layout.width} height={layout.height} fill={colours.paper} />
      <DepthAxis {...{ layout, window, colours, shown }} />
      {here.map((c, n) => (
        <RootPanel
          key={c}
          {...{ c, n, season, layout, window, day, colours, shown }}
          others={here.filter((other) => other !== c)}
          layers={layers[n] ?? []}
          box={layout.panels[n]!}
          id={`${id}-${n}`}
        />
      ))}
      <WaterKey {...{ layout, colours }} id={id} />
    </g>
  );
}

interface PanelProps {
  readonly c: number;
  /** Place from the left. */
  readonly n: number;
  readonly others: readonly number[];
  readonly season: SeasonShown;
  readonly layers: readonly LayerShown[];
  readonly box: Box;
  readonly layout: TwoRootsLayout;
  readonly window: Window;
  readonly day: ReadonlySignal<number>;
  readonly colours: Palette;
  readonly shown: Formatters;
  readonly id: string;
}

function RootPanel(props: PanelProps) {
  const { c, n, season, layers, box, layout, window, day, colours, id } = props;
  const one = season.cases[c]!;
  const bands = useMemo(() => bandsOf(one, layers, box, window), [one, layers, box, window.depthMm]);
  const slips = useMemo(() => slipsOf(bands, box, layout), [bands, box, layout]);
  const roots = useMemo(
    () =>
      rootSystemOf({ width: box.width, height: box.height, crown: crownIn(box) }, (px) => {
        const slice = sliceAt(one, (px / box.height) * window.depthMm);
        return slice === null ? 1 : one.passage[slice]!;
      }),
    // Not the season itself: while rain is slid, what roots grow through stays as it is.
    [one.passage.join(), one.sliceTopMm.join(), box, window.depthMm],
  );
  const soilEnds = Math.min(window.depthMm, layers.at(-1)?.bottomMm ?? window.depthMm);
  const bottom = depthY(box, window, soilEnds);
  return (
    <g class="root-panel" data-case={c}>
      <clipPath id={id}>
        <rect x={box.x} y={box.y} width={box.width} height={bottom - box.y} />
      </clipPath>
      <RainFalling {...{ season, box, layout, day, colours }} />
      <Plant {...{ one, box, layout, day, colours }} />
      <CaseName {...{ c, n, layout, colours }} />
      <g clip-path={`url(#${id})`}>
        <WaterBehind {...{ one, box, window, day, colours }} />
        {bands.map(({ band, layer, isSlow, pace }, i) => (
          <Earth key={i} {...{ band, layer, isSlow, pace, colours }} seed={i + 1} />
        ))}
        <GrownRoots {...{ one, roots, box, window, day, colours }} />
      </g>
      {bands.map(({ band }, i) => (
        <path
          key={i}
          d={handLine(box.x, band.y + band.height, box.width, i + 1)}
          fill="none"
          stroke={colours.ink}
          stroke-width="1.4"
        />
      ))}
      <path d={`M${box.x} ${box.y}h${box.width}`} stroke={colours.ink} stroke-width="3" />
      <FrontLines {...props} />
      <LayerSlips {...{ slips, bands, layout, colours }} />
      <FrontNumber {...props} slips={slips} />
    </g>
  );
}

interface BandOfLayer {
  readonly layer: LayerShown;
  readonly band: Box;
  readonly pace: number;
  readonly isSlow: boolean;
}

function bandsOf(
  one: CaseSeason,
  layers: readonly LayerShown[],
  box: Box,
  window: Window,
): readonly BandOfLayer[] {
  return layers
    .filter(({ topMm }) => topMm < window.depthMm)
    .map((layer) => {
      const y = depthY(box, window, layer.topMm);
      const height = depthY(box, window, Math.min(layer.bottomMm, window.depthMm)) - y;
      const pace = passageOf(one, layer.topMm, layer.bottomMm);
      return {
        layer,
        pace,
        isSlow: pace < defaults.slowBelow,
        band: { x: box.x, y, width: box.width, height },
      };
    });
}

interface EarthProps extends BandOfLayer {
  readonly colours: Palette;
  readonly seed: number;
}

/** The grain of the earth in pencil over the water; a dense layer is hatched as far as it holds roots back. */
function Earth({ band, layer, isSlow, pace, colours, seed }: EarthProps) {
  const { x, y, width, height } = band;
  const earth = useMemo(
    () => earthOf(layer, band, seed),
    [layer.sandFraction, layer.clayFraction, layer.gravelVolumeFraction, x, y, width, height],
  );
  const pencil = { fill: "none", stroke: colours.ink, "stroke-linecap": "round" } as const;
  return (
    <g>
      <path d={earth.grains + earth.strokes} {...pencil} stroke-width="1" stroke-opacity="0.28" />
      <path d={earth.waves} {...pencil} stroke-width="0.9" stroke-opacity="0.25" />
      {layer.gravelVolumeFraction > 0.005 && (
        <path d={earth.stones} {...pencil} stroke-width="1" stroke-opacity="0.7" />
      )}
      {isSlow && (
        <>
          <rect {...band} fill={colours.pan} fill-opacity={0.3 * (1 - pace)} />
          <path d={hatching(band, pace)} {...pencil} stroke={colours.pan} stroke-width="1.1" />
          <rect x={x} y={y} width="6" height={height} fill={colours.pan} />
          <rect x={x + width - 6} y={y} width="6" height={height} fill={colours.pan} />
        </>
      )}
    </g>
  );
}

/** The denser, the closer. */
function hatching({ x, y, width, height }: Box, pace: number): string {
  const gap = 9 + 26 * pace;
  let path = "";
  for (let at = gap / 2 - height; at < width; at += gap) {
    const [from, to] = [Math.max(0, at), Math.min(width, at + height)];
    path += `M${(x + from).toFixed(1)} ${(y + height - (from - at)).toFixed(1)}L${(x + to).toFixed(1)} ${(y + height - (to - at)).toFixed(1)}`;
  }
  return path;
}

interface SlipsProps {
  readonly slips: readonly Slip[];
  readonly bands: readonly BandOfLayer[];
  readonly layout: TwoRootsLayout;
  readonly colours: Palette;
}

/** Names on slips of paper, which no line strikes through; a dense layer says what it does. */
function LayerSlips({ slips, bands, layout, colours }: SlipsProps) {
  return (
    <g class="layer-slips">
      {slips.map(({ box, sizePx, lines }, i) => {
        const { isSlow } = bands[i]!;
        return (
          <g key={i} font-size={sizePx}>
            <rect {...box} rx="2" fill={colours.paper} fill-opacity="0.94" />
            {lines.map((text, l) => (
              <text
                key={l}
                x={box.x + 5}
                y={box.y + sizePx * (1 + l * 1.2)}
                fill={isSlow ? colours.pan : colours.ink}
                font-weight={slipWeight(isSlow, layout)}
              >
                {text}
              </text>
            ))}
          </g>
        );
      })}
    </g>
  );
}
