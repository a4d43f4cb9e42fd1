import { batch } from "@preact/signals";
import { useRef } from "preact/hooks";
import type { EditHow } from "../../state/history.ts";
import type { Changes } from "../../state/path.ts";
import { beginCopy, editMany, isOnCopy, keepCopy, leaveCopy } from "../../state/scenarioStore.ts";
import { holdSeason } from "./heldSeason.ts";

/** Writes to a copy, in the season on show: the user's own field stays as it is. */
export function tryOut(changes: Changes, how: EditHow, said: string): void {
  batch(() => {
    holdSeason();
    beginCopy();
    editMany(changes, how, said);
  });
}

/** Says that it is a copy, and leads back. */
export function CopyNote() {
  const note = useRef<HTMLDivElement>(null);
  // The button that was pressed goes away: the keyboard stays here.
  const end = (act: () => void) => () => {
    act();
    note.current?.focus({ preventScroll: true });
  };
  return (
    <div ref={note} class="teach-copy" tabIndex={-1}>
      <p class="teach-note" role="status">
        {isOnCopy.value
          ? "This is a changed copy. Your field is as you left it."
          : "The sliders change a copy, not your field."}
      </p>
      {isOnCopy.value && (
        <p class="teach-copy-ends no-print">
          <button type="button" class="small" onClick={end(leaveCopy)}>
            Back to your field
          </button>{" "}
          <button type="button" class="small" onClick={end(() => keepCopy("keep what was tried in Teach"))}>
            Keep this as your field
          </button>
        </p>
      )}
    </div>
  );
}
