import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { SeasonShown } from "../../worker/protocol.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { dayX, depthY, type Window } from "../kit/box.ts";
import type { PitWallLayout } from "./pitWallLayout.ts";
import { caseStyle, type Palette } from "../kit/palette.ts";
import { wrapped } from "../../../src/drawing/text.ts";
import { strokeDashes } from "../kit/caseLooks.ts";
import { Point } from "../kit/marks.tsx";

interface FrontsProps {
  readonly season: SeasonShown;
  readonly layout: PitWallLayout;
  readonly window: Window;
  readonly colours: Palette;
  readonly shown: Formatters;
}

const nameSizePx = 12.5;

/** Each case's root front over the water, with its mark at the end and, where there is room, its name and depth. */
export function Fronts({ season, layout, window, colours, shown }: FrontsProps) {
  const { water: box, names } = layout;
  const lines = season.cases.map((one, c) => {
    const last = one.days - 1;
    const endMm = one.frontMm[last] ?? 0;
    let path = "";
    for (let ownDay = one.sowingDay; ownDay <= last; ownDay++) {
      const x = dayX(box, window, one.startsAt + ownDay + 0.5).toFixed(1);
      path += `${path === "" ? "M" : "L"}${x} ${depthY(box, window, one.frontMm[ownDay]!).toFixed(1)}`;
    }
    return {
      name: one.name,
      nameLines: names === null ? [] : wrapped(one.name, names.width - 12, nameSizePx),
      path,
      endMm,
      x: dayX(box, window, one.startsAt + last + 0.5),
      y: depthY(box, window, endMm),
      style: caseStyle(c, colours),
    };
  });
  const centres = apart(
    lines.map(({ y }) => y),
    lines.map(({ nameLines }) => 21 + 15 * nameLines.length),
    box.y,
    box.y + box.height,
  );
  return (
    <g fill="none" stroke-linejoin="round">
      {lines.map(({ name, path }) => (
        <path key={name} d={path} stroke={colours.paper} stroke-width="6" stroke-opacity="0.85" />
      ))}
      {lines.map(({ name, path, style }) => (
        <path
          key={name}
          d={path}
          stroke={style.color}
          stroke-width="3"
          stroke-dasharray={strokeDashes[style.dash]}
          stroke-linecap={style.dash === "dot" ? "round" : "butt"}
        />
      ))}
      {lines.map(({ name, x, y, style: { mark, color } }) => (
        <Point key={name} {...{ mark, x, y, color }} paper={colours.paper} radiusPx={5} edgePx={1.5} />
      ))}
      {names !== null &&
        lines.map(({ name, nameLines, x, y, endMm, style }, c) => (
          <g key={name} font-size={nameSizePx}>
            <path
              d={`M${(x + 6).toFixed(1)} ${y.toFixed(1)}L${names.x + 8} ${centres[c]!.toFixed(1)}`}
              stroke={style.color}
            />
            {nameLines.map((line, i) => (
              <text
                key={line}
                x={names.x + 11}
                y={centres[c]! - 2 + 15 * (i - (nameLines.length - 1) / 2)}
                fill={style.color}
                font-weight="600"
              >
                {line}
              </text>
            ))}
            <text
              x={names.x + 11}
              y={centres[c]! + 13 + (15 * (nameLines.length - 1)) / 2}
              fill={colours.ink}
            >
              {shown.depth(endMm)} {shown.length}
            </text>
          </g>
        ))}
    </g>
  );
}
