import tables from "../../data-reference/curve-numbers.json" with { type: "json" };

export type HydrologicGroup = "A" | "B" | "C" | "D";
export type GroundCover =
  | "fallow"
  | "row crops"
  | "small grain"
  | "close-seeded legumes"
  | "pasture or range";
export type Condition = "poor" | "fair" | "good";

/** Cover, treatment and condition that the handbook's table knows. */
export interface CurveNumberRow {
  readonly cover: string;
  readonly treatment: string;
  readonly condition: string | null;
  readonly A: number;
  readonly B: number;
  readonly C: number;
  readonly D: number;
}

/** Source: [NRCS 1986, TR-55] Table 2-2b (read); pasture Table 2-2c (memory). */
export const curveNumberRows: readonly CurveNumberRow[] = tables.rows;

/**
 * Curve number at average wetness; undefined when the table has no such row.
 * `condition` is ignored for bare fallow, which has none; only pasture has a fair one.
 */
export function curveNumberFor(
  cover: GroundCover,
  treatment: string,
  condition: Condition,
  group: HydrologicGroup,
): number | undefined {
  const row = curveNumberRows.find(
    (r) =>
      r.cover === cover && r.treatment === treatment && (r.condition === null || r.condition === condition),
  );
  return row?.[group];
}

/**
 * Residue below the first leaves the handbook's residue rows out; from the second on its condition is good.
 * Source: [NRCS 1986, TR-55] Table 2-2b, notes (read).
 */
export const residueCounts = tables.residue.countsFrom;
export const residueGood = tables.residue.goodFrom;

/** Above the first the condition of pasture is good, from the second on fair; see `pastureCondition`. */
export const pastureGoodAbove = tables.pasture.goodAbove;
export const pastureFairFrom = tables.pasture.fairFrom;

/** Condition of pasture where neither it nor its cover is stated. */
export const usualPastureCondition = "fair";

/**
 * Hydrologic condition of pasture by the share of the ground that live and dead grass cover.
 * Source: [NRCS 1986, TR-55] Table 2-2c, notes (memory).
 */
export function pastureCondition(groundCover: number): Condition {
  if (groundCover > pastureGoodAbove) return "good";
  return groundCover >= pastureFairFrom ? "fair" : "poor";
}

/** Share of the ground covered in the middle of a class of condition: its limits from Table 2-2c (memory), the middle is ours. */
export function pastureGroundCover(condition: Condition): number {
  return tables.pasture.groundCover[condition];
}

/**
 * Curve number of fallow under residue: the bare number lowered by up to 10 % of itself, in proportion to the ground covered.
 * Source: [Steichen 1983] western Kansas fallow under a rain simulator, no-till to clean (abstract, read); in proportion is ours.
 */
export function fallowCurveNumber(bare: number, residueCover: number): number {
  return bare * (1 - 0.1 * residueCover);
}

/**
 * Curve numbers of the same ground when dry and when wet.
 *
 * @param average at average wetness, 30 to 100; held within that range
 * Source: [NRCS 2004, NEH 630] Table 10-1, straight lines between its rows (partly read, see the table's mark). The usual
 * fitted formula is up to 1.5 off for wet ground, so the table is used.
 */
export function dryAndWetCurveNumber(average: number): { readonly dry: number; readonly wet: number } {
  const { average: at, dry, wet } = tables.wetness;
  const held = Math.min(100, Math.max(30, average));
  let i = 1;
  while (i < at.length - 1 && held < at[i]!) i++;
  const share = (held - at[i]!) / (at[i - 1]! - at[i]!);
  const between = (column: readonly number[]) => column[i]! + share * (column[i - 1]! - column[i]!);
  return { dry: between(dry), wet: between(wet) };
}

/**
 * Today's curve number, moved with the water of the topsoil: wet while little is missing from the evaporating layer,
 * dry once most of what evaporation can take is gone, straight lines through the average between.
 *
 * @param depletionMm missing to field capacity in the evaporating layer, mm (FAO-56 De)
 * @param readilyEvaporableMm REW, mm
 * @param totalEvaporableMm TEW, mm, > 0
 * Source: [Allen et al. 2007] water requirements chapter, bounds 0.5 REW and 0.7 REW + 0.3 TEW (memory); passing through the
 * average half-way is ours, since the table's average is not the middle of dry and wet.
 */
export function movedCurveNumber(
  dry: number,
  average: number,
  wet: number,
  depletionMm: number,
  readilyEvaporableMm: number,
  totalEvaporableMm: number,
): number {
  const wetUpTo = 0.5 * readilyEvaporableMm;
  const dryFrom = 0.7 * readilyEvaporableMm + 0.3 * totalEvaporableMm;
  if (depletionMm <= wetUpTo) return wet;
  if (depletionMm >= dryFrom) return dry;
  const way = (depletionMm - wetUpTo) / (dryFrom - wetUpTo);
  return way < 0.5 ? wet + 2 * way * (average - wet) : average + (2 * way - 1) * (dry - average);
}
