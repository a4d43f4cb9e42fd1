import { useSignal } from "@preact/signals";
import type { ComponentChildren, TargetedInputEvent } from "preact";
import { useId } from "preact/hooks";
import type { Problem } from "../../../src/problem.ts";
import { ProblemNote } from "../../forms/notes.tsx";
import { endEdit } from "../../state/scenarioStore.ts";

interface Asked {
  readonly label: string;
  /** As answered; empty where it is not. */
  readonly value: string;
  /** What holds until then. */
  readonly otherwise: string;
  readonly problems: readonly Problem[];
  readonly children?: ComponentChildren;
}

/** A question answered with one of a list. */
export function AskChoice({
  label,
  value,
  otherwise,
  problems,
  children,
  groups,
  onGive,
}: Asked & {
  /** Choices under headings; an empty heading is none. */
  readonly groups: readonly (readonly [
    heading: string,
    choices: readonly (readonly [value: string, word: string])[],
  ])[];
  readonly onGive: (value: string | undefined) => void;
}) {
  const id = useId();
  const wrong = problems.length > 0;
  const known = groups.some(([, choices]) => choices.some(([one]) => one === value));
  return (
    <div class={`field way-in-field${wrong ? " is-wrong" : ""}`}>
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        class={value === "" ? "is-open" : undefined}
        aria-invalid={wrong || undefined}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={({ currentTarget }) => onGive(currentTarget.value || undefined)}
      >
        <option value="">{otherwise}</option>
        {value !== "" && !known && <option value={value}>{value}</option>}
        {groups.map(([heading, choices]) => {
          const options = choices.map(([one, word]) => (
            <option key={one} value={one}>
              {word}
            </option>
          ));
          return heading === "" ? options : <optgroup label={heading}>{options}</optgroup>;
        })}
      </select>
      <ProblemNote id={`${id}-wrong`} problems={problems} />
      {children}
    </div>
  );
}

/** A question answered in a few words: a depth, a total. */
export function AskText({
  label,
  value,
  otherwise,
  problems,
  children,
  unit,
  type = "text",
  onGive,
}: Asked & {
  /** Of a number typed alone. */
  readonly unit: string;
  readonly type?: "text" | "date";
  readonly onGive: (value: string | undefined) => void;
}) {
  const id = useId();
  // While it is typed in, a field shows what was typed; what is kept has its unit already.
  const typing = useSignal<{ readonly shown: string; readonly kept: string } | null>(null);
  const wrong = problems.length > 0;
  const control = {
    id,
    autoComplete: "off",
    spellcheck: false,
    value: typing.value?.kept === value ? typing.value.shown : value,
    placeholder: otherwise,
    "aria-invalid": wrong || undefined,
    "aria-describedby": wrong ? `${id}-wrong` : undefined,
    onInput: ({ currentTarget: { value: shown } }: TargetedInputEvent<HTMLInputElement>) => {
      const kept = unit !== "" && endsInNumber(shown) ? `${shown.trimEnd()} ${unit}` : shown;
      typing.value = { shown, kept };
      onGive(kept.trim() === "" ? undefined : kept);
    },
    onBlur: () => {
      typing.value = null;
      endEdit();
    },
  };
  return (
    <div class={`field way-in-field${wrong ? " is-wrong" : ""}`}>
      <label for={id}>{label}</label>
      {type === "date" ? <input type="date" {...control} /> : <input type="text" {...control} />}
      <ProblemNote id={`${id}-wrong`} problems={problems} />
      {children}
    </div>
  );
}

/** "6 to 10", "24, 27" and "14" want the unit shown at their end. */
function endsInNumber(text: string): boolean {
  return /\d\.?\s*$/.test(text);
}
