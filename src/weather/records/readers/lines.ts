import { refuse } from "../../../problem.ts";

/** Text of a file without byte-order mark and with line ends that have a line feed; refuses what is no text. */
export function plainText(text: string, fileName: string): string {
  if (text.trim() === "") {
    refuse(
      fileName,
      "a weather record",
      text === "" ? undefined : text,
      "give a file that holds daily weather",
    );
  }
  let plain = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (!plain.includes("\n")) plain = plain.replaceAll("\r", "\n");
  const start = plain.slice(0, 4096);
  // oxlint-disable-next-line no-control-regex -- control characters are what is looked for
  const odd = start.match(/[\u0000-\u0008\u000e-\u001f]/g)?.length ?? 0;
  const unread = start.match(/\ufffd/g)?.length ?? 0;
  if (odd > 0 || unread > start.length / 20) {
    refuse(
      fileName,
      "a plain text file in UTF-8",
      start.slice(0, 30),
      "save the sheet as CSV (UTF-8), or unpack the archive, and give that file",
    );
  }
  return plain;
}

/** Where in a text, by character and by line; lines count from 1. */
export interface Place {
  readonly offset: number;
  readonly line: number;
}

export const top: Place = { offset: 0, line: 1 };

/**
 * Calls `visit` with each line from `from` on, without its line end; stops when `visit` returns false.
 * One line is held at a time, so that a long file costs no copy of itself.
 */
export function eachLine(
  text: string,
  from: Place,
  visit: (line: string, number: number, nextOffset: number) => boolean | void,
): void {
  let start = from.offset;
  let number = from.line;
  while (start < text.length) {
    let end = text.indexOf("\n", start);
    if (end < 0) end = text.length;
    const stop = end > start && text.charCodeAt(end - 1) === 13 ? end - 1 : end;
    if (visit(text.slice(start, stop), number, end + 1) === false) return;
    start = end + 1;
    number++;
  }
}

/** The first lines that are neither blank nor comments. */
export function firstLines(text: string, count: number): string[] {
  const lines: string[] = [];
  eachLine(text, top, (line) => {
    if (!isAside(line)) lines.push(line);
    return lines.length < count;
  });
  return lines;
}

/** Blank, or a comment. */
export function isAside(line: string): boolean {
  return line.trim() === "" || line.startsWith("#");
}

/** A blank stands for any number of them. */
export type Delimiter = "," | ";" | "\t" | " ";

/** No table of daily weather has longer lines; splitting one of a whole file's length would exhaust the memory. */
export const longestLine = 100_000;

/** Cells of a line, trimmed, without their quotes; none of a line longer than `longestLine`. */
export function cellsOf(line: string, delimiter: Delimiter): string[] {
  if (line.length > longestLine) return [];
  if (delimiter === " ") return line.trim().split(/ +/);
  if (line.includes('"')) return quotedCells(line, delimiter);
  const cells = line.split(delimiter);
  for (let i = 0; i < cells.length; i++) cells[i] = cells[i]!.trim();
  return cells;
}

/** As RFC 4180: a quote in quotes is doubled. Two to three times as fast as the library, line by line. */
function quotedCells(line: string, delimiter: Delimiter): string[] {
  const cells: string[] = [];
  let at = 0;
  while (at <= line.length) {
    while (line[at] === " ") at++;
    let end: number;
    if (line[at] === '"') {
      let close = line.indexOf('"', at + 1);
      while (close >= 0 && line[close + 1] === '"') close = line.indexOf('"', close + 2);
      if (close < 0) close = line.length;
      cells.push(
        line
          .slice(at + 1, close)
          .replaceAll('""', '"')
          .trim(),
      );
      end = line.indexOf(delimiter, close + 1);
    } else {
      end = line.indexOf(delimiter, at);
      cells.push(line.slice(at, end < 0 ? line.length : end).trim());
    }
    if (end < 0) break;
    at = end + 1;
  }
  return cells;
}

/** A table with one header line. */
export interface Table {
  readonly text: string;
  readonly header: readonly string[];
  readonly headerLine: number;
  readonly delimiter: Delimiter;
  /** First line below the header. */
  readonly body: Place;
  /** Comment lines above the header, without `#`. */
  readonly comments: readonly string[];
}

/** The table that starts at `from`; null where there is no line with a delimiter to be its header. */
export function openTable(text: string, from: Place = top): Table | null {
  let table: Table | null = null;
  const comments: string[] = [];
  eachLine(text, from, (line, number, nextOffset) => {
    if (isAside(line)) {
      if (line.startsWith("#")) comments.push(line.slice(1).trim());
      return true;
    }
    const [delimiter, count] = ([",", ";", "\t"] as const)
      .map((mark) => [mark, cellsOf(line, mark).length] as const)
      .reduce((best, next) => (next[1] > best[1] ? next : best));
    if (count > 1) {
      const body = { offset: nextOffset, line: number + 1 };
      table = { text, header: cellsOf(line, delimiter), headerLine: number, delimiter, body, comments };
    }
    return false;
  });
  return table;
}

/** Position of the column with one of these names, whatever its case; -1 where there is none. First name first. */
export function columnAt(header: readonly string[], ...names: string[]): number {
  const lower = header.map((name) => name.toLowerCase());
  for (const name of names) {
    const at = lower.indexOf(name.toLowerCase());
    if (at >= 0) return at;
  }
  return -1;
}
