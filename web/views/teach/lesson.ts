import { computed, signal } from "@preact/signals";
import { answer, resolved } from "../../worker/client.ts";
import { differenceShown } from "../answer/chosenDifference.ts";
import { fittedPassage, layerNamed, slowestLayer, type DenseLayer } from "./denseLayer.ts";
import { subjectOf } from "./subject.ts";

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

/** What sets the two apart. */
export const subject = computed(() => {
  const cases = resolved.value?.cases ?? [];
  const [one = 0, other = -1] = pair.value;
  return subjectOf(cases[one], cases[other]);
});

/** The difference that is guessed; null with one case alone. */
export const difference = computed(() => answer.value?.comparison.differences[differenceShown.value] ?? null);

/** While the class guesses, nothing that tells the answer is on the page. */
export const isGuessing = signal(true);
/** mm; kept through a change of units. */
export const guessMm = signal(0);
/** The answer's number when the truth was shown: after a slider has moved it is another. */
export const shownAtId = signal<number | null>(null);
