/** Filled up to this length unless asked otherwise. Our choice: longer gaps hide storms and spells of weather. */
export const usualMaxGapDays = 5;

/** What the longest gap that is filled may be set to, whole days. */
export const maxGapDaysWithin = [0, 366] as const;

export function isMaxGapDays(found: unknown): found is number {
  const [from, to] = maxGapDaysWithin;
  return typeof found === "number" && Number.isInteger(found) && found >= from && found <= to;
}
