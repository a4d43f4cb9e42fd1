import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";

/**
 * Marks the field that has the focus with `data-in-use`: its hint shows, those of the others do not. While a finger or a button
 * is down nothing moves, or the click would miss.
 */
export function useHintsInUse(room: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const within = room.current!;
    let isDown = false;
    const mark = () => {
      if (isDown) return;
      const now = document.activeElement?.closest(".field") ?? null;
      const before = within.querySelector("[data-in-use]");
      if (now === before) return;
      // What takes the focus from a field without being one, such as a button below it, leaves its hint.
      if (now === null && document.activeElement !== document.body) return;
      before?.removeAttribute("data-in-use");
      now?.setAttribute("data-in-use", "");
    };
    const down = () => {
      isDown = true;
    };
    const up = () => {
      isDown = false;
      // Once the click has met what it was meant for.
      setTimeout(mark);
    };
    within.addEventListener("pointerdown", down);
    within.addEventListener("focusin", mark);
    for (const name of ["pointerup", "pointercancel"]) addEventListener(name, up);
    return () => {
      within.removeEventListener("pointerdown", down);
      within.removeEventListener("focusin", mark);
      for (const name of ["pointerup", "pointercancel"]) removeEventListener(name, up);
    };
  }, []);
}
