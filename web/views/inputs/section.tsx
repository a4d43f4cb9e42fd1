import type { ComponentChildren } from "preact";

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

/** What is seldom needed, folded away; open where something is written there. */
export function More({
  title,
  open = false,
  children,
}: {
  title: string;
  open?: boolean;
  children: ComponentChildren;
}) {
  return (
    <details class="more" open={open}>
      <summary>{title}</summary>
      <div class="more-inside">{children}</div>
    </details>
  );
}
