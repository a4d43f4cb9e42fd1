import { printable } from "../../printable.ts";
import { textWidth } from "../../wrap.ts";

/** A table in columns of text: the first column left, all others right. */
export interface TextTable {
  /** Heading lines, each a cell per column. */
  readonly head: readonly (readonly string[])[];
  readonly rows: readonly (readonly string[])[];
}

/** Narrowest that a name column gets. */
const narrowestName = 12;

/** Lines of at most 80 columns; a name too long for the room left is cut and ends in "~". */
export function tableLines({ head, rows }: TextTable): string[] {
  const all = [...head, ...rows].map((row) => row.map(printable));
  const columns = Math.max(...all.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, c) =>
    Math.max(...all.map((row) => row[c]?.length ?? 0)),
  );
  const nameWidth = widths[0] ?? 0;
  const others = widths.slice(1).reduce((sum, width) => sum + width, 0);
  // Two spaces between columns, or one where that makes it fit.
  const wide = Math.min(nameWidth, narrowestName) + others + 2 * (columns - 1) > textWidth;
  const gap = wide ? 1 : 2;
  const room = Math.max(narrowestName, textWidth - others - gap * (columns - 1));
  const first = Math.min(nameWidth, room);
  const padded = (cell: string, c: number) => " ".repeat(gap) + cell.padStart(widths[c] ?? 0);
  return all.map((row) =>
    row
      .map((cell, c) => (c === 0 ? cut(cell, first).padEnd(first) : padded(cell, c)))
      .join("")
      .trimEnd(),
  );
}

function cut(text: string, width: number): string {
  return text.length <= width ? text : `${text.slice(0, width - 1)}~`;
}
