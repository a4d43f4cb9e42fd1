import { printable } from "./printable.ts";

/** The width people's terminals and printed pages have. */
export const textWidth = 80;

/**
 * Breaks a text at spaces to `textWidth` columns; later lines begin with `hang`. A word too long for a line is cut.
 * @example wrap("- one two", "  ")
 */
export function wrap(text: string, hang = ""): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of printable(text).split(/ +/)) {
    let rest = word;
    const joined = line === "" || line === hang ? line + rest : `${line} ${rest}`;
    if (joined.length <= textWidth) {
      line = joined;
      continue;
    }
    if (line !== "" && line !== hang) lines.push(line);
    line = hang;
    while (line.length + rest.length > textWidth) {
      const room = textWidth - line.length;
      lines.push(line + rest.slice(0, room));
      rest = rest.slice(room);
      line = hang;
    }
    line += rest;
  }
  lines.push(line);
  return lines;
}

/** A list, an item a paragraph. */
export function bullets(items: readonly string[]): string[] {
  return items.flatMap((item) => wrap(`- ${item}`, "  "));
}
