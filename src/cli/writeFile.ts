import { existsSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { InputError } from "../problem.ts";
import type { Context } from "./context.ts";
import { codeOf } from "./readFile.ts";

/** Hands a result over: to the file asked for with `flag`, else to stdout. */
export function handOver(
  { stdout, cwd }: Context,
  text: string,
  path: string | undefined,
  flag = "--out",
): void {
  if (path === undefined) stdout.write(text);
  else writeWhole(resolve(cwd, path), text, flag, path);
}

/** Refuses a file that cannot be written, before a long run rather than after it. */
export function refuseUnwritable(cwd: string, path: string | undefined, flag = "--out"): void {
  if (path === undefined) return;
  const absolute = resolve(cwd, path);
  if (path === "" || isFolder(absolute))
    refuseWrite(flag, path === "" ? "nothing" : `the folder "${path}"`, "name a file");
  if (!isFolder(dirname(absolute)))
    refuseWrite(flag, `no folder for "${path}"`, "make the folder first, or name another");
}

/** Writes beside the target, then renames: a reader sees the old file or the new one, never half of one. */
function writeWhole(absolute: string, text: string, flag: string, path: string): void {
  refuseUnwritable(dirname(absolute), absolute, flag);
  const temporary = join(dirname(absolute), `${basename(absolute)}.tmp-${process.pid}`);
  try {
    writeFileSync(temporary, text);
    renameSync(temporary, absolute);
  } catch (error) {
    rmSync(temporary, { force: true });
    refuseWrite(
      flag,
      `the error ${codeOf(error)} at "${path}"`,
      "check the permissions and the room on the disk",
    );
  }
}

function isFolder(absolute: string): boolean {
  return existsSync(absolute) && statSync(absolute).isDirectory();
}

function refuseWrite(flag: string, found: string, mend: string): never {
  throw new InputError([{ field: flag, expected: "a file that can be written", found, mend }]);
}
