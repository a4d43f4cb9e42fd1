import type { ComponentChildren } from "preact";
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { problemsWithin } from "../../forms/place.tsx";
import { isGroup } from "../../state/json.ts";
import { scenario, valueAt } from "../../state/scenarioStore.ts";
import { problems, resolved } from "../../worker/client.ts";
import { openCard, units, type CardName } from "../../state/view.ts";
import { cardOf, cards } from "./cardPlan.ts";
import { cardSaid } from "./cardSaid.ts";

/**
 * One card of the notebook: closed, a line that says what stands on it; one is open at a time. What it holds is on the page while
 * it is closed, so that the browser's own search finds it, and opens it.
 */
export function Section({ id, children }: { id: CardName; children: ComponentChildren }) {
  const isOpen = openCard.value === id;
  const wrong = problems.value.filter((problem) => cardOf(problem) === id).length;
  return (
    <details
      class="leaf card"
      id={`inputs-${id}`}
      data-card={id}
      open={isOpen}
      // The browser opens it too, where its search or an error leads into it.
      onToggle={({ currentTarget }) => {
        if (currentTarget.open) openCard.value = id;
        else if (openCard.peek() === id) openCard.value = null;
      }}
    >
      <summary
        onClick={(event) => {
          event.preventDefault();
          keepInPlace(event.currentTarget);
          openCard.value = isOpen ? null : id;
        }}
      >
        <h2>{cards[id].title}</h2> {wrong > 0 && <span class="card-wrong">{wrong} to mend</span>}{" "}
        <span class="card-said">
          {cardSaid(id, { written: scenario.value, read: resolved.value, units: units.value })}
        </span>
      </summary>
      <div class="card-inside">{children}</div>
    </details>
  );
}

/** The card that closes may lie above the one that opens: the line that was clicked stays under the hand. */
function keepInPlace(summary: HTMLElement): void {
  const before = summary.getBoundingClientRect().top;
  const back = () => scrollBy(0, summary.getBoundingClientRect().top - before);
  // Once more in the next frame: the page may scroll of itself when it grows shorter.
  requestAnimationFrame(() => {
    back();
    requestAnimationFrame(back);
  });
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
