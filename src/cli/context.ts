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
  /** What was given is wrong: a file, a quantity, a record. */
  wrongInput: 1,
  /** The command was not called as it can be. */
  usage: 2,
  /** Our own mistake. */
  fault: 3,
} as const;
