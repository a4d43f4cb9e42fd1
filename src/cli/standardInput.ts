import { constants } from "node:buffer";
import { readSync } from "node:fs";
import { InputError } from "../problem.ts";
import type { Source } from "./context.ts";
import { codeOf } from "./systemError.ts";

/** In place of a file to read: standard input. */
export const standardInputPath = "-";

/** A file as messages name it. */
export function fileSaid(path: string): string {
  return path === standardInputPath ? "standard input" : path;
}

/** That of the process. */
export const standardInput: Source = {
  whole: () => readToEnd(0, fileSaid(standardInputPath)),
  pieces: () => process.stdin,
};

interface Taken {
  readonly field: string;
  /** Null where it went by piece by piece. */
  readonly bytes: Uint8Array | null;
}

/** It can be read once: what it held, and for which field. */
const takenFrom = new WeakMap<Source, Taken>();

/** All that it holds; the same again for the same field, such as one record read for two things. */
export function takeWhole(source: Source | undefined, field: string): Uint8Array {
  if (source === undefined) return new Uint8Array();
  const before = takenFrom.get(source);
  if (before?.field === field && before.bytes !== null) return before.bytes;
  refuseTaken(before, field);
  const bytes = source.whole();
  takenFrom.set(source, { field, bytes });
  return bytes;
}

export function takePieces(source: Source | undefined, field: string): AsyncIterable<Uint8Array> {
  if (source === undefined) return nothing();
  refuseTaken(takenFrom.get(source), field);
  takenFrom.set(source, { field, bytes: null });
  return source.pieces();
}

async function* nothing(): AsyncGenerator<Uint8Array> {}

function refuseTaken(before: Taken | undefined, field: string): void {
  if (before === undefined) return;
  const found = `"-", but standard input was read before${before.field === fileSaid("-") ? "" : `, for ${before.field}`}`;
  throw new InputError([{ field, expected: "a file", found, mend: "name a file: it can be read once" }]);
}

/** To the end of a file, pipe or device, which may have none. */
export function readToEnd(descriptor: number, field: string): Uint8Array {
  const pieces: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const piece = new Uint8Array(2 ** 20);
    const read = readSome(descriptor, piece);
    if (read === 0) return Buffer.concat(pieces, size);
    size += read;
    if (size > constants.MAX_STRING_LENGTH) refuseSize(field, size);
    pieces.push(piece.subarray(0, read));
  }
}

/** A pipe that does not block says EAGAIN while nothing is in it. */
function readSome(descriptor: number, piece: Uint8Array): number {
  for (;;) {
    try {
      return readSync(descriptor, piece);
    } catch (error) {
      if (codeOf(error) === "EOF") return 0;
      if (codeOf(error) !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

/** A text of Node holds no more than half a gigabyte. */
export function refuseSize(field: string, bytes: number): never {
  const expected = `a file below ${Math.floor(constants.MAX_STRING_LENGTH / 2 ** 20 + 1)} MB`;
  const found = `one of ${Math.ceil(bytes / 2 ** 20)} MB`;
  const mend = "take out the years, stations or columns that are not needed";
  throw new InputError([{ field, expected, found, mend }]);
}
