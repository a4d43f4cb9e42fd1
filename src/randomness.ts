import { randomGamma, randomNormal } from "d3-random";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";

/**
 * Seeded draws. Every use names its own stream, so a draw added to one never shifts another.
 * The same seed and name give the same numbers on one runtime; runtimes may differ in the last bit,
 * because their `log` and `pow` do.
 */
export interface Draws {
  /** 0 <= draw < 1. */
  uniform(): number;
  /** Mean 0, standard deviation 1. */
  normal(): number;
  /** Draws of mean `shape * scale`, variance `shape * scale^2`; both > 0, in the unit of `scale`. To be made once, for many draws. */
  gamma(shape: number, scale: number): () => number;
  /** Between `low` and `high`, most often near `mode`; `low` where the three are one number. */
  triangle(low: number, mode: number, high: number): number;
}

/**
 * A stream of draws of its own.
 *
 * @param seed any number; near seeds give unrelated streams
 * @param name what the draws are for, e.g. "yield slope"
 */
export function stream(seed: number, ...name: readonly (string | number)[]): Draws {
  const generator = xoroshiro128plusFromState(stateFor([seed, ...name].join("\n")));
  const uniform = () => uniformFloat64(generator);
  const normal = randomNormal.source(uniform)(0, 1);
  return {
    uniform,
    normal,
    gamma: randomGamma.source(uniform),
    triangle: (low, mode, high) => triangleAt(uniform(), low, mode, high),
  };
}

/** Quantile of the triangular distribution at `share` (0 to 1). */
export function triangleAt(share: number, low: number, mode: number, high: number): number {
  const width = high - low;
  if (width <= 0) return low;
  const below = (mode - low) / width;
  return share < below
    ? low + Math.sqrt(share * width * (mode - low))
    : high - Math.sqrt((1 - share) * width * (high - mode));
}

/**
 * Four well-mixed words of 32 bits from a text. Needed because the generator's first draws follow a small
 * seed almost linearly. FNV-1a, then the finishing steps of MurmurHash3 (both public domain; memory).
 */
function stateFor(text: string): number[] {
  return [0x811c9dc5, 0x9e3779b9, 0x85ebca6b, 0xc2b2ae35].map((start) => {
    let word = start;
    for (let i = 0; i < text.length; i++) word = Math.imul(word ^ text.charCodeAt(i), 0x01000193);
    word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    return word ^ (word >>> 16);
  });
}
