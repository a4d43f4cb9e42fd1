import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { isPrinting } from "../state/theme.ts";

/** Of the window, px; on paper the drawing is scaled as it stands. */
export function useScreenHeight(): number {
  const height = useSignal(innerHeight);
  useEffect(() => {
    const look = () => {
      if (!isPrinting.peek()) height.value = innerHeight;
    };
    addEventListener("resize", look);
    return () => removeEventListener("resize", look);
  }, []);
  return height.value;
}
