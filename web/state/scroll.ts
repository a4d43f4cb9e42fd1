/** How far down a page was read: it stands in the browser's history, and comes back with reload, back and forward. */

interface Read {
  readonly readToPx: number;
}

const restMs = 100;
/** What is drawn late makes a page longer for so long at most. */
const patienceMs = 4000;

let timer: ReturnType<typeof setTimeout> | undefined;
let stopComingBack = () => {};

/** Has to run before the page is drawn: the browser's own way would come too early, while the page is still short. */
export function followScroll(): void {
  history.scrollRestoration = "manual";
  addEventListener(
    "scroll",
    () => {
      clearTimeout(timer);
      timer = setTimeout(writeDown, restMs);
    },
    { passive: true },
  );
  // Whatever leaves a page has it written down first.
  for (const name of ["click", "pagehide"]) addEventListener(name, writeDown, { capture: true });
  // By then the history stands at the other page already.
  addEventListener("popstate", () => clearTimeout(timer));
}

/** A new page in the history, read from its top. */
export function turnPage(address: string): void {
  writeDown();
  history.pushState(null, "", address);
}

/** Where this page was left; at its top where it is new. */
export function comeBackToRead(): void {
  stopComingBack();
  clearTimeout(timer);
  const { readToPx: wanted = 0 } = (history.state as Partial<Read> | null) ?? {};
  if (wanted === 0) return scrollTo(0, 0);
  const until = performance.now() + patienceMs;
  let isWanted = true;
  const stop = () => {
    isWanted = false;
    for (const name of ownMoves) removeEventListener(name, stop);
  };
  for (const name of ownMoves) addEventListener(name, stop, { passive: true });
  const look = () => {
    if (!isWanted) return;
    scrollTo(0, wanted);
    if (Math.abs(scrollY - wanted) < 2 || performance.now() > until) stop();
    else requestAnimationFrame(look);
  };
  stopComingBack = stop;
  look();
}

/** Who moves on is not taken back. */
const ownMoves = ["wheel", "touchstart", "pointerdown", "keydown"] as const;

function writeDown(): void {
  clearTimeout(timer);
  const readToPx = Math.round(scrollY);
  const { readToPx: before = 0 } = (history.state as Partial<Read> | null) ?? {};
  if (readToPx !== before) history.replaceState({ readToPx }, "");
}
