/**
 * A root system drawn as with a pencil: it grows with the simulated front and runs sideways where the front is slow. Its shape
 * is to be looked at, not measured; only how far down it has come is the model's.
 */

export const defaults = {
  stepPx: 5,
  /** Layers that leave less of the pace turn roots. */
  turnBelow: 0.9,
  sideEveryPx: 15,
  leastPace: 0.05,
} as const;

/** Strokes of one thickness, in the order in which they appear: any front shows the beginning of `d`. */
export interface Strokes {
  readonly d: string;
  /** Where each stroke ends in `d`. */
  readonly ends: readonly number[];
  /** Depth of the front at which each appears, px below the ground, rising. */
  readonly atPx: readonly number[];
}

/** From the thickest to the finest. */
export type RootSystem = readonly [Strokes, Strokes, Strokes, Strokes];

export interface RootRoom {
  readonly width: number;
  /** Of the soil that is drawn. */
  readonly height: number;
  /** Where the plant stands, from the left. */
  readonly crown: number;
}

interface Stroke {
  readonly atPx: number;
  readonly path: string;
}

/**
 * The whole system, down to the bottom of the drawing; ground at 0.
 *
 * @param paceAt share of its pace that the front keeps at a depth, px below the ground, 0 to 1
 */
export function rootSystemOf(room: RootRoom, paceAt: (px: number) => number): RootSystem {
  const bins: [Stroke[], Stroke[], Stroke[], Stroke[]] = [[], [], [], []];
  const axes = room.width > 220 ? 9 : 7;
  const middle = (axes - 1) / 2;
  for (let axis = 0; axis < axes; axis++) growAxis(axis, (axis - middle) / middle, room, paceAt, bins);
  return [inOrder(bins[0]), inOrder(bins[1]), inOrder(bins[2]), inOrder(bins[3])];
}

/** What is there when the front has come so far. */
export function strokesTo({ d, ends, atPx }: Strokes, frontPx: number): string {
  let [low, high] = [0, atPx.length];
  while (low < high) {
    const half = (low + high) >> 1;
    if (atPx[half]! <= frontPx) low = half + 1;
    else high = half;
  }
  return low === 0 ? "" : d.slice(0, ends[low - 1]);
}

/** One main root, from the crown down; the middle one's tip is the front, the others follow it. */
function growAxis(
  axis: number,
  side: number,
  { width, height, crown }: RootRoom,
  paceAt: (px: number) => number,
  [thick, main, sideRoots, fine]: [Stroke[], Stroke[], Stroke[], Stroke[]],
): void {
  const { stepPx, turnBelow, sideEveryPx, leastPace } = defaults;
  const share = side === 0 ? 1 : 0.97 - 0.26 * Math.abs(side) - 0.08 * chance(axis, 1);
  const bendPx = height * 0.2;
  const reach = Math.max(crown, width - crown) * 0.78;
  let way = side === 0 ? (chance(axis, 2) < 0.5 ? -1 : 1) : Math.sign(side);
  let [x, y] = [crown + side * 5, 0];
  let sinceSide = 0;
  let wasSlow = false;
  for (let n = 1; y < height * share; n++) {
    const pace = Math.max(leastPace, paceAt(y + stepPx / 2));
    const isSlow = pace < turnBelow;
    // At a dense layer's top some go no deeper: the fewer get in, the less of the pace is left.
    if (isSlow && !wasSlow && side !== 0 && chance(axis, 3) > pace + 0.1) {
      runAlong(axis, x, y, way, { width, share, pace }, [main, sideRoots, fine]);
      return;
    }
    wasSlow = isSlow;
    if (isSlow && chance(n, axis) < 0.1) way = -way;
    const drift = isSlow ? way * stepPx * 1.5 * ((1 - pace) / (pace + 0.2)) : 0;
    const spread = ((side * reach) / bendPx) * Math.exp(-y / bendPx) * stepPx;
    const bend = Math.sin(y * 0.085 + axis * 2.1) * 0.9 + Math.sin(y * 0.21 + axis * 4.3) * 0.7;
    let nextX = x + spread + drift + bend;
    if (nextX < 8 || nextX > width - 8) {
      way = nextX < 8 ? 1 : -1;
      nextX = x + Math.abs(bend) * way;
    }
    const nextY = y + stepPx;
    const stroke = { atPx: nextY / share, path: `M${px(x)} ${px(y)}L${px(nextX)} ${px(nextY)}` };
    (nextY < height * 0.16 ? thick : main).push(stroke);
    sinceSide += Math.hypot(nextX - x, stepPx);
    while (sinceSide > sideEveryPx) {
      sinceSide -= sideEveryPx;
      growSide(n * 7 + axis, nextX, nextY, stroke.atPx, pace, 1 - (0.5 * nextY) / height, [sideRoots, fine]);
    }
    [x, y] = [nextX, nextY];
  }
}

