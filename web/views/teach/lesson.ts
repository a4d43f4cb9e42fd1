import { computed, signal } from "@preact/signals";
import { isOnCopy } from "../../state/scenarioStore.ts";
import { answer, answerId, resolved } from "../../worker/client.ts";
import { differenceShown } from "../answer/chosenDifference.ts";
import { fittedPassage, layerNamed, slowestLayer, type DenseLayer } from "./denseLayer.ts";
import { subjectOf, type Subject } from "./subject.ts";

/** What the lesson is about: two cases and a layer. It stays while views change. */

/** Places of the two root systems that are set side by side; one where there is no other. */
export const pair = computed<readonly number[]>(() => {
  const count = resolved.value?.cases.length ?? 0;
  const other = Math.min(differenceShown.value + 1, count - 1);
  return other > 0 ? [0, other] : [0];
});

interface Named extends DenseLayer {
  /** The soils that it was chosen among: another soil, another choice. */
  readonly key: string;
}

const held = signal<Named | null>(null);

const key = computed(() =>
  JSON.stringify([pair.value, resolved.value?.cases.map(({ layers }) => layers.map(({ name }) => name))]),
);

/** Where plants were dug and decide, what they tell of a layer. */
export const fitted = computed(() =>
  fittedPassage(answer.value?.comparison.evidence?.dig?.fit, resolved.value?.cases ?? []),
);

/** A layer stays the lesson's while it is slid to where another slows roots more. */
export const denseLayer = computed<DenseLayer | null>(() => {
  const cases = resolved.value?.cases ?? [];
  if (held.value?.key === key.value) return held.value;
  return slowestLayer(cases, pair.value, fitted.value);
});

export function keepDenseLayer(): void {
  const found = denseLayer.peek();
  if (found !== null && held.peek()?.key !== key.peek()) held.value = { ...found, key: key.peek() };
}

export function nameDenseLayer(name: string): void {
  const found = layerNamed(resolved.peek()?.cases ?? [], pair.peek(), name, fitted.peek());
  if (found !== null) held.value = { ...found, key: key.peek() };
}

const subjectNow = computed(() => {
  const cases = resolved.value?.cases ?? [];
  const [one = 0, other = -1] = pair.value;
  return subjectOf(cases[one], cases[other]);
});

/** Which scenario and which two of its cases: another lesson begins with the guess again. */
const lesson = computed(() => {
  const { name, cases } = resolved.value ?? { name: "", cases: [] };
  return JSON.stringify([name, cases.map((one) => one.name), pair.value]);
});

let heldSubject: { readonly lesson: string; readonly subject: Subject } | null = null;

/** What sets the two apart; while a copy is tried out, what did so in the user's own: sliding asks no other question. */
export const subject = computed(() => {
  const now = { lesson: lesson.value, subject: subjectNow.value };
  if (!isOnCopy.value || heldSubject?.lesson !== now.lesson) heldSubject = now;
  return heldSubject.subject;
});

/** The difference that is guessed; null with one case alone. */
export const difference = computed(() => answer.value?.comparison.differences[differenceShown.value] ?? null);

interface Guessed {
  readonly lesson: string;
  readonly mm: number;
  /** The answer's number when the truth was shown, after which a slider may have moved; null = not shown yet. */
  readonly shownAtId: number | null;
}

const guessed = signal<Guessed>({ lesson: "", mm: 0, shownAtId: null });
const guess = computed<Guessed>(() =>
  guessed.value.lesson === lesson.value ? guessed.value : { lesson: lesson.value, mm: 0, shownAtId: null },
);

/** While the class guesses, nothing that tells the answer is on the page. */
export const isGuessing = computed(() => guess.value.shownAtId === null);
/** mm; kept through a change of units. */
export const guessMm = computed(() => guess.value.mm);
export const shownAtId = computed(() => guess.value.shownAtId);

export function setGuess(mm: number): void {
  guessed.value = { ...guess.peek(), mm };
}

export function showTruth(): void {
  guessed.value = { ...guess.peek(), shownAtId: answerId.peek() };
}

export function guessAgain(): void {
  guessed.value = { lesson: lesson.peek(), mm: 0, shownAtId: null };
}
