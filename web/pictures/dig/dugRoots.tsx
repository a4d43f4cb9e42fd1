import type { DigAnswer, DugDifference } from "../../../src/answer/dig/digAnswer.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { LayerShown } from "../../worker/protocol.ts";
import {
  deepestShownMm,
  dugLayout,
  middleX,
  pairedColumns,
  pencilRoot,
  plantX,
  type DugLayout,
} from "./dugRootsLayout.ts";
import { Difference } from "./dugRootsDifference.tsx";
import { Face, type Looks } from "./dugRootsFace.tsx";
import { dugTable, frontsByGroup } from "./dugRootsTable.ts";
import { caseStyle, fontFamily, palette, type Palette } from "../kit/palette.ts";
import { plantOf } from "../kit/handDrawn.ts";
import { depthY, type Box } from "../kit/box.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { wrapped } from "../../../src/drawing/text.ts";
import { Interval, Point } from "../kit/marks.tsx";
import { DepthAxis } from "../kit/depthAxis.tsx";

export const defaults = {
  fileName: "plants-dug",
  sizePx: 13,
  /** Of the small plants that stand on the ground. */
  plantPx: 15,
  /** In a narrower column the front's depth stands without its word. */
  frontSaidFromPx: 180,
} as const;

interface DugRootsProps {
  readonly dig: DigAnswer;
  /** Depth of every plant, group by group, as entered, mm. */
  readonly plantsMm: readonly (readonly number[])[];
  readonly layers: readonly LayerShown[];
  /** In the order of the scenario: a case keeps its colour. */
  readonly caseNames: readonly string[];
  readonly width: number;
  readonly shown: Formatters;
}

