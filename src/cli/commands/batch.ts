import { appendFileSync, closeSync, existsSync, openSync, statSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { InputError, UsageError } from "../../problem.ts";
import { answerLine, nameOfLine } from "../batch/lineAnswer.ts";
import { linesOf, type Line } from "../batch/lines.ts";
import { doneInJson, doneInTable, nothingDone, type Done } from "../batch/resume.ts";
import { newSharedReading } from "../batch/sharedReading.ts";
import { writingFor, type Writing } from "../batch/written.ts";
import { exitCodes, type Context, type RunCommand } from "../context.ts";
import type { GivenFlags } from "../flags.ts";
import { readPieces } from "../readFile.ts";
import { standardInputPath } from "../standardInput.ts";
import { codeOf, writeErrorSaid } from "../systemError.ts";
import { refuseUnwritable } from "../writeFile.ts";

/**
 * `batch [FILE]`: a scenario a line in, its answer a line out, in the order they come; a line that is wrong is one line too,
 * and the rest goes on. One line is in hand at a time: more is read when it has been written.
 */
export const run: RunCommand = async (context, file = standardInputPath, flags) => {
  refuseTogether(flags);
  const writing = writingFor(flags);
  refuseUnwritable(context.cwd, flags.out);
  const pieces = readPieces(context, flags, file);
  const folder = file === standardInputPath ? context.cwd : dirname(resolve(context.cwd, file));
  const { done, write, close } = outputOf(context, flags, writing);
  const stop = context.stopsWhenAsked?.();
  const shared = newSharedReading();
  const counts = { answer: 0, wrong: 0, fault: 0 };
  let seen = 0;
  let last: Line | null = null;
  try {
    for await (const line of linesOf(until(stop, pieces))) {
      seen += 1;
      if (seen <= done.answers || line.number < done.beforeLine) {
        if (seen === done.answers) refuseOtherInput(done, nameOfLine(line, context, flags, folder), line);
        continue;
      }
      const answer = await answerLine(line, context, flags, folder, shared);
      await write(writing.write(line, answer), stop);
      counts[answer.kind] += 1;
      last = line;
      // Between two lines the process hears of signals, and of a reader that is gone.
      await new Promise(setImmediate);
      if (stop?.aborted) break;
    }
  } finally {
    close();
  }
  const { stderr } = context;
  if (seen === 0) stderr.write("rootfront: no line came in; batch reads a scenario a line\n");
  if (counts.wrong + counts.fault > 0)
    stderr.write(
      `rootfront: ${counts.wrong + counts.fault} of ${counts.answer + counts.wrong + counts.fault} lines have no answer; what is wrong stands in their place\n`,
    );
  if (stop?.aborted) {
    stderr.write(
      `rootfront: stopped ${last === null ? "before the first line" : `after line ${last.number}`}${flags.out === undefined ? "" : "; go on with --resume"}\n`,
    );
    return exitCodes.stopped;
  }
  if (counts.fault > 0) return exitCodes.fault;
  return counts.wrong > 0 ? exitCodes.wrongInput : exitCodes.done;
};

function refuseTogether({ csv, json, resume, out }: GivenFlags): void {
  if (csv && json) throw new UsageError("--csv and --json are two ways of writing; give one");
  if (resume && (out === undefined || out === "-"))
    throw new UsageError("--resume goes on with a file: name it with --out");
}

interface Output {
  readonly done: Done;
  readonly write: (text: string, stop: AbortSignal | undefined) => Promise<void>;
  readonly close: () => void;
}

/** Line by line, unlike the results of other commands: what is there when a long run ends early is kept. */
function outputOf({ stdout, cwd }: Context, { out, resume }: GivenFlags, writing: Writing): Output {
  if (out === undefined || out === "-") {
    const { begin } = writing;
    const first = begin();
    if (first !== "") stdout.write(first);
    return {
      done: nothingDone,
      write: async (text, stop) => {
        if (stdout.write(text) !== false || stdout.drained === undefined) return;
        await unlessStopped(stdout.drained(), stop);
      },
      close: () => undefined,
    };
  }
  const path = resolve(cwd, out);
  const hasSome = existsSync(path) && statSync(path).size > 0;
  if (hasSome && resume !== true) refuseToBegin(out);
  const { head } = writing;
  const done = !hasSome ? nothingDone : head === null ? doneInJson(path) : doneInTable(path, head);
  const descriptor = openSync(path, "a");
  const append = (text: string): void => {
    try {
      appendFileSync(descriptor, text);
    } catch (error) {
      const found = writeErrorSaid(codeOf(error));
      const mend = "make room, then go on with --resume";
      throw new InputError([{ field: out, expected: "a file that can be written", found, mend }]);
    }
  };
  if (statSync(path).size === 0) append(writing.begin());
  return { done, write: async (text) => append(text), close: () => closeSync(descriptor) };
}

function refuseToBegin(out: string): never {
  throw new InputError([
    {
      field: "--out",
      expected: "a file that does not exist yet",
      found: `"${out}", which holds something`,
      mend: "go on with it by --resume, name another, or delete it first",
    },
  ]);
}

/** The answers that are there are told from those of another input by the name of the last. */
function refuseOtherInput({ last }: Done, name: string | null, { number }: Line): void {
  const written = nameWritten(last);
  if (written === null || name === null || written === name) return;
  throw new InputError([
    {
      field: "--resume",
      expected: `answers of this input in the file, line ${number} of which is of "${name}"`,
      found: `"${written}" in its place`,
      mend: "give the input it was begun with, or name another file",
    },
  ]);
}

/** Null where it does not tell, as with `--only` it need not. */
function nameWritten(answer: string | null): string | null {
  try {
    const { scenario, name } = JSON.parse(answer ?? "{}") as { scenario?: unknown; name?: unknown };
    return [scenario, name].find((one) => typeof one === "string") ?? null;
  } catch {
    return null;
  }
}

/** What comes until someone asks to stop. */
async function* until(
  stop: AbortSignal | undefined,
  pieces: AsyncIterable<Uint8Array>,
): AsyncGenerator<Uint8Array> {
  const source = pieces[Symbol.asyncIterator]();
  try {
    for (;;) {
      const next = await unlessStopped(source.next(), stop);
      if (next === null || next.done === true) return;
      yield next.value;
    }
  } finally {
    // A read that waits for more would wait on.
    if (!stop?.aborted) await source.return?.();
    else if (pieces === process.stdin) process.stdin.destroy();
  }
}

/** Null where someone asks to stop first. Nothing of it is left on the signal, which outlives a million of these. */
function unlessStopped<T>(wait: Promise<T>, stop: AbortSignal | undefined): Promise<T | null> {
  if (stop === undefined) return wait;
  return new Promise((done, fail) => {
    const end = () => done(null);
    if (stop.aborted) return end();
    stop.addEventListener("abort", end, { once: true });
    wait.then(done, fail).finally(() => stop.removeEventListener("abort", end));
  });
}
