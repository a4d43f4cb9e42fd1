import { batch, computed, signal } from "@preact/signals";
import type { FiveAnswers } from "../../src/scenario/say/fiveAnswers.ts";
import { closed, edited, newHistory, redone, undone, type EditHow, type History } from "./history.ts";
import { isGroup, type Json } from "./json.ts";
import { changed, getAt, type Changes } from "./path.ts";

/** The one state of the page: the scenario as written, and the files it names. */
export interface Work {
  readonly scenario: Json;
  readonly attachments: Attachments;
  /** What the scenario was made of, where it began with the five answers: an empty start has none of them yet. */
  readonly answers?: FiveAnswers;
}

/** Text of each file that the scenario names, by the name it uses. */
export type Attachments = Readonly<Record<string, string>>;

const own = signal<History<Work>>(newHistory({ scenario: {}, attachments: {} }));
/** A copy that a lesson changes in place of the user's own; null = there is none. */
const copy = signal<History<Work> | null>(null);
const history = computed(() => copy.value ?? own.value);

export const work = computed(() => history.value.present);
/** The user's own, whatever is tried on a copy: what is kept. */
export const ownWork = computed(() => own.value.present);
/** Whether what is on show is a copy that has been changed. */
export const isOnCopy = computed(() => copy.value !== null && work.value !== ownWork.value);
export const scenario = computed(() => work.value.scenario);
export const attachments = computed(() => work.value.attachments);
/** The five answers of a field that began with them; null = it came as a whole, as a file or a demo. */
export const answers = computed(() => work.value.answers ?? null);
export const scenarioName = computed(() => {
  const name = isGroup(scenario.value) ? scenario.value["name"] : undefined;
  return typeof name === "string" && name.trim() !== "" ? name : "A scenario without a name";
});

/** What undo and redo would do, in words; null = nothing. */
export const undoSays = computed(() => history.value.past.at(-1)?.said ?? null);
export const redoSays = computed(() => history.value.future[0]?.said ?? null);

/** The last edit, for whoever must act sooner or later by its kind: letting go of a slider is answered at once. */
export const lastEdit = signal<EditHow>("chosen");

/** What stands at a place, as written; undefined where it is left out. */
export function valueAt(path: string): Json | undefined {
  return getAt(scenario.value, path);
}

/** Writes at a place, or with undefined takes away what stands there. */
export function edit(
  path: string,
  value: Json | undefined,
  how: EditHow = "chosen",
  said = `change ${path}`,
): void {
  editMany([[path, value]], how, said);
}

/** Several places in one step of undo. */
export function editMany(changes: Changes, how: EditHow = "chosen", said = "change"): void {
  const next = changed(scenario.value, changes);
  put({ ...work.value, scenario: next }, said, changes.map(([path]) => path).join(" "), how);
}

/** From now on edits change a copy, until it is left or kept. */
export function beginCopy(): void {
  if (copy.peek() === null) copy.value = newHistory(own.peek().present);
}

/** The user's own again, as it was. */
export function leaveCopy(): void {
  if (copy.peek() === null) return;
  lastEdit.value = "chosen";
  copy.value = null;
}

/** The copy becomes the user's own, in one step of undo. */
export function keepCopy(said: string): void {
  const kept = copy.peek()?.present;
  if (kept !== undefined) putOwn(kept, said);
}

/** This scenario changed as a whole; undo brings back what it was. */
export function replace(next: Json, files: Attachments, said: string): void {
  putOwn({ ...ownWork.value, scenario: next, attachments: files }, said);
}

/** Other work in place of this; undo brings this back. */
export function openWork(next: Work, said: string): void {
  putOwn(next, said);
}

/** The scenario with one of the five answers given or changed. */
export function answerWith(next: Work, place: string, how: EditHow): void {
  put(next, `answer ${place}`, `answers ${place}`, how);
}

/** A file beside the scenario. */
export function attach(name: string, text: string, changes: Changes = []): void {
  const { present } = own.value;
  const next = {
    ...present,
    scenario: changed(present.scenario, changes),
    attachments: { ...present.attachments, [name]: text },
  };
  putOwn(next, `use ${name}`);
}

/** A slider was let go, a field left: the next edit is a step of its own. */
export function endEdit(): void {
  write(closed(history.value));
}

export function undo(): void {
  moveTo(undone(history.value));
}

export function redo(): void {
  moveTo(redone(history.value));
}

/**
 * The scenario of the last good answer, while the present one is wrong: kept too, so that a reload has an answer to show. Null
 * while the present one is good, or before any was.
 */
export const lastGood = signal<Json | null>(null);

/**
 * The first state after loading.
 *
 * @param good what undo goes back to; null = nothing
 */
export function begin(first: Work, good: Json | null = null): void {
  const fresh = newHistory(first);
  lastGood.value = good;
  copy.value = null;
  own.value =
    good === null
      ? fresh
      : {
          ...fresh,
          past: [{ value: { ...first, scenario: good }, said: "what came after the last good answer" }],
        };
}

function put(next: Work, said: string, place: string, how: EditHow): void {
  lastEdit.value = how;
  write(edited(history.value, next, said, { place, how, atMs: performance.now() }));
}

/** A step of the user's own; a copy ends. At once: nobody is to see what lies between. */
function putOwn(next: Work, said: string): void {
  batch(() => {
    copy.value = null;
    put(next, said, "", "chosen");
  });
}

/** To the copy, where there is one. */
function write(next: History<Work>): void {
  if (copy.peek() === null) own.value = next;
  else copy.value = next;
}

function moveTo(next: History<Work> | null): void {
  if (next === null) return;
  lastEdit.value = "chosen";
  write(next);
}