/** The face of the pit with every plant dug drawn in it, the middle of each case, and how far apart the cases are. */
export function DugRoots({ dig, plantsMm, layers, caseNames, width, shown }: DugRootsProps) {
  const colours = palette();
  const layout = dugLayout(width, dig.groups.length, dig.differences.length);
  const fronts = frontsByGroup(dig);
  const window = { fromDay: 0, toDay: 1, depthMm: deepestOf(dig, fronts) };
  const styles = dig.groups.map(({ case: name }) => caseStyle(Math.max(0, caseNames.indexOf(name)), colours));
  const { face, columns, differences } = layout;
  const said = dig.groups
    .map(({ case: name, depthMm }) => `${name} ${shown.depth(depthMm.median!)} ${shown.length}`)
    .join(", ");
  return (
    <SvgPicture
      name={`Roots dug, each plant at its depth; middle: ${said}`}
      width={layout.width}
      height={layout.height}
      table={dugTable(dig, shown)}
      fileName={defaults.fileName}
    >
      <rect width={layout.width} height={layout.height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={defaults.sizePx} fill={colours.ink}>
        <Face {...{ layers, layout, window, colours }} dense={dig.fit?.layer ?? null} />
        <DepthAxis
          {...{ shown, colours }}
          box={face}
          depthMm={window.depthMm}
          x={face.x - 7}
          sizePx={defaults.sizePx - 1}
          stroke={{ from: face.x - 4, to: face.x, color: colours.pencil }}
          unitY={face.y - 12}
        />
        {dig.paired && <Pairs {...{ dig, plantsMm, columns, window, colours }} />}
        {dig.groups.map((group, g) => (
          <g key={g}>
            <Head {...{ layout, colours }} box={columns[g]!} name={group.case} color={styles[g]!.color}>
              {group.rowPosition === null ? [group.date] : [group.rowPosition, group.date]}
            </Head>
            <Roots box={columns[g]!} depthsMm={plantsMm[g]!} style={styles[g]!} {...{ window, colours }} />
            {fronts[g] != null && (
              <Front
                box={columns[g]!}
                mm={fronts[g]}
                intervalMm={group.middleIntervalMm}
                {...{ window, colours, shown }}
              />
            )}
            <Middle
              box={columns[g]!}
              mm={group.depthMm.median!}
              interval={group.middleIntervalMm}
              assumed={group.assumed !== null}
              color={styles[g]!.color}
              {...{ window, colours, shown }}
            />
          </g>
        ))}
        {dig.differences.map((difference, d) => (
          <Difference
            key={d}
            {...{ difference, layout, window, colours, shown }}
            box={differences[d]!}
            fromMm={meanOf(dig, difference)}
            confidence={dig.confidence}
            c={Math.max(0, caseNames.indexOf(difference.to))}
          />
        ))}
      </g>
    </SvgPicture>
  );
}

function deepestOf(dig: DigAnswer, fronts: readonly (number | null)[]): number {
  return deepestShownMm([
    ...dig.groups.flatMap(({ depthMm, middleIntervalMm }) => [depthMm.largest!, middleIntervalMm.high]),
    ...fronts.map((mm) => mm ?? 0),
    ...dig.differences.map(
      (one) => meanOf(dig, one) + (one.depthMm.interval?.high ?? one.depthMm.value ?? 0),
    ),
  ]);
}

/** Mean of the group that a difference counts from: its own day's, where there is one. */
function meanOf({ groups }: DigAnswer, { from, date }: DugDifference): number {
  const own = groups.filter((one) => one.case === from);
  return (own.find((one) => one.date === date) ?? own[0])?.depthMm.mean ?? 0;
}

interface HeadProps {
  readonly layout: DugLayout;
  readonly colours: Palette;
  readonly box: Box;
  readonly name: string;
  readonly color: string;
  readonly children: readonly string[];
}

/** What a column is of: the case, and under it where and when. */
function Head({ layout: { wide }, colours, box, name, color, children }: HeadProps) {
  const size = wide ? defaults.sizePx : 11.5;
  const line = size + 2;
  const lines = wrapped(name, box.width - 4, size).slice(0, wide ? 2 : 3);
  // A narrow column has room for one line: the day.
  const said = wide ? [children.join(", ")] : children.slice(-1);
  const bottom = box.y - defaults.plantPx - 8;
  return (
    <g text-anchor="middle" font-size={size}>
      {lines.map((text, l) => (
        <text
          key={l}
          x={box.x + box.width / 2}
          y={bottom - (said.length + lines.length - 1 - l) * line}
          fill={color}
          font-weight="700"
        >
          {text}
        </text>
      ))}
      {said.map((text) => (
        <text key={text} x={box.x + box.width / 2} y={bottom} fill={colours.pencil} font-size={size - 1}>
          {text}
        </text>
      ))}
    </g>
  );
}

interface RootsProps extends Looks {
  readonly box: Box;
  readonly depthsMm: readonly number[];
  readonly style: ReturnType<typeof caseStyle>;
}

function Roots({ box, depthsMm, style, window, colours }: RootsProps) {
  const radiusPx = depthsMm.length > 8 ? 2.9 : 3.8;
  return (
    <g fill="none" stroke-linecap="round" stroke-linejoin="round">
      {depthsMm.map((mm, p) => {
        const x = plantX(box, p, depthsMm.length);
        const tip = depthY(box, window, mm);
        const { main, sides } = pencilRoot(x, box.y, tip, p + 1);
        return (
          <g key={p} data-depth-mm={mm}>
            <path d={plantOf(x, box.y, defaults.plantPx)} stroke={colours.pencil} stroke-width="1.1" />
            <path d={main} stroke={colours.paper} stroke-width="4.5" stroke-opacity="0.8" />
            <path d={sides} stroke={style.color} stroke-width="0.9" stroke-opacity="0.8" />
            <path d={main} stroke={style.color} stroke-width="1.9" />
            <Point {...style} {...{ x, radiusPx }} y={tip} paper={colours.paper} edgePx={1.1} />
          </g>
        );
      })}
    </g>
  );
}

interface PairsProps extends Looks {
  readonly dig: DigAnswer;
  readonly plantsMm: readonly (readonly number[])[];
  readonly columns: readonly Box[];
}

/** A thin line from each plant to its neighbour. */
function Pairs({ dig: { groups }, plantsMm, columns, window, colours }: PairsProps) {
  const pairs = pairedColumns(
    groups.map(({ case: name, date }, g) => ({ case: name, date, plants: plantsMm[g]!.length })),
  );
  return (
    <g fill="none">
      {pairs.map(([left, right]) =>
        plantsMm[left]!.map((mm, p) => {
          const [a, b] = [columns[left]!, columns[right]!];
          const line = `M${plantX(a, p, plantsMm[left]!.length).toFixed(1)} ${depthY(a, window, mm).toFixed(1)}L${plantX(b, p, plantsMm[left]!.length).toFixed(1)} ${depthY(b, window, plantsMm[right]![p]!).toFixed(1)}`;
          return (
            <g key={`${left} ${p}`} data-pair={p}>
              <path d={line} stroke={colours.paper} stroke-width="2.6" stroke-opacity="0.7" />
              <path d={line} stroke={colours.ink} stroke-width="0.9" stroke-opacity="0.75" />
            </g>
          );
        }),
      )}
    </g>
  );
}

interface FrontProps extends Looks {
  readonly box: Box;
  readonly mm: number;
  /** Of the middle, whose bar the figure stands under. */
  readonly intervalMm: { readonly low: number; readonly high: number };
  readonly shown: Formatters;
}

/** The simulated front at the fitted value. */
function Front({ box, mm, intervalMm, window, colours, shown }: FrontProps) {
  const y = depthY(box, window, mm);
  const line = `M${box.x + 2} ${y.toFixed(1)}h${box.width - 4}`;
  return (
    <g data-front-mm={mm}>
      <path d={line} stroke={colours.paper} stroke-width="5" stroke-opacity="0.85" />
      <path d={line} stroke={colours.ink} stroke-width="2" stroke-dasharray="7 4" />
      <text
        x={middleX(box)}
        y={depthY(box, window, intervalMm.high) + 16}
        text-anchor="middle"
        font-size={defaults.sizePx - 1}
        stroke={colours.paper}
        stroke-width="4"
        paint-order="stroke"
      >
        {box.width > defaults.frontSaidFromPx ? "front " : ""}
        {shown.depth(mm)}
      </text>
    </g>
  );
}

interface MiddleProps extends Looks {
  readonly box: Box;
  readonly mm: number;
  readonly interval: { readonly low: number; readonly high: number };
  readonly assumed: boolean;
  readonly color: string;
  readonly shown: Formatters;
}

/** The middle plant and how well the middle is known; dashed where the spread is assumed. */
function Middle({ box, mm, interval, assumed, color, window, colours, shown }: MiddleProps) {
  const x = middleX(box);
  const [y, low, high] = [mm, interval.low, interval.high].map((depth) => depthY(box, window, depth));
  const bar = { at: x, low: low!, high: high!, capPx: 5, upright: true } as const;
  return (
    <g data-middle-mm={mm}>
      <Interval {...bar} color={colours.paper} widthPx={6} />
      <Interval {...bar} color={color} widthPx={2.4} dash={assumed ? "3 3" : undefined} />
      <path d={`M${x - 9} ${y}h18`} stroke={colours.paper} stroke-width="7" />
      <path d={`M${x - 9} ${y}h18`} stroke={color} stroke-width="4" />
      <text
        x={x}
        y={low! - 6}
        text-anchor="middle"
        font-weight="700"
        stroke={colours.paper}
        stroke-width="4"
        paint-order="stroke"
      >
        {shown.depth(mm)}
      </text>
    </g>
  );
}
