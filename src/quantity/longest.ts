/** A quantity, a date or an amount of money has no more letters than this: longer texts are refused before any pattern sees them. Ours. */
export const longestQuantity = 200;

/** How to mend one that has more. */
export const shortenIt = `shorten it to at most ${longestQuantity} letters`;

export function isTooLong(text: unknown): boolean {
  return typeof text === "string" && text.length > longestQuantity;
}
