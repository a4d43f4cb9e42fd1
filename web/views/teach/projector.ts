import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";

/** The lesson alone on the whole screen, in letters that the last row reads. */
export const isProjected = signal(false);

/** Of all writing, as a share of the screen's height: what is read from the last row. Common practice, no source. */
export const leastTextShare = 0.036;

/** Narrower, the lesson is one column and has no room for such letters; as in `style/teach.css`. */
const roomy = matchMedia("(min-width: 56.01rem)");

export function toggleProjector(): void {
  if (isProjected.peek()) {
    isProjected.value = false;
    return;
  }
  isProjected.value = true;
  // Where the browser allows no full screen, its window is filled.
  void document.documentElement.requestFullscreen?.().catch(() => undefined);
}

/** Esc leads out, with and without the browser's own full screen; so do another view and a window made narrow. */
export function useProjector(): void {
  const projected = isProjected.value;
  useEffect(() => {
    if (!projected) return undefined;
    const root = document.documentElement;
    root.classList.add("is-projected");
    const end = () => {
      isProjected.value = false;
    };
    const onScreen = () => {
      if (document.fullscreenElement === null) end();
    };
    const onKey = ({ key }: KeyboardEvent) => {
      if (key === "Escape") end();
    };
    const onWidth = () => {
      if (!roomy.matches) end();
    };
    document.addEventListener("fullscreenchange", onScreen);
    document.addEventListener("keydown", onKey);
    roomy.addEventListener("change", onWidth);
    return () => {
      document.removeEventListener("fullscreenchange", onScreen);
      document.removeEventListener("keydown", onKey);
      roomy.removeEventListener("change", onWidth);
      root.classList.remove("is-projected");
      if (document.fullscreenElement !== null) void document.exitFullscreen().catch(() => undefined);
    };
  }, [projected]);
  useEffect(
    () => () => {
      isProjected.value = false;
    },
    [],
  );
}
