import type { ReadonlySignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { wrapped } from "../../../src/drawing/text.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { LayerShown } from "../../worker/protocol.ts";
import { depthY, type Box, type Window } from "../kit/box.ts";
import type { LayerBand } from "../kit/layerBands.ts";
import { caseStyle, type Palette } from "../kit/palette.ts";
import {
  layerSaid,
  slipLine,
  slipsIn,
  type Gutter,
  type SlipWords,
  type TwoRootsLayout,
} from "./twoRootsLayout.ts";
import type { Strip } from "./twoRootsStrip.ts";

interface BesideProps {
  readonly c: number;
  /** Place from the left. */
  readonly n: number;
  readonly bands: readonly LayerBand[];
  readonly otherLayers: readonly LayerShown[];
  readonly box: Box;
  readonly window: Window;
  readonly layout: TwoRootsLayout;
  readonly strip: ReadonlySignal<Strip | null>;
  readonly sayWorth: ((strip: Strip) => string) | null;
  readonly colours: Palette;
  readonly shown: Formatters;
}

/** From the soil to what is written beside it, px. */
const leaderPx = 12;

interface Said extends SlipWords {
  readonly color: string;
  readonly weight: 400 | 600 | 700;
  readonly isStrip: boolean;
}

/** Names of the layers, and of the strip that only these roots reach: beside the soil, where no root is. */
export function BesideSoil(props: BesideProps) {
  const { n, layout } = props;
  const gutter = layout.gutters[n]!;
  return gutter === null ? null : <Beside {...props} gutter={gutter} />;
}

function Beside(props: BesideProps & { readonly gutter: Gutter }) {
  const { c, bands, otherLayers, box, window, layout, strip, sayWorth, colours, shown, gutter } = props;
  const { slipSizePx: size, wide } = layout;
  const roomPx = gutter.width - leaderPx - 4;
  const layers = useMemo(
    () =>
      bands.map(({ layer, isSlow, band }): Said => {
        const other = otherLayers.find(({ name }) => name === layer.name);
        const differs = other !== undefined && other.bulkDensityKgPerM3 !== layer.bulkDensityKgPerM3;
        return {
          lines: layerSaid(layer, { isSlow, showsDensity: wide && (isSlow || differs) }, roomPx, size),
          aboutY: band.y + Math.min(band.height / 2, size * 1.3),
          color: isSlow ? colours.pan : colours.ink,
          weight: isSlow ? 600 : 400,
          isStrip: false,
        };
      }),
    [bands, otherLayers, roomPx, size, colours],
  );
  const now = strip.value;
  // On a phone it is said under the picture.
  const hasStrip = wide && now !== null && now.deeper === c;
  const all: readonly Said[] = hasStrip
    ? [
        ...layers,
        {
          lines: [
            ...wrapped(`${shown.depth(now.bottomMm - now.topMm)} ${shown.length} deeper`, roomPx, size * 1.1),
            ...(sayWorth === null ? [] : wrapped(sayWorth(now), roomPx, size * 1.1)),
          ],
          aboutY: depthY(box, window, (now.topMm + now.bottomMm) / 2),
          color: caseStyle(c, colours).color,
          weight: 700,
          isStrip: true,
        },
      ]
    : layers;
  const isLeft = gutter.side === "left";
  const soilX = isLeft ? gutter.x + gutter.width : gutter.x;
  const textX = isLeft ? soilX - leaderPx : soilX + leaderPx;
  return (
    <g class="layer-slips" font-size={size} text-anchor={isLeft ? "end" : "start"}>
      {slipsIn(all, gutter, box, layout).map((slip, i) => {
        const { color, weight, isStrip } = all[i]!;
        const middleY = slip.box.y + slip.box.height / 2;
        return (
          <g key={isStrip ? "strip" : i} class={isStrip ? "strip-said" : "layer-said"}>
            <path
              d={`M${soilX} ${slip.aboutY.toFixed(1)}L${isLeft ? textX + 3 : textX - 3} ${middleY.toFixed(1)}`}
              stroke={color}
              stroke-width={isStrip ? 2.4 : 1.2}
            />
            {slip.lines.map((text, l) => (
              <text
                key={l}
                x={textX}
                y={slip.box.y + size * (0.95 + l * slipLine)}
                fill={color}
                font-weight={weight}
                stroke={colours.paper}
                stroke-width="4"
                paint-order="stroke"
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
