/** Undo and redo over values that are never changed in place. */
export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly present: T;
  readonly future: readonly Step<T>[];
  /** The edit that led to the present, while another of the same kind may still join it. */
  readonly open: OpenEdit | null;
}

interface Step<T> {
  readonly value: T;
  /** What the edit between this value and the next did, for the button that takes it back. */
  readonly said: string;
}

export interface OpenEdit {
  readonly place: string;
  readonly how: EditHow;
  readonly atMs: number;
}

/** Typing joins while it goes on, sliding until it is let go; choosing never joins. */
export type EditHow = "typed" | "slid" | "chosen";

const typingPauseMs = 1500;
const mostSteps = 200;

export function newHistory<T>(present: T): History<T> {
  return { past: [], present, future: [], open: null };
}

/** The history with a new present; an edit that goes on at the same place replaces it instead of adding a step. */
export function edited<T>(history: History<T>, value: T, said: string, edit: OpenEdit): History<T> {
  const { past, present, open } = history;
  if (joins(open, edit)) return { ...history, present: value, future: [], open: edit };
  return {
    past: [...past, { value: present, said }].slice(-mostSteps),
    present: value,
    future: [],
    open: edit.how === "chosen" ? null : edit,
  };
}

function joins(open: OpenEdit | null, { place, how, atMs }: OpenEdit): boolean {
  if (open === null || open.place !== place || open.how !== how) return false;
  return how === "slid" || atMs - open.atMs < typingPauseMs;
}

/** The next edit begins a step of its own. */
export function closed<T>(history: History<T>): History<T> {
  return history.open === null ? history : { ...history, open: null };
}

export function undone<T>({ past, present, future }: History<T>): History<T> | null {
  const last = past.at(-1);
  if (last === undefined) return null;
  const ahead = [{ value: present, said: last.said }, ...future];
  return { past: past.slice(0, -1), present: last.value, future: ahead, open: null };
}

export function redone<T>({ past, present, future }: History<T>): History<T> | null {
  const [next, ...rest] = future;
  if (next === undefined) return null;
  return {
    past: [...past, { value: present, said: next.said }],
    present: next.value,
    future: rest,
    open: null,
  };
}
