import type { GivenFlags } from "./flags.ts";

/** What a command may touch of the world around it. Tests hand in their own. */
export interface Context {
  readonly stdout: Sink;
  readonly stderr: Sink;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  /** Whether a person watches stderr. */
  readonly isTerminal: boolean;
}

export interface Sink {
  write(text: string): unknown;
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
} as const;

/** A command's work. Throws InputError or UsageError; what it prints goes to the context's streams. */
export type RunCommand = (context: Context, file: string | undefined, flags: GivenFlags) => Promise<void>;
