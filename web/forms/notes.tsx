import { sayDefault } from "./sayDefault.ts";
import { forThePage } from "./placeWords.ts";
import { sayWhy } from "./sayWhy.ts";
import type { Place } from "./place.tsx";
import type { Problem } from "../../src/problem.ts";

/** What is wrong with a field, in words beside it. */
export function ProblemNote({ id, problems }: { id: string; problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <p class="field-problem" id={id} role="alert">
      {problems.map(({ expected, found, mend }) => (
        <span key={expected}>
          Expected {forThePage(expected)}, found {found}; {forThePage(mend)}.
        </span>
      ))}
    </p>
  );
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
