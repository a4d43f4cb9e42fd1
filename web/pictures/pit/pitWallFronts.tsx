import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { SeasonShown } from "../../worker/protocol.ts";
import { apart, dayX, depthY, type PitWallLayout, type Window } from "./pitWallLayout.ts";
import { caseStyle, type CaseStyle, type Palette } from "../kit/palette.ts";
import { wrapped } from "../answer/threeNumbersLabel.ts";

/** Plotly's words for dashes, as SVG draws them. */
const dashes: Readonly<Record<CaseStyle["dash"], string | undefined>> = {
  solid: undefined,
  dash: "9 5",
  dot: "2 5",
  dashdot: "9 4 2 4",
  longdash: "15 5",
};

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
          stroke-dasharray={dashes[style.dash]}
          stroke-linecap={style.dash === "dot" ? "round" : "butt"}
        />
      ))}
      {lines.map(({ name, x, y, style }) => (
        <path
          key={name}
          d={markPath(style.mark, x, y, 5)}
          fill={style.color}
          stroke={colours.paper}
          stroke-width="1.5"
        />
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

/** A case's line as it is drawn, for a legend. */
export function LineSample({ c, colours }: { readonly c: number; readonly colours: Palette }) {
  const { color, dash, mark } = caseStyle(c, colours);
  return (
    <svg viewBox="0 0 38 14" width="38" height="14" aria-hidden="true" class="line-sample">
      <path
        d="M1 7h36"
        stroke={color}
        stroke-width="3"
        stroke-dasharray={dashes[dash]}
        stroke-linecap={dash === "dot" ? "round" : "butt"}
      />
      <path d={markPath(mark, 19, 7, 5)} fill={color} stroke={colours.paper} stroke-width="1.2" />
    </svg>
  );
}

function markPath(mark: CaseStyle["mark"], x: number, y: number, r: number): string {
  const at = `M${x.toFixed(1)} ${y.toFixed(1)}`;
  switch (mark) {
    case "circle":
      return `${at}m${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
    case "diamond":
      return `${at}m0 ${-r - 1}l${r + 1} ${r + 1}l${-r - 1} ${r + 1}l${-r - 1} ${-r - 1}z`;
    case "square":
      return `${at}m${-r} ${-r}h${2 * r}v${2 * r}h${-2 * r}z`;
    case "triangle-up":
      return `${at}m0 ${-r - 1}l${r + 1} ${2 * r}h${-2 * r - 2}z`;
    case "cross":
      return `${at}m${-r / 3} ${-r}h${(2 * r) / 3}v${(2 * r) / 3}h${(2 * r) / 3}v${(2 * r) / 3}h${(-2 * r) / 3}v${(2 * r) / 3}h${(-2 * r) / 3}v${(-2 * r) / 3}h${(-2 * r) / 3}v${(-2 * r) / 3}h${(2 * r) / 3}z`;
  }
}
