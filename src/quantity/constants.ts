/** What the units of the trade are worth: exact by definition. Written once, here. */

export const mmPerInch = 25.4;
export const mPerFoot = 0.3048;
export const kgPerPound = 0.45359237;
/** International acre; the survey acre differs by 4 in a million. */
export const m2PerAcre = 4046.8564224;
export const haPerAcre = 0.40468564224;
