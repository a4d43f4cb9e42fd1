import { oneADepth, rootStopMPa } from "../../../../src/evidence/samples/penetrometer.ts";
import { kinds } from "../../../../src/quantity/kinds.ts";
import { fixed, type Formatters } from "../../../../src/report/tables/formatters.ts";
import type { PenetrometerLog } from "../../../../src/scenario/resolve/evidence/soilSamples.ts";
import { fontFamily, palette } from "../../../pictures/kit/palette.ts";
import { depthY, type Box } from "../../../pictures/kit/box.ts";
import { SvgPicture } from "../../../pictures/kit/svgPicture.tsx";
import { axisOver } from "../../../../src/drawing/axis.ts";
import type { LayerShown } from "../../../worker/protocol.ts";
import { DepthAxis } from "../../../pictures/kit/depthAxis.tsx";
import { PaleEarth } from "../../../pictures/kit/earth.tsx";
import { layerBands } from "../../../pictures/kit/layerBands.ts";

export const defaults = { fileName: "penetrometer", sizePx: 13, depthPx: 340 } as const;

interface PushedProps {
  readonly log: PenetrometerLog;
  readonly layers: readonly LayerShown[];
  readonly width: number;
  readonly shown: Formatters;
}

/** What the dial showed against depth, with the reading at which roots stop; where it is above that, marked. */
export function Pushed({ log, layers, width, shown }: PushedProps) {
  const colours = palette();
  const { unit, perInside } = kinds.resistance[shown.system];
  const say = (mPa: number) => fixed(mPa * perInside, shown.system === "us" ? 0 : 2);
  const box: Box = { x: 34, y: 40, width: width - 34 - 16, height: defaults.depthPx };
  const deepest = Math.max(...log.readings.map(({ depthMm }) => depthMm), 100);
  const window = { fromDay: 0, toDay: 1, depthMm: deepest * 1.06 };
  const hardest = Math.max(rootStopMPa, ...log.readings.map(({ resistanceMPa }) => resistanceMPa));
  const axis = axisOver(0, hardest * 1.05 * perInside, box.x, box.x + box.width, width > 420 ? 6 : 4);
  const x = (mPa: number) => axis.at(mPa * perInside);
  const y = (mm: number) => depthY(box, window, mm);
  const path = oneADepth(log.readings)
    .map(({ depthMm, resistanceMPa }, i) => `${i === 0 ? "M" : "L"}${x(resistanceMPa)} ${y(depthMm)}`)
    .join("");
  const height = box.y + box.height + 12;
  const above =
    log.above.length === 0
      ? "nowhere above 300 psi"
      : `above 300 psi ${log.above.map(({ fromMm, toMm }) => `from ${shown.depth(fromMm)}${toMm === null ? " down" : ` to ${shown.depth(toMm)}`}`).join(" and ")} ${shown.length}`;
  return (
    <SvgPicture
      name={`Penetrometer reading against depth: ${above}`}
      width={width}
      height={height}
      table={{
        head: [`Depth, ${shown.length}`, `Reading, ${unit}`],
        rows: log.readings
          .toSorted((a, b) => a.depthMm - b.depthMm)
          .map(({ depthMm, resistanceMPa }) => [shown.depth(depthMm), say(resistanceMPa)]),
      }}
      fileName={defaults.fileName}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={defaults.sizePx} fill={colours.ink}>
        {layerBands(layers, null, box, window).map(({ layer, band }, i) => (
          <g key={layer.name}>
            <PaleEarth {...{ layer, colours }} box={band} seed={i + 1} opacity={0.3} />
            {band.height > 16 && (
              <text
                x={box.x + box.width - 6}
                y={band.y + band.height - 5}
                text-anchor="end"
                font-size={defaults.sizePx - 1}
                stroke={colours.paper}
                stroke-width="3"
                paint-order="stroke"
              >
                {layer.name}
              </text>
            )}
          </g>
        ))}
        {log.above.map(({ fromMm, toMm }) => (
          <g key={fromMm} data-above={fromMm}>
            <rect
              x={box.x}
              y={y(fromMm)}
              width={box.width}
              height={Math.max(2, y(toMm ?? deepest) - y(fromMm))}
              fill={colours.pan}
              fill-opacity="0.2"
            />
            <rect
              x={box.x}
              y={y(fromMm)}
              width="5"
              height={Math.max(2, y(toMm ?? deepest) - y(fromMm))}
              fill={colours.pan}
            />
          </g>
        ))}
        {axis.ticks.map((tick) => (
          <text
            key={tick}
            x={axis.at(tick)}
            y={box.y - 8}
            text-anchor="middle"
            fill={colours.pencil}
            font-size={defaults.sizePx - 1}
          >
            {tick.toFixed(axis.digits)}
          </text>
        ))}
        <text
          x={box.x + box.width}
          y={14}
          text-anchor="end"
          fill={colours.pencil}
          font-size={defaults.sizePx - 1}
        >
          {unit}
        </text>
        <DepthAxis
          {...{ box, shown, colours }}
          depthMm={window.depthMm}
          x={box.x - 6}
          sizePx={defaults.sizePx - 1}
          unitY={14}
        />
        <path
          d={`M${x(rootStopMPa)} ${box.y}v${box.height}`}
          stroke={colours.pan}
          stroke-width="2"
          stroke-dasharray="7 4"
        />
        <text
          x={x(rootStopMPa) - 6}
          y={box.y + box.height - 8}
          text-anchor="end"
          fill={colours.pan}
          font-weight="600"
          stroke={colours.paper}
          stroke-width="4"
          paint-order="stroke"
        >
          {say(rootStopMPa)} {unit}: roots stop
        </text>
        <path d={path} fill="none" stroke={colours.paper} stroke-width="5" />
        <path d={path} fill="none" stroke={colours.ink} stroke-width="2" />
        {log.readings.map(({ depthMm, resistanceMPa }, i) => (
          <circle
            key={i}
            cx={x(resistanceMPa)}
            cy={y(depthMm)}
            r="4.5"
            fill={resistanceMPa > rootStopMPa ? colours.pan : colours.ink}
            stroke={colours.paper}
            stroke-width="1.5"
            data-mpa={resistanceMPa}
          />
        ))}
      </g>
    </SvgPicture>
  );
}
