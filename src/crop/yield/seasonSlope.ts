/** A slope of a yield line, kg/ha per mm: its ends and what is most likely. */
export interface Slope {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/**
 * What a mm of stored water is worth in dry and in wet seasons, where that is published. A line alone gives a full profile in a
 * wet season all of its slope; trials there saw little of it.
 */
export interface SeasonSlopes {
  /** Season rain up to which the dry slope holds, mm. */
  readonly dryRainMm: number;
  /** Season rain from which the wet slope holds, mm; > `dryRainMm`. */
  readonly wetRainMm: number;
  readonly dry: Slope;
  readonly wet: Slope;
  /** Stored water that a crop ordinarily draws: up to season rain and this, the line's own slope holds. */
  readonly ordinaryDrawMm: number;
  readonly source: string;
}

/** Where a drawn slope lies: -1 at the low end, 0 in the middle, 1 at the high end. */
export function positionOf(drawn: number, { low, middle, high }: Slope): number {
  const end = drawn < middle ? low : high;
  return end === middle ? 0 : (drawn - middle) / Math.abs(end - middle);
}

/** The slope at a position of -1 to 1. */
export function slopeAt(position: number, { low, middle, high }: Slope): number {
  return middle + position * (position < 0 ? middle - low : high - middle);
}

/**
 * The slope that a season's own rain picks, for water beyond the ordinary: dry, wet, and a straight line of rain between, so
 * that no mm of rain makes the yield jump.
 *
 * @param position of the run's draw, -1 to 1, the same for dry and wet
 * @returns kg/ha per mm, >= 0
 */
export function seasonSlope(
  { dry, wet, dryRainMm, wetRainMm }: SeasonSlopes,
  position: number,
  seasonRainMm: number,
): number {
  const wetness = Math.min(1, Math.max(0, (seasonRainMm - dryRainMm) / (wetRainMm - dryRainMm)));
  return (1 - wetness) * slopeAt(position, dry) + wetness * slopeAt(position, wet);
}
