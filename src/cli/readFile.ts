import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { InputError } from "../problem.ts";

/**
 * The text of a file, UTF-8, a byte order mark taken off.
 *
 * @param path relative to `folder`, or absolute
 * @param field where the path was given, for errors: the path itself for an argument
 */
export function readText(folder: string, path: string, field = path): string {
  const bytes = readBytes(resolve(folder, path), path, field);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return refuseWith(field, "a text file in UTF-8", "other bytes", "save the file as UTF-8 text");
  }
}

function readBytes(absolute: string, path: string, field: string): Uint8Array {
  try {
    return readFileSync(absolute);
  } catch (error) {
    return refuseFile(field, path, codeOf(error));
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

/** The system's word for what went wrong, such as `ENOENT`. */
export function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "unknown";
}
