import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { hatching } from "../../../src/drawing/denseLayer.ts";
import type { LayerShown } from "../../worker/protocol.ts";
import type { Box } from "./box.ts";
import { earthOf, handLine } from "./handDrawn.ts";
import type { Palette } from "./palette.ts";

interface EarthProps {
  readonly layer: LayerShown;
  readonly box: Box;
  /** Tells the layers of a drawing apart: none has its grains where another has them. */
  readonly seed: number;
  readonly colours: Palette;
}

/** Stones are drawn, and told of, from this share of the volume on. */
export const stonesFrom = 0.005;

/** How strong the marks are, as width and opacity: on the earth itself, or over the water in it. */
const strengths = {
  earth: { grains: [1.7, 0.5], strokes: [0.8, 0.4], waves: [0.9, 0.45], stones: [1, 1] },
  water: { grains: [1, 0.28], strokes: [1, 0.28], waves: [0.9, 0.25], stones: [1, 0.7] },
} as const;

/** What a layer is made of in pencil: grains of sand, strokes of silt, waves of clay, stones. */
export function EarthMarks({
  layer,
  box,
  seed,
  colours,
  on,
}: EarthProps & { readonly on: "earth" | "water" }) {
  const { x, y, width, height } = box;
  const earth = useMemo(
    () => earthOf(layer, box, seed),
    [layer.sandFraction, layer.clayFraction, layer.gravelVolumeFraction, x, y, width, height],
  );
  const pencil = (mark: keyof typeof strengths.earth) => {
    const [strokeWidth, opacity] = strengths[on][mark];
    return {
      fill: "none",
      stroke: colours.ink,
      "stroke-linecap": "round",
      "stroke-width": strokeWidth,
      "stroke-opacity": opacity,
    } as const;
  };
  return (
    <>
      <path d={earth.grains} {...pencil("grains")} />
      <path d={earth.strokes} {...pencil("strokes")} />
      <path d={earth.waves} {...pencil("waves")} />
      {layer.gravelVolumeFraction > stonesFrom && (
        <path
          d={earth.stones}
          {...pencil("stones")}
          {...(on === "earth" ? { fill: colours.paper, "fill-opacity": 0.75 } : {})}
        />
      )}
    </>
  );
}

interface PaleEarthProps extends EarthProps {
  readonly opacity?: number;
  /** How far its edge is drawn, where that is further than the earth. */
  readonly edgePx?: number;
  /** On the earth, under its edge. */
  readonly children?: ComponentChildren;
}

/** A layer in the colour of its texture, pale enough to be drawn on, its upper edge drawn by hand. */
export function PaleEarth({ layer, box, seed, colours, opacity = 0.42, edgePx, children }: PaleEarthProps) {
  return (
    <>
      <rect {...box} fill={colours.soil[layer.texture] ?? colours.rule} fill-opacity={opacity} />
      {children}
      <path
        d={handLine(box.x, box.y, edgePx ?? box.width, seed)}
        fill="none"
        stroke={colours.ink}
        stroke-width="1.2"
      />
    </>
  );
}

interface DenseLayerProps {
  readonly box: Box;
  /** Share of its pace that the root front keeps, 0 to 1: the less, the darker and the closer hatched. */
  readonly passage: number;
  readonly colours: Palette;
  /** Of the strokes. */
  readonly opacity?: number;
  /** Ends at which a bar stands. */
  readonly bars?: readonly ("left" | "right")[];
  /** In place of the hatching. */
  readonly children?: ComponentChildren;
}

const barPx = 6;

/** What is drawn on a layer that slows roots. */
export function DenseLayer({ box, passage, colours, opacity = 1, bars = [], children }: DenseLayerProps) {
  const { x, y, width, height } = box;
  return (
    <g>
      <rect {...box} fill={colours.pan} fill-opacity={0.3 * (1 - passage)} />
      {children ?? (
        <path
          d={hatching(box, 9 + 26 * passage)}
          fill="none"
          stroke={colours.pan}
          stroke-width="1.1"
          stroke-opacity={opacity}
          stroke-linecap="round"
        />
      )}
      {bars.map((end) => (
        <rect
          key={end}
          x={end === "left" ? x : x + width - barPx}
          y={y}
          width={barPx}
          height={height}
          fill={colours.pan}
        />
      ))}
    </g>
  );
}
