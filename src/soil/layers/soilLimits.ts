/** The largest values that are read, as they are said too, round in both systems. Judgement of ours. */

/** Lower edge of the soil. */
export const deepestSoil = { mm: 10_000, us: "32 ft", metric: "10 m" } as const;

/** A penetrometer reading. */
export const hardestReading = { MPa: 20, us: "2900 psi", metric: "20 MPa" } as const;
