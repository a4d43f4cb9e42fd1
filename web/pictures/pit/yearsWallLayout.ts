import type { CaseOfYear, YearOnWall } from "../../worker/protocol.ts";
import type { Box } from "../kit/box.ts";
import { colourTable, sliceAt, type Pixels } from "./waterHeatmap.ts";

/** Where a year's two columns stand: the soil on the morning of sowing, and on the evening of harvest. */
export interface YearPlace {
  readonly year: YearOnWall;
  /** Both columns together. */
  readonly box: Box;
  readonly sowingX: number;
  readonly harvestX: number;
}

export interface YearsWallLayout {
  readonly width: number;
  readonly height: number;
  readonly soil: Box;
  readonly rain: Box;
  readonly places: readonly YearPlace[];
  readonly depthMm: number;
}

const wideFrom = 620;
/** Between two years, of a year's room. */
const between = 0.22;

/** All years of a walk side by side, down to where water or roots still change. */
export function yearsWallLayout(years: readonly YearOnWall[], width: number): YearsWallLayout {
  const isWide = width >= wideFrom;
  const left = isWide ? 48 : 34;
  const soil: Box = { x: left, y: isWide ? 112 : 104, width: width - left - 2, height: isWide ? 300 : 250 };
  const each = soil.width / Math.max(1, years.length);
  const column = Math.min(92, each * (1 - between));
  return {
    width,
    height: soil.y + soil.height + 74,
    soil,
    rain: { x: soil.x, y: 26, width: soil.width, height: 46 },
    depthMm: depthTold(years),
    places: years.map((year, i) => {
      const x = soil.x + (i + 0.5) * each - column / 2;
      return {
        year,
        box: { x, y: soil.y, width: column, height: soil.height },
        sowingX: x + column / 4,
        harvestX: x + (3 * column) / 4,
      };
    }),
  };
}

/** Changes of less than this share of what a slice holds are not looked for below the roots. */
const telling = 0.05;
const belowMm = 150;

function depthTold(years: readonly YearOnWall[]): number {
  let deepest = 0;
  let bottom = 0;
  for (const { cases } of years)
    for (const one of cases) {
      deepest = Math.max(deepest, one.frontMm);
      one.sliceTopMm.forEach((topMm, j) => {
        const end = topMm + one.sliceThicknessMm[j]!;
        bottom = Math.max(bottom, end);
        if (Math.abs(one.atSowingMm[j]! - one.atHarvestMm[j]!) > telling * one.capacityMm[j]!)
          deepest = Math.max(deepest, end);
      });
    }
  return Math.min(bottom, deepest + belowMm);
}

/** Two pixels across, at sowing and at harvest; a row a depth. */
export function yearPixels(
  one: CaseOfYear,
  depthMm: number,
  scale: readonly (readonly [number, string])[],
  rows = 120,
): Pixels {
  const rgba = new Uint8ClampedArray(2 * rows * 4);
  const table = colourTable(scale);
  for (let row = 0; row < rows; row++) {
    const slice = sliceAt(one, ((row + 0.5) / rows) * depthMm);
    if (slice === null) break;
    [one.atSowingMm, one.atHarvestMm].forEach((water, column) => {
      const colour = 3 * Math.round(255 * shareOf(water[slice]!, one.capacityMm[slice]!));
      const at = 4 * (2 * row + column);
      for (let c = 0; c < 3; c++) rgba[at + c] = table[colour + c]!;
      rgba[at + 3] = 255;
    });
  }
  return { width: 2, height: rows, rgba };
}

function shareOf(mm: number, capacityMm: number): number {
  return capacityMm <= 0 ? 0 : Math.min(1, Math.max(0, mm / capacityMm));
}

export function storedMm(water: Float32Array): number {
  return water.reduce((sum, mm) => sum + mm, 0);
}
