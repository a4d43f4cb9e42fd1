/**
 * What dead residue leaves of the first stage of evaporation: an exponential of its mass, which follows from the cover.
 * It slows the first stage and lengthens it; in a long drying the totals come out nearly equal ([Bond & Willis 1969], read), so
 * it acts on the rate and not on what can evaporate. Shade of crop and residue multiply ([Adams et al. 1976], read).
 */

/** Cover = 1 - exp(-k x mass), t/ha of wheat straw: [Gregory 1982] (form, memory); k fitted to four published pairs, 0.41 to 0.68. */
const coverPerTHa = 0.5;

/** No cover tells of more than this, t/ha: the most straw that trials laid down covers 99.75 % ([Unger 1978], read). */
const mostTPerHa = 12;

/** Straw that covers so much of the ground, t/ha, 0 to 12. */
export function massUnderCover(cover: number): number {
  return cover < 1 ? Math.min(mostTPerHa, -Math.log(1 - cover) / coverPerTHa) : mostTPerHa;
}

/**
 * Share of the ground that lies under so much straw, 0 to 1.
 *
 * @example coverOfMass(3) // 0.78
 */
export function coverOfMass(massTPerHa: number): number {
  return 1 - Math.exp(-coverPerTHa * massTPerHa);
}

/** Share left = exp(-k x mass): 0.22 per t/ha as later works cite [Adams et al. 1976] (memory, unsure). */
const firstStagePerTHa = 0.22;

/**
 * Share left under full cover at least: 0.35 to 0.5 [Klocke et al. 2009]; a full mulch of sorghum stover left 0.28 on its first day
 * [Unger 1995] (both read).
 */
const leastShare = 0.35;

/**
 * Share of the first stage that is left under residue, 0.35 to 1.
 *
 * @param cover share of the ground under it, 0 to 1
 * @example firstStageUnderResidue(0.5) // 0.74
 */
export function firstStageUnderResidue(cover: number): number {
  const left = (1 - cover) ** (firstStagePerTHa / coverPerTHa);
  return left > leastShare ? left : leastShare;
}
