import type { ComponentChildren } from "preact";
import { percent, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { CaseSeason, LayerShown } from "../../worker/protocol.ts";
import { handLine, px } from "../kit/handDrawn.ts";
import { DenseLayer, EarthMarks, stonesFrom } from "../kit/earth.tsx";
import { shortened } from "../../../src/drawing/text.ts";
import { apart } from "../../../src/drawing/labels.ts";
import type { Box, Window } from "../kit/box.ts";
import { fontFamily, type Palette } from "../kit/palette.ts";
import { layerBands, type LayerBand } from "../kit/layerBands.ts";

export const defaults = {
  lineHeightPx: 15,
  /** Width of a letter against the size of its type, on the wide side. */
  letter: 0.58,
  boldLetter: 0.64,
} as const;

interface SoilProfileProps {
  readonly layers: readonly LayerShown[];
  /** Tells where roots slow; null until the first season is there. */
  readonly season: CaseSeason | null;
  readonly box: Box;
  readonly window: Window;
  readonly wide: boolean;
  readonly colours: Palette;
  readonly shown: Formatters;
  /** Keeps the clipping of two drawings on one page apart. */
  readonly id: string;
  /** Drawn on the earth, under what is written on it: the roots. */
  readonly children?: ComponentChildren;
}

/** The soil as drawn in a pit. */
export function SoilProfile({
  layers,
  season,
  box,
  window,
  wide,
  colours,
  shown,
  id,
  children,
}: SoilProfileProps) {
  const bands = layerBands(layers, season, box, window);
  return (
    <g class="soil-profile">
      {bands.map((one, i) => (
        <Band key={i} {...one} {...{ colours, wide }} seed={i + 1} clip={`${id}-layer-${i}`} />
      ))}
      {bands.map(({ band }, i) => (
        <path
          key={i}
          d={handLine(box.x, band.y + band.height, box.width, i + 1)}
          fill="none"
          stroke={colours.ink}
          stroke-width="1.6"
        />
      ))}
      {children}
      <Tags {...{ bands, box, wide, colours, shown }} />
    </g>
  );
}

interface BandProps extends LayerBand {
  readonly colours: Palette;
  readonly wide: boolean;
  readonly seed: number;
  readonly clip: string;
}

function Band({ layer, band, passage, isSlow, colours, wide, seed, clip }: BandProps) {
  return (
    <g>
      <clipPath id={clip}>
        <rect {...band} />
      </clipPath>
      <rect {...band} fill={colours.soil[layer.texture] ?? colours.rule} />
      <rect {...band} fill="#20160e" fill-opacity={darkness(layer)} />
      <g clip-path={`url(#${clip})`}>
        <EarthMarks {...{ layer, seed, colours }} box={band} on="earth" />
        {isSlow && (
          <DenseLayer {...{ passage, colours }} box={band} bars={["right"]}>
            <TurnedRoots {...{ band, passage, colours, wide }} />
          </DenseLayer>
        )}
      </g>
    </g>
  );
}

/** Humus and packing darken earth: of the two, what the eye would see. */
function darkness({ organicMatterPercent, bulkDensityKgPerM3 }: LayerShown): number {
  const packed = Math.max(0, bulkDensityKgPerM3 / 1000 - 1.3);
  return Math.min(0.35, 0.06 * organicMatterPercent + 0.45 * packed);
}

/** Roots that turn aside, closer together the less of their pace is left. */
function TurnedRoots({
  band,
  passage,
  colours,
  wide,
}: Omit<BandProps, "seed" | "clip" | "layer" | "isSlow">) {
  const { x, y, width, height } = band;
  const gap = 14 + 26 * passage;
  const inset = wide ? 10 : 6;
  const count = Math.max(1, Math.floor((width - 2 * inset) / gap));
  const half = px(Math.min(11, height * 0.45) / 2);
  const turned = Array.from({ length: count }, (_, i) => {
    const way = i < count / 2 ? -1 : 1;
    const at = x + inset + (i + 0.5) * ((width - 2 * inset) / count);
    return `M${px(at)} ${px(y)}v${half}q0 ${half} ${4 * way} ${half}h${7 * way}`;
  }).join("");
  return <path d={turned} fill="none" stroke={colours.pan} stroke-width="1.8" stroke-linecap="round" />;
}

interface TagsProps {
  readonly bands: readonly LayerBand[];
  readonly box: Box;
  readonly wide: boolean;
  readonly colours: Palette;
  readonly shown: Formatters;
}

/** What is written on each layer, on a slip of paper so that it can be read on any earth. */
function Tags({ bands, box, wide, colours, shown }: TagsProps) {
  const size = wide ? 12.5 : 10.5;
  const tags = bands.map((band) => linesOf(band, wide, shown));
  const heights = tags.map((lines) => lines.length * defaults.lineHeightPx + 4);
  const wanted = bands.map(
    ({ band }) => band.y + band.height / 2 + (band.height > 90 ? -band.height * 0.2 : 0),
  );
  const centres = apart(wanted, heights, box.y + 2, box.y + box.height - 2);
  const letter = ({ isName }: Line) => size * (isName === true ? defaults.boldLetter : defaults.letter);
  const room = box.width - (wide ? 30 : 14);
  return (
    <g font-family={fontFamily} font-size={size}>
      {tags.map((lines, i) => {
        const texts = lines.map((line) => shortened(line.text, Math.floor(room / letter(line))));
        const width = Math.max(...texts.map(({ length }, l) => length * letter(lines[l]!))) + 10;
        const left = box.x + (wide ? 8 : 3);
        const top = centres[i]! - heights[i]! / 2;
        return (
          <g key={i}>
            <rect
              x={left}
              y={top}
              width={width}
              height={heights[i]!}
              rx="2"
              fill={colours.paper}
              fill-opacity="0.92"
              stroke={colours.pencil}
              stroke-width="0.6"
            />
            {lines.map(({ isSlow, isName }, l) => (
              <text
                key={l}
                x={left + 5}
                y={top + 13 + l * defaults.lineHeightPx}
                fill={isSlow ? colours.pan : colours.ink}
                font-weight={isName || isSlow ? 600 : 400}
              >
                {texts[l]}
              </text>
            ))}
          </g>
        );
      })}
    </g>
  );
}

interface Line {
  readonly text: string;
  readonly isName?: boolean;
  readonly isSlow?: boolean;
}

function linesOf({ layer, band, passage, isSlow }: LayerBand, wide: boolean, shown: Formatters): Line[] {
  const density = `${(layer.bulkDensityKgPerM3 / 1000).toFixed(2)}${wide ? " g/cm³" : ""}`;
  const soil = wide ? [`${layer.texture}, ${density}`] : [layer.texture, density];
  const stones =
    layer.gravelVolumeFraction > stonesFrom ? `${percent(layer.gravelVolumeFraction)} stones` : "";
  const slow = `${wide ? "roots slow" : "slow"}: ${percent(passage)}${wide ? " of pace" : ""}`;
  const end = layer.bottomMm > 0 ? `to ${shown.total(layer.bottomMm)} ${shown.length}` : "";
  const name = { text: layer.name, isName: true };
  const all: Line[] = [
    name,
    ...(isSlow && !wide ? [{ text: slow, isSlow }] : []),
    ...soil.map((text) => ({ text })),
    ...(isSlow && wide ? [{ text: slow, isSlow }] : []),
    ...(wide || stones === "" ? [] : [{ text: stones }]),
    ...(wide ? [{ text: [end, stones].filter(Boolean).join(", ") }] : []),
  ];
  // A slow layer, thin as it may be, tells what it is and what it does: its slip pushes the others aside.
  const room = Math.max(isSlow ? 3 : 1, Math.floor((band.height - 4) / defaults.lineHeightPx));
  return all.slice(0, room);
}
