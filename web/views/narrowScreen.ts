import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { isPrinting } from "../state/theme.ts";

/** As the style sheets have it for a phone. */
const narrow = "(max-width: 40rem)";

/** Whether the window is as narrow as a phone; on paper it stays as it was. */
export function useNarrowScreen(): boolean {
  const isNarrow = useSignal(matchMedia(narrow).matches);
  useEffect(() => {
    const query = matchMedia(narrow);
    const look = () => {
      if (!isPrinting.peek()) isNarrow.value = query.matches;
    };
    query.addEventListener("change", look);
    return () => query.removeEventListener("change", look);
  }, []);
  return isNarrow.value;
}
