/** Initial, development, mid-season, late season; in degree days or days, whichever the clock counts. */
export type StageLengths = readonly [number, number, number, number];
