import { useEffect } from "preact/hooks";
import { openFiles } from "../views/keep/openFiles.ts";

/**
 * A file dropped anywhere on the page is taken or told of: left to itself, the browser would leave the page for the file. A
 * place that asks for a file of its own takes it first.
 */
export function useDropAnywhere(): void {
  useEffect(() => {
    const root = document.documentElement;
    const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") === true;
    const over = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      root.toggleAttribute("data-drop", !event.defaultPrevented);
      event.preventDefault();
    };
    const leave = (event: DragEvent) => {
      // Only leaving the window leaves for nothing.
      if (event.relatedTarget === null) root.removeAttribute("data-drop");
    };
    const drop = (event: DragEvent) => {
      root.removeAttribute("data-drop");
      if (event.defaultPrevented || !hasFiles(event)) return;
      event.preventDefault();
      void openFiles([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener("dragover", over);
    addEventListener("dragleave", leave);
    addEventListener("drop", drop);
    return () => {
      removeEventListener("dragover", over);
      removeEventListener("dragleave", leave);
      removeEventListener("drop", drop);
    };
  }, []);
}
