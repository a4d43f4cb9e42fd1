/** Where a value comes from, in a reader's words: "read" and "memory" are the short marks of files and reports. */

const marks: Readonly<Record<string, string>> = {
  read: "checked against the source",
  memory: "not yet checked against the source",
  ours: "our choice",
};

export function sayMark(mark: string): string {
  return marks[mark] ?? mark;
}

/**
 * That a source was read goes without saying; that it was not is said.
 * @example sayWhy("FAO-56 Ze, 100 to 150 mm (read)") // "FAO-56 Ze, 100 to 150 mm"
 */
export function sayWhy(why: string): string {
  return why
    .replace(/ \((?:method |form )?read\)/g, "")
    .replace(/[,;] read\)/g, ")")
    .replace(/([(,;] ?)(?:from )?memory(?=[),;])/g, `$1${marks["memory"]}`)
    .replace(/\bours\b(?=\))/g, "our choice");
}