/** Sideways on top of a dense layer, at the pace of open soil while the front below is slow. */
function runAlong(
  axis: number,
  fromX: number,
  fromY: number,
  way: number,
  { width, share, pace }: { readonly width: number; readonly share: number; readonly pace: number },
  [main, sideRoots, fine]: [Stroke[], Stroke[], Stroke[]],
): void {
  const { stepPx } = defaults;
  const length = width * (0.2 + 0.25 * chance(axis, 5));
  let [x, y] = [fromX, fromY];
  let turn = way;
  for (let gone = 0, n = 1; gone < length; gone += stepPx, n++) {
    if (x + turn * stepPx < 6 || x + turn * stepPx > width - 6) turn = -turn;
    const nextX = x + turn * stepPx;
    const nextY = fromY + Math.sin(n * 0.8 + axis) * 1.5 + Math.min(3, n * 0.4);
    const atPx = fromY / share + (gone + stepPx) * pace;
    main.push({ atPx, path: `M${px(x)} ${px(y)}L${px(nextX)} ${px(nextY)}` });
    if (n % 3 === 0) growSide(n * 5 + axis, nextX, nextY, atPx, pace, 0.6, [sideRoots, fine]);
    [x, y] = [nextX, nextY];
  }
}

/** A branch of a main root, with hairs, which comes a little after the root it stands on. */
function growSide(
  seed: number,
  fromX: number,
  fromY: number,
  afterPx: number,
  pace: number,
  size: number,
  [sideRoots, fine]: [Stroke[], Stroke[]],
): void {
  const way = chance(seed, 7) < 0.5 ? -1 : 1;
  const pieces = 2 + Math.round(3 * chance(seed, 8) * size);
  // In dense earth the branches are short.
  const piecePx = 7 * size * (pace < defaults.turnBelow ? 0.55 + 0.45 * pace : 1);
  let [x, y] = [fromX, fromY];
  let angle = 0.15 + 0.5 * chance(seed, 9);
  for (let n = 1; n <= pieces; n++) {
    const nextX = x + way * piecePx * Math.cos(angle);
    const nextY = y + piecePx * Math.sin(angle);
    const atPx = Math.max(afterPx + (3 + n * 5) * pace, nextY);
    sideRoots.push({ atPx, path: `M${px(x)} ${px(y)}L${px(nextX)} ${px(nextY)}` });
    if (n % 2 === 1) {
      const hair = n % 4 === 1 ? 1 : -1;
      fine.push({
        atPx: Math.max(atPx + 6 * pace, nextY + 4),
        path: `M${px(nextX)} ${px(nextY)}l${px(way * 2.5)} ${px(hair * 3.6)}`,
      });
    }
    angle += 0.16 + 0.18 * chance(seed + n, 10);
    [x, y] = [nextX, nextY];
  }
}

function inOrder(strokes: Stroke[]): Strokes {
  strokes.sort((a, b) => a.atPx - b.atPx);
  let length = 0;
  return {
    d: strokes.map(({ path }) => path).join(""),
    ends: strokes.map(({ path }) => (length += path.length)),
    atPx: strokes.map(({ atPx }) => atPx),
  };
}

/** 0 to 1, the same for the same numbers on every machine. */
function chance(n: number, salt: number): number {
  let h = Math.imul((n + 1) ^ (salt * 0x9e3779b1), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32;
}

function px(value: number): string {
  return value.toFixed(1);
}
