import { constants } from "node:buffer";
import { closeSync, createReadStream, openSync, readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { InputError, quoteFound } from "../problem.ts";
import type { Context } from "./context.ts";
import type { GivenFlags } from "./flags.ts";
import {
  fileSaid,
  readToEnd,
  refuseSize,
  standardInputPath,
  takePieces,
  takeWhole,
} from "./standardInput.ts";
import { codeOf } from "./systemError.ts";
import { refuseSameFile } from "./writeFile.ts";

/**
 * The text of a file, UTF-8, a byte order mark taken off.
 *
 * @param path relative to `folder`, or absolute
 * @param field where the path was given, for errors: the path itself for an argument
 */
function readText(folder: string, path: string, field = path): string {
  if (path === "") refuseWith(field === "" ? "file" : field, "a file", "an empty path", "name a file");
  return textOf(readBytes(resolve(folder, path), path, field), field);
}

function textOf(bytes: Uint8Array, field: string): string {
  if (bytes.length > constants.MAX_STRING_LENGTH) refuseSize(field, bytes.length);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return refuseWith(field, "a text file in UTF-8", "other bytes", "save the file as UTF-8 text");
  }
}

/** As `readText`; refuses to read what the answer would be written over. */
export function readInput(
  { cwd, stdin }: Context,
  { out }: GivenFlags,
  folder: string,
  path: string,
  field = fileSaid(path),
): string {
  if (path === standardInputPath) {
    refuseSameFile(cwd, out, "/dev/stdin");
    return textOf(takeWhole(stdin, field), field);
  }
  refuseSameFile(cwd, out, resolve(folder, path));
  return readText(folder, path, field);
}

/** A file's bytes as they come, for what is longer than a text can be. */
export function readPieces(
  { cwd, stdin }: Context,
  { out }: GivenFlags,
  path: string,
): AsyncIterable<Uint8Array> {
  const field = fileSaid(path);
  if (path === standardInputPath) {
    refuseSameFile(cwd, out, "/dev/stdin");
    return takePieces(stdin, field);
  }
  const absolute = resolve(cwd, path);
  refuseSameFile(cwd, out, absolute);
  try {
    if (statSync(absolute).isDirectory()) refuseFile(field, path, "EISDIR");
    return createReadStream(absolute, { fd: openSync(absolute, "r") });
  } catch (error) {
    if (error instanceof InputError) throw error;
    return refuseFile(field, path, codeOf(error));
  }
}

function readBytes(absolute: string, path: string, field: string): Uint8Array {
  try {
    // Before it is read: what cannot become a text need not fill the memory first.
    const stats = statSync(absolute);
    if (stats.size > constants.MAX_STRING_LENGTH) refuseSize(field, stats.size);
    return stats.isFile() ? readFileSync(absolute) : readStream(absolute, field);
  } catch (error) {
    if (error instanceof InputError) throw error;
    return refuseFile(field, path, codeOf(error));
  }
}

/** A pipe or a device has no size, and may have no end. */
function readStream(absolute: string, field: string): Uint8Array {
  const file = openSync(absolute, "r");
  try {
    return readToEnd(file, field);
  } finally {
    closeSync(file);
  }
}

function refuseFile(field: string, path: string, code: string): never {
  // Where the argument is the field, the path need not be said twice.
  const found = (what: string) => (field === path ? what : `${what} at "${path}"`);
  switch (code) {
    case "ENOENT":
    case "ENOTDIR":
      return refuseWith(field, "a file", found("no such file"), "check the path");
    case "EISDIR":
      return refuseWith(field, "a file", found("a folder"), "name a file in it");
    case "EACCES":
    case "EPERM":
      return refuseWith(
        field,
        "a file that may be read",
        found("no permission to read it"),
        "change its permissions",
      );
    case "ENAMETOOLONG":
      return refuseWith(
        field === path ? "file" : field,
        "a file",
        `a name that is too long, ${quoteFound(path)}`,
        "check the path",
      );
    default:
      return refuseWith(
        field,
        "a file that can be read",
        found(`the error ${code}`),
        "check the path and the disk",
      );
  }
}

function refuseWith(field: string, expected: string, found: string, mend: string): never {
  throw new InputError([{ field, expected, found, mend }]);
}
