import { useMemo } from "preact/hooks";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { lettersOf } from "./cropLetters.ts";
import type { YearOnWall } from "../../worker/protocol.ts";
import { depthY } from "../kit/box.ts";
import { DepthAxis } from "../kit/depthAxis.tsx";
import type { PictureTable } from "../kit/frame.tsx";
import { Point } from "../kit/marks.tsx";
import { caseStyle, fontFamily, palette, type Palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { pixelsUrl } from "./waterHeatmap.ts";
import {
  storedMm,
  yearPixels,
  yearsWallLayout,
  type YearPlace,
  type YearsWallLayout,
} from "./yearsWallLayout.ts";

export const defaults = {
  name: "Years in a row on the pit wall: water at sowing and at harvest, and how deep the roots came",
  fileName: "years-on-the-pit-wall",
} as const;

export function yearsWallTable(
  years: readonly YearOnWall[],
  names: readonly string[],
  shown: Formatters,
): PictureTable {
  return {
    head: [
      "Year",
      "Crop",
      "Case",
      `Rain in fallow, ${shown.length}`,
      `In season, ${shown.length}`,
      `At sowing, ${shown.length}`,
      `At harvest, ${shown.length}`,
      `Root depth, ${shown.length}`,
      `Taken up, ${shown.length}`,
    ],
    rows: years.flatMap(({ sinceChange, crop, fallowRainMm, seasonRainMm, cases }) =>
      cases.map((one, c) => [
        String(sinceChange),
        crop,
        names[c] ?? "",
        shown.water(fallowRainMm),
        shown.water(seasonRainMm),
        shown.water(storedMm(one.atSowingMm)),
        shown.water(storedMm(one.atHarvestMm)),
        shown.depth(one.frontMm),
        shown.water(one.takenUpMm),
      ]),
    ),
  };
}

interface YearsWallProps {
  readonly years: readonly YearOnWall[];
  readonly names: readonly string[];
  /** Whose water. */
  readonly caseIndex: number;
  readonly width: number;
  readonly shown: Formatters;
  readonly faint: boolean;
}

/** One chain, year by year: the soil at sowing and at harvest side by side, with every case's roots on it, and the rain above. */
export function YearsWall({ years, names, caseIndex, width, shown, faint }: YearsWallProps) {
  const colours = palette();
  const layout = useMemo(() => yearsWallLayout(years, width), [years, width]);
  const { soil, depthMm, height } = layout;
  const sizePx = width < 620 ? 11 : 12.5;
  return (
    <SvgPicture
      name={defaults.name}
      width={width}
      height={height}
      table={yearsWallTable(years, names, shown)}
      fileName={defaults.fileName}
      faint={faint}
      caption={`Each pair of columns is a crop: left the plant-available water of “${names[caseIndex] ?? ""}” at sowing, right at harvest, dry pale and full dark. Marks: where the roots of each case ended. Above: rain in the fallow before, and in the season.`}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.pencil}>
        <DepthAxis
          box={soil}
          depthMm={depthMm}
          x={soil.x - 8}
          sizePx={sizePx}
          unitY={soil.y - 8}
          stroke={{ from: soil.x - 6, to: soil.x, color: colours.pencil }}
          {...{ shown, colours }}
        />
        <Rain {...{ layout, colours, shown, sizePx }} />
        {layout.places.map((place, i) => (
          <Year key={i} {...{ place, caseIndex, layout, colours, sizePx }} />
        ))}
        <path
          d={`M${soil.x - 4} ${soil.y}H${soil.x + soil.width}`}
          stroke={colours.ink}
          stroke-width="2"
          fill="none"
        />
        <text x={soil.x} y={height - 26}>
          year since the change
        </text>
        <text x={soil.x} y={height - 8}>
          {cropKey(years)}
        </text>
      </g>
    </SvgPicture>
  );
}

function cropKey(years: readonly YearOnWall[]): string {
  const letters = lettersOf(years.map(({ crop }) => crop));
  return [...letters].map(([crop, letter]) => `${letter} ${crop}`).join(", ");
}

interface PartProps {
  readonly layout: YearsWallLayout;
  readonly colours: Palette;
  readonly sizePx: number;
}

function Year({
  place: { year, box, sowingX, harvestX },
  caseIndex,
  layout,
  colours,
  sizePx,
}: PartProps & { readonly place: YearPlace; readonly caseIndex: number }) {
  const { depthMm, soil, places } = layout;
  const one = year.cases[caseIndex]!;
  const url = useMemo(() => pixelsUrl(yearPixels(one, depthMm, colours.water)), [one, depthMm, colours]);
  const bottom = soil.y + soil.height;
  const isSmall = box.width < 46;
  return (
    <g text-anchor="middle">
      <image {...box} href={url} preserveAspectRatio="none" image-rendering="pixelated" />
      <rect {...box} fill="none" stroke={colours.pencil} stroke-width="0.8" />
      <path
        d={`M${(sowingX + harvestX) / 2} ${box.y}V${bottom}`}
        stroke={colours.paper}
        stroke-width="1.5"
        fill="none"
      />
      {year.cases.map(({ frontMm }, c) => {
        const style = caseStyle(c, colours);
        const y = depthY(soil, { depthMm }, frontMm);
        return (
          <g key={c}>
            <path d={`M${box.x} ${y.toFixed(1)}h${box.width}`} stroke={colours.paper} stroke-width="4" />
            <path d={`M${box.x} ${y.toFixed(1)}h${box.width}`} stroke={style.color} stroke-width="2" />
            <Point
              {...style}
              x={harvestX}
              y={y}
              paper={colours.paper}
              radiusPx={isSmall ? 3.5 : 5}
              edgePx={1.2}
            />
          </g>
        );
      })}
      {!isSmall && (
        <g font-size={0.88 * sizePx}>
          <text x={sowingX} y={bottom + 14}>
            sown
          </text>
          <text x={harvestX} y={bottom + 14}>
            cut
          </text>
        </g>
      )}
      <text x={box.x + box.width / 2} y={bottom + (isSmall ? 16 : 32)} fill={colours.ink} font-weight="600">
        {year.sinceChange} {lettersOf(places.map((other) => other.year.crop)).get(year.crop)}
      </text>
    </g>
  );
}

function Rain({ layout, colours, shown, sizePx }: PartProps & { readonly shown: Formatters }) {
  const { rain, places } = layout;
  const most = Math.max(1, ...places.flatMap(({ year }) => [year.fallowRainMm, year.seasonRainMm]));
  const bottom = rain.y + rain.height;
  return (
    <g text-anchor="middle">
      <text x={0} y={14} text-anchor="start">
        Rain, {shown.length}: in fallow, in season
      </text>
      {places.map(({ year, box, sowingX, harvestX }, i) =>
        [
          { mm: year.fallowRainMm, x: sowingX, opacity: 0.5 },
          { mm: year.seasonRainMm, x: harvestX, opacity: 1 },
        ].map(({ mm, x, opacity }) => {
          const px = (rain.height * mm) / most;
          return (
            <g key={`${i} ${x}`}>
              <rect
                x={x - box.width / 6}
                y={bottom - px}
                width={box.width / 3}
                height={px}
                fill={colours.rain}
                fill-opacity={opacity}
              />
              {box.width >= 44 && (
                <text x={x} y={bottom + sizePx} font-size={0.88 * sizePx}>
                  {shown.total(mm)}
                </text>
              )}
            </g>
          );
        }),
      )}
    </g>
  );
}
