import type { Context } from "./context.ts";

const quietMs = 1000;
const betweenMs = 200;

/** Tells a watching person how far a long job is, on one line that goes away again. */
export interface Progress {
  readonly report: (done: number, total: number) => void;
  readonly end: () => void;
}

/**
 * Silent in the first second, and always where nobody watches.
 * @param now clock in ms; tests hand in their own
 */
export function progressOn(
  { stderr, isTerminal }: Context,
  what: string,
  now: () => number = Date.now,
): Progress {
  if (!isTerminal) return { report: () => undefined, end: () => undefined };
  let next = now() + quietMs;
  let width = 0;
  return {
    report: (done, total) => {
      const time = now();
      if (time < next) return;
      next = time + betweenMs;
      const text = `${what} ${done} of ${total}`;
      width = Math.max(width, text.length);
      stderr.write(`\r${text.padEnd(width)}`);
    },
    end: () => {
      if (width > 0) stderr.write(`\r${" ".repeat(width)}\r`);
    },
  };
}
