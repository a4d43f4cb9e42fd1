/** How much is run where nothing is asked. */

/** About half a minute on one processor for seasons with a year of fallow. Ours, measured. */
export const usualBudget = 40_000;

/** Of many years so many are run, evenly chosen from dry to wet. Ours: more settings tell more than more years. */
export const usualSensitivityYears = 6;
