import { closeSync, openSync, readSync, truncateSync } from "node:fs";
import papa from "papaparse";
import { InputError, UsageError } from "../../problem.ts";

/** What an interrupted run has left. */
export interface Done {
  /** Answers of JSON that stand there whole: so many lines that are not blank are left out. */
  readonly answers: number;
  /** Lines of the input with a number below this are left out: of a table, whose last line may be half there. */
  readonly beforeLine: number;
  /** The last answer kept, as text; null where there is none, and of a table. */
  readonly last: string | null;
}

export const nothingDone: Done = { answers: 0, beforeLine: 0, last: null };

/** How far an earlier run came with JSON; cuts off a line that it left half written. */
export function doneInJson(path: string): Done {
  let answers = 0;
  let last: string | null = null;
  const whole = readWholeLines(path, (line) => {
    answers += 1;
    last = line;
  });
  truncateSync(path, whole);
  return { answers, beforeLine: 0, last };
}

/**
 * The same of a table. A line of the input makes several rows, and some may be missing: the last line's are cut off, to be
 * made anew.
 *
 * @param head of the table that is to go on
 */
export function doneInTable(path: string, head: readonly string[]): Done {
  const column = head.indexOf("line");
  if (column < 0) throw new UsageError('--resume goes by the column "line" of the table: put it into --only');
  let row = 0;
  let line = 0;
  let fromByte = 0;
  const whole = readWholeLines(path, (text, startsAt) => {
    const cells = papa.parse<string[]>(text).data[0] ?? [];
    row += 1;
    if (row === 1) return refuseOther(path, cells, head);
    const number = Number(cells[column]);
    if (number === line) return;
    line = number;
    fromByte = startsAt;
  });
  truncateSync(path, line === 0 ? whole : fromByte);
  return { answers: 0, beforeLine: line, last: null };
}

function refuseOther(path: string, cells: readonly string[], head: readonly string[]): void {
  if (cells.length === head.length && cells.every((cell, c) => cell === head[c])) return;
  throw new InputError([
    {
      field: "--resume",
      expected: "a table with the columns that are asked for",
      found: `others in "${path}"`,
      mend: "give the flags it was begun with, or name another file",
    },
  ]);
}

/** Tells each line that ends; gives the bytes up to the end of the last. */
function readWholeLines(path: string, tell: (text: string, startsAt: number) => void): number {
  const file = openSync(path, "r");
  const piece = Buffer.alloc(2 ** 20);
  let begun: Buffer[] = [];
  let read = 0;
  let startsAt = 0;
  try {
    for (;;) {
      const size = readSync(file, piece);
      if (size === 0) return startsAt;
      let from = 0;
      for (let end = piece.indexOf(0x0a); end >= 0 && end < size; end = piece.indexOf(0x0a, from)) {
        tell(Buffer.concat([...begun, piece.subarray(from, end)]).toString("utf8"), startsAt);
        begun = [];
        from = end + 1;
        startsAt = read + from;
      }
      if (from < size) begun.push(Buffer.from(piece.subarray(from, size)));
      read += size;
    }
  } finally {
    closeSync(file);
  }
}
