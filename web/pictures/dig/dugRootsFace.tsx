import type { LayerShown } from "../../worker/protocol.ts";
import type { DugLayout } from "./dugRootsLayout.ts";
import type { Palette } from "../kit/palette.ts";
import { apart } from "../../../src/drawing/labels.ts";
import type { Box, Window } from "../kit/box.ts";
import { wrapped } from "../../../src/drawing/text.ts";
import { DenseLayer, PaleEarth } from "../kit/earth.tsx";
import { layerBands } from "../kit/layerBands.ts";

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
  const bands = layerBands(layers, null, face, window);
  const room = columns[0]!.x - face.x - 8;
  const size = wide ? sizePx - 0.5 : 11;
  const names = bands.map(({ layer: { name } }) =>
    wrapped(name === dense ? `${name}: dense` : name, room, size).slice(0, 3),
  );
  const heights = names.map((lines) => lines.length * (size + 2) + 6);
  const centres = apart(
    bands.map(({ band }) => band.y + band.height / 2),
    heights,
    face.y + 2,
    face.y + face.height - 2,
  );
  return (
    <g>
      {bands.map(({ layer, band }, i) => (
        <PaleEarth key={i} {...{ layer, colours }} box={band} seed={i + 1}>
          {layer.name === dense && <Dense {...{ colours }} box={band} />}
        </PaleEarth>
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

/** Hatched alike whatever its passage is: that is what the dig is to tell. */
function Dense({ box, colours }: { readonly box: Box; readonly colours: Palette }) {
  return (
    <>
      <DenseLayer box={box} passage={0.3} colours={colours} opacity={0.5} />
      <path d={`M${box.x} ${box.y + box.height}h${box.width}`} stroke={colours.pan} stroke-width="1.5" />
    </>
  );
}
