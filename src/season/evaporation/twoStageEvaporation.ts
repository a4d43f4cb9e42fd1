/**
 * Evaporation in two stages: as fast as the weather asks until the readily evaporable water is gone, then with the square root
 * of time, because what comes up has ever more dry soil to cross.
 *
 * Worked from what the topsoil lacks, so that a run keeps no clock: what it lacks tells how long it has been drying, and rain
 * turns that back.
 *
 * Source: [Ritchie 1972] Water Resour. Res. 8:1204-1213 (two stages read in the abstract; the rest from memory). Reading the time
 * from what the topsoil lacks is ours.
 */

/** What a soil lacks where it no longer gives what the weather asks, mm: alpha^2 / 2 (D - U) falls to the potential rate there. */
const turningPointMm = (potentialMmPerDay: number, firstStageMm: number, rootTimeMm: number): number =>
  firstStageMm + (rootTimeMm * rootTimeMm) / (2 * potentialMmPerDay);

/**
 * Days that a wet soil takes until it lacks `lackingMm`.
 *
 * @param lackingMm below field capacity, mm, >= 0
 * @param potentialMmPerDay first stage, > 0
 * @param firstStageMm U, mm: readily evaporable water
 * @param rootTimeMm alpha, mm per square root of a day
 */
export function daysToLack(
  lackingMm: number,
  potentialMmPerDay: number,
  firstStageMm: number,
  rootTimeMm: number,
): number {
  const turnMm = turningPointMm(potentialMmPerDay, firstStageMm, rootTimeMm);
  if (lackingMm <= turnMm) return lackingMm / potentialMmPerDay;
  const past = (lackingMm - firstStageMm) / rootTimeMm;
  const atTurn = (turnMm - firstStageMm) / rootTimeMm;
  return turnMm / potentialMmPerDay + past * past - atTurn * atTurn;
}

/** The inverse: what a wet soil lacks after so many days, mm. */
export function lackingAfter(
  days: number,
  potentialMmPerDay: number,
  firstStageMm: number,
  rootTimeMm: number,
): number {
  const turnMm = turningPointMm(potentialMmPerDay, firstStageMm, rootTimeMm);
  const daysToTurn = turnMm / potentialMmPerDay;
  if (days <= daysToTurn) return days * potentialMmPerDay;
  const atTurn = (turnMm - firstStageMm) / rootTimeMm;
  return firstStageMm + rootTimeMm * Math.sqrt(days - daysToTurn + atTurn * atTurn);
}

/** Of a day's rain on drying soil this share lies near enough to the surface to go on the same day. [Ritchie 1972], memory. */
const freshShare = 0.8;

/**
 * What goes in one day, mm: by the time that the topsoil has been drying, and of today's rain at least 0.8, both within what the
 * weather asks.
 *
 * @param lackingMm what the topsoil lacks this morning, rain counted, mm
 * @param freshMm rain and melt that soaked in today, mm
 * @param potentialMm first-stage evaporation of the day, mm
 */
export function twoStageEvaporationMm(
  lackingMm: number,
  freshMm: number,
  potentialMm: number,
  firstStageMm: number,
  rootTimeMm: number,
): number {
  if (potentialMm <= 0) return 0;
  const turnMm = turningPointMm(potentialMm, firstStageMm, rootTimeMm);
  if (lackingMm + potentialMm <= turnMm) return potentialMm;
  const dryingMm =
    lackingMm >= turnMm
      ? secondStageMm(lackingMm, firstStageMm, rootTimeMm)
      : acrossTheTurnMm(lackingMm, potentialMm, firstStageMm, rootTimeMm);
  return Math.min(potentialMm, Math.max(dryingMm, freshShare * freshMm));
}

/** A day well within the second stage. */
function secondStageMm(lackingMm: number, firstStageMm: number, rootTimeMm: number): number {
  const rootDays = (lackingMm - firstStageMm) / rootTimeMm;
  return firstStageMm + rootTimeMm * Math.sqrt(rootDays * rootDays + 1) - lackingMm;
}

/** A day that begins in the first stage and ends in the second. */
function acrossTheTurnMm(
  lackingMm: number,
  potentialMm: number,
  firstStageMm: number,
  rootTimeMm: number,
): number {
  const days = daysToLack(lackingMm, potentialMm, firstStageMm, rootTimeMm);
  return lackingAfter(days + 1, potentialMm, firstStageMm, rootTimeMm) - lackingMm;
}
