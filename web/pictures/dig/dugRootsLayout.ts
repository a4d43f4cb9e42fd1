import { inWholeSteps } from "../../../src/drawing/depths.ts";
import { clamp, type Box } from "../kit/box.ts";

/** Where the parts of a dug pit's face stand. */
export interface DugLayout {
  readonly width: number;
  readonly height: number;
  readonly wide: boolean;
  /** The face: names of the layers at its left, then a column for each group of plants. */
  readonly face: Box;
  readonly columns: readonly Box[];
  /** One for each difference, right of the face, on the same depths. */
  readonly differences: readonly Box[];
}

const wideFromPx = 620;

const sizes = {
  wide: { axis: 44, layers: 112, head: 74, depth: 400, gap: 16, difference: 128, foot: 10, right: 8 },
  narrow: { axis: 30, layers: 56, head: 84, depth: 340, gap: 8, difference: 74, foot: 10, right: 2 },
} as const;

/** @param leastColumnPx below it the drawing grows wider than its room, and is shown smaller */
export function dugLayout(width: number, groups: number, differences: number, leastColumnPx = 66): DugLayout {
  const wide = width >= wideFromPx;
  const size = wide ? sizes.wide : sizes.narrow;
  const after = differences * (size.difference + size.gap);
  const fixed = size.axis + size.layers + after + size.right;
  const column = clamp((width - fixed) / groups, leastColumnPx, 260);
  const face = {
    x: size.axis,
    y: size.head,
    width: size.layers + groups * column,
    height: size.depth,
  };
  const faceEnd = face.x + face.width;
  return {
    width: faceEnd + after + size.right,
    height: size.head + size.depth + size.foot,
    wide,
    face,
    columns: Array.from({ length: groups }, (_, g) => ({
      ...face,
      x: face.x + size.layers + g * column,
      width: column,
    })),
    differences: Array.from({ length: differences }, (_, d) => ({
      ...face,
      x: faceEnd + size.gap + d * (size.difference + size.gap),
      width: size.difference,
    })),
  };
}

/** Depth that shows all of it with some soil below, in whole hands of 3 in. */
export function deepestShownMm(depthsMm: readonly number[]): number {
  return inWholeSteps(Math.max(0, ...depthsMm) * 1.06, 76.2, 2);
}

/** Where the n-th of `count` plants stands in its column; room is left at the right for the middle and its interval. */
export function plantX({ x, width }: Box, plant: number, count: number): number {
  const room = width * 0.7;
  return x + width * 0.06 + (room * (plant + 0.5)) / count;
}

/** Where the middle of a column stands. */
export function middleX({ x, width }: Box): number {
  return x + width * 0.87;
}

/** A root as a pencil draws it: a line that wavers down to its tip, with short side roots. Always the same for the same place. */
export function pencilRoot(
  x: number,
  top: number,
  bottom: number,
  seed: number,
): { main: string; sides: string } {
  const length = Math.max(0, bottom - top);
  const joints = Math.max(3, Math.round(length / 16));
  let main = `M${px(x)} ${px(top)}`;
  let sides = "";
  for (let j = 1; j <= joints; j++) {
    const down = j / joints;
    // Its tip stands where the plant stands: the column is read by it.
    const bend = j === joints ? 0 : Math.sin(j * 1.9 + seed * 2.7) * 2.2;
    const [jx, jy] = [x + bend, top + length * down];
    main += `L${px(jx)} ${px(jy)}`;
    if (j < joints) {
      const way = (j + seed) % 2 === 0 ? 1 : -1;
      const reach = 3.5 + 3 * (1 - down);
      sides += `M${px(jx)} ${px(jy)}q${px(way * reach * 0.5)} 0.5 ${px(way * reach)} ${px(reach * 0.7)}`;
    }
  }
  return { main, sides };
}

/** Neighbours of two columns that were dug as pairs: same day, another case, as many plants. */
export function pairedColumns(
  groups: readonly { readonly case: string; readonly date: string; readonly plants: number }[],
): readonly (readonly [left: number, right: number])[] {
  return groups.flatMap((one, g) => {
    const next = groups.findIndex(
      (other, o) =>
        o > g && other.case !== one.case && other.date === one.date && other.plants === one.plants,
    );
    return next < 0 ? [] : [[g, next] as const];
  });
}

function px(value: number): string {
  return value.toFixed(1);
}
