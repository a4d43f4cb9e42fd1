/** How much is run where nothing is asked. */

/** About half a minute on one processor for seasons with a year of fallow. Ours, measured. */
export const usualBudget = 40_000;

/** Of many years so many are run, evenly chosen from dry to wet. Ours: more settings tell more than more years. */
export const usualSensitivityYears = 6;
const fewestYears = 2;
/** With more cases than this there are fewer years, so that the budget still makes a sample. */
const casesOfAllYears = 3;

export function yearsFor(cases: number): number {
  const affordable = Math.floor((usualSensitivityYears * casesOfAllYears) / cases);
  return Math.min(usualSensitivityYears, Math.max(fewestYears, affordable));
}
