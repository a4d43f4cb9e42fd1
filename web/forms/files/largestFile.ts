/** Larger than any station's record; reading it would take the phone's memory. */
export const largestFile = { bytes: 60_000_000, says: "at most 60 MB" } as const;
