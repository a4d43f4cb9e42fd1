import type { ComponentChildren } from "preact";
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { problemsWithin } from "../../forms/place.tsx";
import { isGroup } from "../../state/json.ts";
import { valueAt } from "../../state/scenarioStore.ts";
import { sections, type SectionId } from "./sections.ts";

/** A page of the notebook. */
export function Section({ id, children }: { id: SectionId; children: ComponentChildren }) {
  const { title } = sections.find((one) => one.id === id)!;
  return (
    <section class="leaf" id={`inputs-${id}`} aria-labelledby={`inputs-${id}-title`}>
      <h2 id={`inputs-${id}-title`} tabIndex={-1}>
        {title}
      </h2>
      {children}
    </section>
  );
}

/** Fields side by side, with a heading of their own. */
export function Fields({ title, children }: { title?: string; children: ComponentChildren }) {
  const grid = <div class="field-grid">{children}</div>;
  if (title === undefined) return grid;
  return (
    <fieldset class="plain-group">
      <legend>{title}</legend>
      {grid}
    </fieldset>
  );
}

interface MoreProps {
  readonly title: string;
  /** Places shown inside: unfolded where something is written or wrong at one of them. */
  readonly paths: readonly string[];
  readonly open?: boolean;
  readonly children: () => ComponentChildren;
}

/**
 * What is seldom needed, folded away, and made only once it is unfolded: hundreds of fields would make typing slow. It is not
 * folded up under the hand that takes out what was written.
 */
export function More({ title, paths, open = false, children }: MoreProps) {
  const unfolded = useRef(false);
  unfolded.current ||= open || paths.some((path) => isWritten(path) || problemsWithin(path).length > 0);
  const made = useSignal(false);
  return (
    <details
      class="more"
      open={unfolded.current}
      onToggle={(event) => {
        made.value ||= event.currentTarget.open;
      }}
    >
      <summary>{title}</summary>
      {(unfolded.current || made.value) && <div class="more-inside">{children()}</div>}
    </details>
  );
}

function isWritten(path: string): boolean {
  const value = valueAt(path);
  return isGroup(value) ? Object.keys(value).length > 0 : value !== undefined;
}
