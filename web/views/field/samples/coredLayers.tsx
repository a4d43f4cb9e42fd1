import type { LayerSampled, SoilSampled } from "../../../../src/evidence/samples/soilSampled.ts";
import { fixed, percent, type Formatters } from "../../../../src/report/tables/formatters.ts";
import { fontFamily, palette, type Palette } from "../../../pictures/kit/palette.ts";
import { depthY, type Box } from "../../../pictures/kit/box.ts";
import { SvgPicture } from "../../../pictures/kit/svgPicture.tsx";
import { wrapped } from "../../../../src/drawing/text.ts";
import { axisOver, type Axis } from "../../../../src/drawing/axis.ts";
import type { LayerShown } from "../../../worker/protocol.ts";
import { DepthAxis } from "../../../pictures/kit/depthAxis.tsx";
import { PaleEarth } from "../../../pictures/kit/earth.tsx";

export const defaults = { fileName: "water-in-the-cores", sizePx: 13, depthPx: 300 } as const;

interface CoredLayersProps {
  readonly sampled: SoilSampled;
  readonly layers: readonly LayerShown[];
  readonly confidence: number;
  readonly width: number;
  readonly shown: Formatters;
}

/** Water by volume of each cored layer down the profile, between what the layer keeps from roots and what it can hold. */
export function CoredLayers({ sampled, layers, confidence, width, shown }: CoredLayersProps) {
  const colours = palette();
  const narrow = width < 520;
  const left = narrow ? 98 : 160;
  const box: Box = { x: left, y: 34, width: width - left - 14, height: defaults.depthPx };
  const bottomMm = sampled.layers.reduce((most, one) => Math.max(most, one.bottomMm), 0);
  const shownLayers = layers.filter(({ topMm }) => topMm < bottomMm);
  const window = { fromDay: 0, toDay: 1, depthMm: bottomMm };
  const most = Math.max(
    0.1,
    ...shownLayers.map(({ saturation }) => saturation),
    ...sampled.layers.map(
      ({ volumeFraction }) => volumeFraction?.interval?.high ?? volumeFraction?.mean ?? 0,
    ),
  );
  const axis = axisOver(0, Math.min(1, most), box.x, box.x + box.width, narrow ? 4 : 8);
  const said = sampled.layers
    .flatMap(({ name, volumeFraction }) =>
      volumeFraction === null ? [] : `${name} ${fixed(100 * volumeFraction.mean, 1)} %`,
    )
    .join(", ");
  return (
    <SvgPicture
      name={`Water by volume in the cores: ${said === "" ? "none weighed wet" : said}`}
      width={width}
      height={box.y + box.height + 44}
      table={{
        head: [
          "Layer",
          `From, ${shown.length}`,
          `To, ${shown.length}`,
          "Wilting point",
          "Field capacity",
          "In the cores",
        ],
        rows: shownLayers.map((layer) => {
          const own = sampled.layers.find(({ name }) => name === layer.name)?.volumeFraction ?? null;
          return [
            layer.name,
            shown.depth(layer.topMm),
            shown.depth(layer.bottomMm),
            percent(layer.wiltingPoint),
            percent(layer.fieldCapacity),
            own === null ? "–" : `${fixed(100 * own.mean, 1)} %`,
          ];
        }),
      }}
      fileName={defaults.fileName}
      caption={`Bar: from wilting point to field capacity; mark: the cores, with their ${percent(confidence)} interval.`}
    >
      <rect width={width} height={box.y + box.height + 44} fill={colours.paper} />
      <g font-family={fontFamily} font-size={defaults.sizePx} fill={colours.ink}>
        {axis.ticks.map((tick) => (
          <g key={tick}>
            <path d={`M${axis.at(tick)} ${box.y}v${box.height}`} stroke={colours.rule} />
            <text
              x={axis.at(tick)}
              y={box.y + box.height + 18}
              text-anchor="middle"
              fill={colours.pencil}
              font-size={defaults.sizePx - 1}
            >
              {fixed(tick * 100, 0)}
            </text>
          </g>
        ))}
        <text x={box.x} y={box.y + box.height + 38} fill={colours.pencil} font-size={defaults.sizePx - 1}>
          % water by volume
        </text>
        <DepthAxis
          {...{ box, shown, colours }}
          depthMm={bottomMm}
          x={26}
          sizePx={defaults.sizePx - 1}
          unitY={14}
        />
        {shownLayers.map((layer, i) => (
          <LayerRow
            key={layer.name}
            {...{ layer, box, axis, colours, narrow }}
            top={depthY(box, window, layer.topMm)}
            bottom={depthY(box, window, Math.min(layer.bottomMm, bottomMm))}
            own={sampled.layers.find(({ name }) => name === layer.name) ?? null}
            seed={i + 1}
          />
        ))}
      </g>
    </SvgPicture>
  );
}

interface LayerRowProps {
  readonly layer: LayerShown;
  readonly own: LayerSampled | null;
  readonly top: number;
  readonly bottom: number;
  readonly box: Box;
  readonly axis: Axis;
  readonly colours: Palette;
  readonly narrow: boolean;
  readonly seed: number;
}

function LayerRow({ layer, own, top, bottom, box, axis, colours, narrow, seed }: LayerRowProps) {
  const y = (top + bottom) / 2;
  const tall = Math.min(26, Math.max(6, (bottom - top) * 0.6));
  const water = own?.volumeFraction ?? null;
  const size = narrow ? 11.5 : defaults.sizePx;
  const room = box.x - 38;
  const lines = wrapped(layer.name, room, size).slice(0, bottom - top > 2.2 * size ? 2 : 1);
  return (
    <g data-layer={layer.name}>
      <PaleEarth
        {...{ layer, seed, colours }}
        box={{ x: 32, y: top, width: box.x - 32, height: bottom - top }}
        edgePx={box.width + box.x - 32}
      />
      {lines.map((line, l) => (
        <text key={l} x={37} y={y + size * 0.35 + (l - (lines.length - 1) / 2) * (size + 2)} font-size={size}>
          {line}
        </text>
      ))}
      <rect
        x={axis.at(layer.wiltingPoint)}
        y={y - tall / 2}
        width={Math.max(1, axis.at(layer.fieldCapacity) - axis.at(layer.wiltingPoint))}
        height={tall}
        fill={colours.water[1]![1]}
        stroke={colours.rain}
      />
      {water !== null && (
        <g>
          {water.interval !== null && (
            <path
              d={`M${axis.at(Math.min(axis.to, water.interval.low))} ${y}H${axis.at(Math.min(axis.to, water.interval.high))}`}
              stroke={colours.ink}
              stroke-width="2.4"
            />
          )}
          <circle
            cx={axis.at(water.mean)}
            cy={y}
            r="6"
            fill={colours.ink}
            stroke={colours.paper}
            stroke-width="2"
            data-volume={water.mean}
          />
        </g>
      )}
    </g>
  );
}
