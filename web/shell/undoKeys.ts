import { useEffect } from "preact/hooks";
import { redo, undo } from "../state/scenarioStore.ts";

/** Ctrl+Z and Ctrl+Y (Cmd on a Mac, and Shift+Ctrl+Z) anywhere; all that is typed is in the scenario, so fields need no undo of their own. */
export function useUndoKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const act = key === "z" ? (event.shiftKey ? redo : undo) : key === "y" ? redo : null;
      if (act === null) return;
      event.preventDefault();
      act();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}
