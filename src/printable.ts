/** Control characters, line ends, and marks that turn the direction of writing: none of them is anything to read. */
const unreadable =
  // oxlint-disable-next-line no-control-regex
  /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/**
 * A text from a file as it may stand on a terminal: what would move the cursor, colour or break the line becomes a space.
 * @example printable("pan\u001b[31m") // "pan [31m"
 */
export function printable(text: string): string {
  return text.replace(unreadable, " ");
}
