import type { QuantityKind } from "../../../src/quantity/kinds.ts";
import { withUnits } from "../../../src/quantity/readQuantity.ts";
import type { FiveAnswers } from "../../../src/scenario/say/fiveAnswers.ts";
import { answered, emptyWork, isInvented, type GivenFile } from "../../forms/edits/answersGiven.ts";
import { equivalent } from "../../forms/equivalent.ts";
import type { EditHow } from "../../state/history.ts";
import { answers, answerWith, openWork, scenario, work } from "../../state/scenarioStore.ts";
import { units, view } from "../../state/view.ts";

/** Answers to be given or, where undefined, taken back. */
export type Change = { readonly [Key in keyof FiveAnswers]?: FiveAnswers[Key] | undefined };

/** One after the other: a unit that only the library knows makes one of them wait for it. */
let queue: Promise<void> = Promise.resolve();

/** Gives some of the five answers, in one step of undo. */
export function give(change: Change, how: EditHow = "chosen", file: GivenFile | null = null): Promise<void> {
  queue = queue
    .then(() => withUnits(() => answered(work.peek(), change, file)))
    .then((next) => answerWith(next, Object.keys(change)[0] ?? "", how));
  return queue;
}

/** The five answers are asked for: the field began with them, or what is here is an example. */
export function isAsked(): boolean {
  return answers.value !== null || isInvented(scenario.value);
}

/** An empty start: nothing but stated defaults, and no answer until one question is answered. */
export function startNew(): void {
  openWork(emptyWork(), "start a new field");
  view.value = "answer";
}

/** What is here is an invented example: the first answer replaces it. */
export function isExample(): boolean {
  return answers.value === null && isInvented(scenario.value);
}

/** A new field without any answer yet. */
export function isBlank(): boolean {
  return answers.value !== null && Object.keys(answers.value).length === 0;
}

/** What a question that is still open is taken as; beside an example it is only what one may say. */
export function assumed(value: string, kind?: QuantityKind): string {
  const shown = (kind === undefined ? null : equivalent(value, kind, units.value)) ?? value;
  return answers.value === null ? `such as ${shown}` : `${shown} (assumed)`;
}

/** The same where one of a list is chosen. */
export function assumedChoice(value: string): string {
  return answers.value === null ? "choose" : `${value} (assumed)`;
}
