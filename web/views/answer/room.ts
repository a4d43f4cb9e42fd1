import { useLayoutEffect, useRef, useState } from "preact/hooks";

/** Width taken before the first look, px. */
const usualPx = 520;

/** How wide a drawing may be, in whole pixels: drawn at its own size its writing keeps the size of the page's. */
export function useRoom<E extends HTMLElement>(): [ref: { current: E | null }, widthPx: number] {
  const place = useRef<E>(null);
  const [widthPx, setWidthPx] = useState(usualPx);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return undefined;
    const look = () => {
      const { clientWidth } = element;
      if (clientWidth > 0) setWidthPx(clientWidth);
    };
    look();
    const watch = new ResizeObserver(look);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [place, widthPx];
}
