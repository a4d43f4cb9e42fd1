import type { GivenFlags } from "./flags.ts";

/** What a command may touch of the world around it. Tests hand in their own. */
export interface Context {
  readonly stdout: Sink;
  readonly stderr: Sink;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  /** Whether a person watches stderr. */
  readonly isTerminal: boolean;
  /** Left out, there is nothing to read. */
  readonly stdin?: Source;
  /** From now on a wish to stop (Ctrl-C) is told by the signal, and ends nothing by itself. Left out, there is none. */
  readonly stopsWhenAsked?: () => AbortSignal;
}

export interface Sink {
  /** False where more should wait until what is written has gone. */
  write(text: string): unknown;
  /** When it has gone; left out, it goes at once. */
  readonly drained?: () => Promise<void>;
}

export interface Source {
  /** All of it at once. */
  readonly whole: () => Uint8Array;
  /** Piece by piece as it comes, no faster than it is asked for. */
  readonly pieces: () => AsyncIterable<Uint8Array>;
}

/** What a command line can end with. */
export const exitCodes = {
  done: 0,
  /** What a file holds is wrong, or a result cannot be written. */
  wrongInput: 1,
  /** The command was not called as it can be: what a flag says is wrong. */
  usage: 2,
  /** Our own mistake. */
  fault: 3,
  /** Stopped by a signal, as shells count: 128 and the signal's number, here of SIGINT. */
  stopped: 130,
} as const;

/**
 * A command's work. Throws InputError or UsageError; what it prints goes to the context's streams. Gives the exit code where
 * it ends with another than `done` though nothing was thrown.
 */
export type RunCommand = (
  context: Context,
  file: string | undefined,
  flags: GivenFlags,
) => Promise<number | void>;
