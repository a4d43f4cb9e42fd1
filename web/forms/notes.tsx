import { sayDefault } from "./sayDefault.ts";
import { forThePage } from "./placeWords.ts";
import { sayWhy } from "./sayWhy.ts";
import type { Place } from "./place.tsx";
import type { Problem } from "../../src/problem.ts";

interface ProblemNoteProps {
  readonly id: string;
  readonly problems: readonly Problem[];
  /** What a problem is about, where the note is not that of one field. */
  readonly of?: (problem: Problem, index: number) => string | undefined;
}

/** What is wrong with a field, in words beside it. */
export function ProblemNote({ id, problems, of }: ProblemNoteProps) {
  if (problems.length === 0) return null;
  return (
    <p class="field-problem" id={id} role="alert">
      {problems.map((problem, i) => (
        <span key={problem.field + problem.expected}>
          {withStart(of?.(problem, i))} {forThePage(problem.expected)}, found {problem.found};{" "}
          {forThePage(problem.mend)}.
        </span>
      ))}
    </p>
  );
}

function withStart(what: string | undefined): string {
  return what === undefined ? "Expected" : `${what}: expected`;
}

/** What is taken while the field is left out, and where that comes from. */
export function DefaultNote({ id, place }: { id: string; place: Place }) {
  const { fallback, value } = place;
  if (fallback === null || value !== undefined) return null;
  return (
    <p class="field-default" id={id}>
      If left empty: {sayDefault(fallback.value)} <span class="field-why">({sayWhy(fallback.why)})</span>
    </p>
  );
}

/** What holds while a case says nothing of its own. */
export function InheritNote({ id, otherwise }: { id: string; otherwise: string }) {
  return (
    <p class="field-default" id={id}>
      If left empty: {otherwise}
    </p>
  );
}
