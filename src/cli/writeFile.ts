import { lstatSync, realpathSync, renameSync, rmSync, statSync, writeFileSync, type Stats } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { InputError, quoteFound } from "../problem.ts";
import type { Context } from "./context.ts";
import { codeOf, writeErrorSaid } from "./systemError.ts";

/** In place of a file: standard output. */
const standardOutput = "-";

/** Hands a result over: to the file asked for with `flag`, else to stdout. */
export function handOver(
  { stdout, cwd }: Context,
  text: string,
  path: string | undefined,
  flag = "--out",
): void {
  if (path === undefined || path === standardOutput) stdout.write(text);
  else writeWhole(targetOf(cwd, path, flag), text, path);
}

/** Refuses a file that cannot be written, before a long run rather than after it. */
export function refuseUnwritable(cwd: string, path: string | undefined, flag = "--out"): void {
  if (path !== undefined && path !== standardOutput) targetOf(cwd, path, flag);
}

/** Refuses a file that is there already, for what is never written over. */
export function refuseExisting(cwd: string, path: string, field: string): void {
  if (lookAt(resolve(cwd, path), false) === null) return;
  const found = field === path ? "one that does" : `"${path}", which does`;
  refuseWith(field, "a file that does not exist yet", found, "name another, or delete it first");
}

/** Refuses to write over a file that is read for the answer. */
export function refuseSameFile(cwd: string, path: string | undefined, read: string, flag = "--out"): void {
  if (path === undefined || path === standardOutput || !isSameFile(resolve(cwd, path), read)) return;
  refuseWith(
    flag,
    "a file that nothing is read from",
    `"${path}", which the answer is made of`,
    "name another",
  );
}

/** Whether two absolute paths are one file, by whatever names; of files not there yet, whether they will be. */
export function isSameFile(one: string, other: string): boolean {
  const [a, b] = [lookAt(one), lookAt(other)];
  if (a !== null && b !== null) return a.dev === b.dev && a.ino === b.ino;
  return a === null && b === null && inRealFolder(one) === inRealFolder(other);
}

function inRealFolder(absolute: string): string {
  try {
    return join(realpathSync(dirname(absolute)), basename(absolute));
  } catch {
    return absolute;
  }
}

/** Where a path leads: the file itself, behind any links; one that is there is an ordinary file. */
function targetOf(cwd: string, path: string, flag: string): string {
  if (path === "") refuseWrite(flag, "an empty path", "name a file");
  const absolute = resolve(cwd, path);
  refuseLongName(absolute, path, flag);
  const there = lookAt(absolute);
  if (there === null && /[/\\]$/.test(path))
    refuseWrite(flag, `"${path}", a folder's name`, "name a file in it");
  if (there === null) {
    if (lookAt(absolute, false) !== null)
      refuseWrite(flag, `"${path}", a link that leads nowhere`, "name a file");
    if (!(lookAt(dirname(absolute))?.isDirectory() ?? false))
      refuseWrite(flag, `no folder for "${path}"`, "make the folder first, or name another");
    return absolute;
  }
  if (there.isDirectory()) refuseWrite(flag, `the folder "${path}"`, "name a file");
  if (!there.isFile())
    refuseWrite(flag, `"${path}", which is no ordinary file`, `name a file, or "-" for standard output`);
  return realpathSync(absolute);
}

/** The system knows how long a name may be: 255 bytes on most. */
function refuseLongName(absolute: string, path: string, flag: string): void {
  try {
    lstatSync(absolute);
  } catch (error) {
    if (codeOf(error) !== "ENAMETOOLONG") return;
    const field = flag === path ? "file" : flag;
    refuseWrite(field, `a name that is too long, ${quoteFound(path)}`, "give it at most 255 bytes");
  }
}

/** Null where nothing is there to be looked at. */
function lookAt(absolute: string, behindLinks = true): Stats | null {
  try {
    return behindLinks ? statSync(absolute) : lstatSync(absolute);
  } catch {
    return null;
  }
}

/** Writes beside the target, then renames: a reader sees the old file or the new one, never half of one. */
function writeWhole(target: string, text: string, path: string): void {
  // Its name does not grow with the target's, which may be as long as the system lets it.
  const temporary = join(dirname(target), `.rootfront-${process.pid}.tmp`);
  try {
    // An old file's permissions stay.
    writeFileSync(temporary, text, { mode: lookAt(target)?.mode ?? 0o666 });
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    refuseWrite(path, writeErrorSaid(codeOf(error)), "check the permissions and the room on the disk");
  }
}

function refuseWrite(field: string, found: string, mend: string): never {
  refuseWith(field, "a file that can be written", found, mend);
}

function refuseWith(field: string, expected: string, found: string, mend: string): never {
  throw new InputError([{ field, expected, found, mend }]);
}
