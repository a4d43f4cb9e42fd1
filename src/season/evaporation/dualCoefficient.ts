/**
 * The named alternative: evaporation by FAO-56's dual coefficient. It falls in a straight line once the readily evaporable
 * water is gone, so the topsoil is empty within a week or so.
 * Source: [Allen et al. 1998, FAO-56] ch. 7 (read); residue ch. 10 and 11 (read).
 */

/** Kr, 0 to 1: how freely the topsoil gives water. `depletionMm` is De at the start of the day. FAO-56 eq. 74. */
export function evaporationReduction(
  depletionMm: number,
  readilyEvaporableMm: number,
  totalEvaporableMm: number,
): number {
  if (depletionMm <= readilyEvaporableMm) return 1;
  if (depletionMm >= totalEvaporableMm) return 0;
  return (totalEvaporableMm - depletionMm) / (totalEvaporableMm - readilyEvaporableMm);
}

/** Ke, >= 0: limited by what the crop leaves of Kcmax, and by the exposed wetted ground. FAO-56 eq. 71. */
export function evaporationCoefficient(
  reduction: number,
  kcMax: number,
  kcb: number,
  exposedFraction: number,
): number {
  const ke = Math.min(reduction * (kcMax - kcb), exposedFraction * kcMax);
  return ke > 0 ? ke : 0;
}

/** With a crop: residue takes 5 % of the day's evaporation for every 10 % of the surface it covers. FAO-56 ch. 10, p. 197. */
export function residueFactorInCrop(residueCover: number): number {
  return 1 - 0.5 * residueCover;
}

/** In fallow: residue takes 5 % of the evaporable water for every 10 % of the surface. FAO-56 ch. 11, p. 208. */
export function totalEvaporableUnderResidue(totalEvaporableMm: number, residueCover: number): number {
  return totalEvaporableMm * (1 - 0.5 * residueCover);
}
