import { computed, type ReadonlySignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { LayerShown, SeasonShown } from "../../worker/protocol.ts";
import { fontFamily, type Palette } from "../kit/palette.ts";
import { handLine } from "../kit/handDrawn.ts";
import { depthY, type Box, type Window } from "../kit/box.ts";
import { rootSystemOf } from "./rootSystem.ts";
import { BesideSoil } from "./twoRootsBeside.tsx";
import {
  FrontLines,
  FrontNumber,
  GrownRoots,
  Plant,
  RainFalling,
  StripOutline,
  WaterBehind,
} from "./twoRootsDay.tsx";
import { Depths, CaseName, WaterKey } from "./twoRootsFrame.tsx";
import { crownIn, type TwoRootsLayout } from "./twoRootsLayout.ts";
import { stripOn, type Strip } from "./twoRootsStrip.ts";
import { sliceAt } from "../pit/waterHeatmap.ts";
import { DenseLayer, EarthMarks } from "../kit/earth.tsx";
import { layerBands } from "../kit/layerBands.ts";

export const defaults = {
  name: "Two root systems side by side in the soil's available water",
  fileName: "two-root-systems",
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
  /** In words, what the soil between both fronts was worth; null while that is not to be told. */
  readonly sayWorth: ((strip: Strip) => string) | null;
  /** Keeps the clipping of two drawings on one page apart. */
  readonly id: string;
}

/** Both root systems down the same soil, on one axis: what moves with the day is drawn by parts of their own. */
export function TwoRoots(props: TwoRootsProps) {
  const { season, pair, layers, layout, depthMm, day, colours, shown, sayWorth, id } = props;
  const window: Window = { fromDay: 0, toDay: season.days, depthMm };
  const here = pair.filter((c) => season.cases[c] !== undefined);
  const strip = useMemo(() => computed(() => stripOn(season, pair, day.value)), [season, pair, day]);
  return (
    <g font-family={fontFamily} font-size={layout.sizePx} fill={colours.ink}>
      <rect width={layout.width} height={layout.height} fill={colours.paper} />
      <Depths {...{ layout, window, colours, shown }} />
      {here.map((c, n) => (
        <RootPanel
          key={c}
          {...{ c, n, season, layout, window, day, strip, colours, shown, sayWorth }}
          others={here.filter((other) => other !== c)}
          layers={layers[n] ?? []}
          otherLayers={layers[1 - n] ?? []}
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
  /** Of the case beside it. */
  readonly otherLayers: readonly LayerShown[];
  readonly box: Box;
  readonly layout: TwoRootsLayout;
  readonly window: Window;
  readonly day: ReadonlySignal<number>;
  readonly strip: ReadonlySignal<Strip | null>;
  readonly colours: Palette;
  readonly shown: Formatters;
  readonly sayWorth: ((strip: Strip) => string) | null;
  readonly id: string;
}

function RootPanel(props: PanelProps) {
  const { c, n, season, layers, box, layout, window, day, colours, id } = props;
  const one = season.cases[c]!;
  const bands = useMemo(() => layerBands(layers, one, box, window), [one, layers, box, window.depthMm]);
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
        {bands.map(({ band, layer, isSlow, passage }, i) => (
          <g key={i}>
            <EarthMarks {...{ layer, colours }} box={band} seed={i + 1} on="water" />
            {isSlow && <DenseLayer box={band} passage={passage} colours={colours} bars={["left", "right"]} />}
          </g>
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
      <StripOutline {...props} />
      <BesideSoil {...props} bands={bands} />
      <FrontNumber {...props} />
    </g>
  );
}
