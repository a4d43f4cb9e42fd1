/** One line of a stream that is not blank. */
export interface Line {
  /** Counted from 1, blank lines among them. */
  readonly number: number;
  /** Null where it is too long, or no text in UTF-8. */
  readonly text: string | null;
  readonly bytes: number;
}

/** A scenario takes some ten thousand letters; what is longer is no scenario, and is not kept. Ours. */
export const longestLineBytes = 4 * 2 ** 20;

const newline = 0x0a;

/** The lines of a stream, one at a time: more is read when the line before has been dealt with. */
export async function* linesOf(
  pieces: AsyncIterable<Uint8Array>,
  mostBytes = longestLineBytes,
): AsyncGenerator<Line> {
  let number = 0;
  let begun: Uint8Array[] = [];
  let bytes = 0;
  const take = (piece: Uint8Array): void => {
    bytes += piece.length;
    if (bytes <= mostBytes) begun.push(piece);
    else begun = [];
  };
  const close = (): Line | null => {
    number += 1;
    const line = { number, bytes, text: bytes > mostBytes ? null : decoded(Buffer.concat(begun, bytes)) };
    begun = [];
    bytes = 0;
    return line.text?.trim() === "" ? null : line;
  };
  for await (const piece of pieces) {
    let from = 0;
    for (;;) {
      const end = piece.indexOf(newline, from);
      if (end < 0) break;
      take(piece.subarray(from, end));
      const line = close();
      if (line !== null) yield line;
      from = end + 1;
    }
    if (from < piece.length) take(piece.subarray(from));
  }
  if (bytes === 0) return;
  const last = close();
  if (last !== null) yield last;
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
