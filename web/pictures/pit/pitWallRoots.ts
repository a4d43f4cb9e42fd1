import type { Box } from "../kit/box.ts";
import { fraction, px } from "../kit/handDrawn.ts";

/** The root system of the pit wall. */

export interface Root {
  readonly path: string;
  readonly isMain: boolean;
}

/** Where the plant stands: right of what is written on the layers, if there is room. */
export function crownX({ x, width }: Box): number {
  return x + width * (width > 160 ? 0.68 : 0.55);
}

/** Roots from the crown down to `bottom`: drawn whole, and shown as far as the front has come. */
export function rootsOf(box: Box, top: number, bottom: number): Root[] {
  const { width } = box;
  const crown = crownX(box);
  const mains = width > 160 ? 5 : 3;
  const roots: Root[] = [];
  for (let m = 0; m < mains; m++) {
    const side = (m / (mains - 1) - 0.5) * 2;
    const reach = side * width * 0.27;
    const end = top + (bottom - top) * (1 - 0.18 * Math.abs(side));
    let path = `M${px(crown + side * 2)} ${px(top)}`;
    const joints = 26;
    for (let j = 1; j <= joints; j++) {
      const down = j / joints;
      const bend = Math.sin(j * 1.7 + m * 2.1) * 3.2;
      const jx = crown + reach * (1 - (1 - down) ** 2.4) + bend;
      const jy = top + (end - top) * down;
      path += `L${px(jx)} ${px(jy)}`;
      const length = 9 + 8 * fraction(j * 0.618 + m * 0.37);
      const way = (j + m) % 2 === 0 ? 1 : -1;
      roots.push({
        path: `M${px(jx)} ${px(jy)}q${px(way * length * 0.5)} 1 ${px(way * length)} ${px(length * 0.55)}`,
        isMain: false,
      });
    }
    roots.push({ path, isMain: true });
  }
  return roots;
}
