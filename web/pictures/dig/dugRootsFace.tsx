import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { LayerShown } from "../../worker/protocol.ts";
import type { DugLayout } from "./dugRootsLayout.ts";
import { words, type Palette } from "../kit/palette.ts";
import { handLine } from "../pit/pitWallEarth.ts";
import { apart, depthTicks, depthY, type Box, type Window } from "../pit/pitWallLayout.ts";
import { wrapped } from "../answer/threeNumbersLabel.ts";

const sizePx = 13;

export interface Looks {
  readonly window: Window;
  readonly colours: Palette;
}

interface FaceProps extends Looks {
  readonly layers: readonly LayerShown[];
  readonly layout: DugLayout;
  /** The layer that is fitted. */
  readonly dense: string | null;
}

/** The layers as earth, light enough to be drawn on; the dense one hatched. */
export function Face({ layers, layout: { face, columns, wide }, window, colours, dense }: FaceProps) {
  const bands = layers
    .filter(({ topMm }) => topMm < window.depthMm)
    .map((layer) => {
      const top = depthY(face, window, layer.topMm);
      return { layer, top, bottom: depthY(face, window, Math.min(layer.bottomMm, window.depthMm)) };
    });
  const room = columns[0]!.x - face.x - 8;
  const size = wide ? sizePx - 0.5 : 11;
  const names = bands.map(({ layer: { name } }) =>
    wrapped(name === dense ? `${name}: dense` : name, room, size).slice(0, 3),
  );
  const heights = names.map((lines) => lines.length * (size + 2) + 6);
  const centres = apart(
    bands.map(({ top, bottom }) => (top + bottom) / 2),
    heights,
    face.y + 2,
    face.y + face.height - 2,
  );
  return (
    <g>
      {bands.map(({ layer, top, bottom }, i) => (
        <g key={i}>
          <rect
            x={face.x}
            y={top}
            width={face.width}
            height={bottom - top}
            fill={colours.soil[layer.texture] ?? colours.rule}
            fill-opacity="0.42"
          />
          {layer.name === dense && <Dense {...{ face, top, bottom, colours }} />}
          <path
            d={handLine(face.x, top, face.width, i + 1)}
            fill="none"
            stroke={colours.ink}
            stroke-width="1.3"
          />
        </g>
      ))}
      {names.map((lines, i) => (
        <g key={i} font-size={size} fill={bands[i]!.layer.name === dense ? colours.pan : colours.ink}>
          <rect
            x={face.x + 3}
            y={centres[i]! - heights[i]! / 2 + 1}
            width={room + 2}
            height={heights[i]! - 2}
            rx="2"
            fill={colours.paper}
            fill-opacity="0.9"
            stroke={colours.pencil}
            stroke-width="0.5"
          />
          {lines.map((line, l) => (
            <text
              key={l}
              x={face.x + 7}
              y={centres[i]! - heights[i]! / 2 + size + 2 + l * (size + 2)}
              font-weight={bands[i]!.layer.name === dense ? 600 : 400}
            >
              {line}
            </text>
          ))}
        </g>
      ))}
    </g>
  );
}

function Dense({ face, top, bottom, colours }: { face: Box; top: number; bottom: number; colours: Palette }) {
  const height = bottom - top;
  const strokes = Array.from({ length: Math.floor(face.width / 9) }, (_, i) => {
    const lean = Math.min(height, 9);
    return `M${(face.x + 4 + i * 9).toFixed(1)} ${bottom.toFixed(1)}l${Math.min(7, lean).toFixed(1)} ${(-height).toFixed(1)}`;
  }).join("");
  return (
    <g>
      <rect x={face.x} y={top} width={face.width} height={height} fill={colours.pan} fill-opacity="0.2" />
      <path d={strokes} fill="none" stroke={colours.pan} stroke-width="0.9" stroke-opacity="0.5" />
      <path d={`M${face.x} ${bottom}h${face.width}`} stroke={colours.pan} stroke-width="1.5" />
    </g>
  );
}

export function DepthAxis({ face, window, colours, shown }: Looks & { face: Box; shown: Formatters }) {
  return (
    <g fill={colours.pencil} text-anchor="end" font-size={sizePx - 1}>
      {depthTicks(window.depthMm, face.height, shown.system === "us").map(({ mm, text }) => {
        const y = depthY(face, window, mm);
        return (
          <g key={mm}>
            <path d={`M${face.x - 4} ${y}h4`} stroke={colours.pencil} />
            <text x={face.x - 7} y={y + 4}>
              {text}
            </text>
          </g>
        );
      })}
      <text x={face.x - 7} y={face.y - 12}>
        {shown.length}
      </text>
      <title>{words.depth}</title>
    </g>
  );
}
