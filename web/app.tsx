import { useEffect, useRef } from "preact/hooks";
import { Banners } from "./shell/banners.tsx";
import { Header } from "./shell/header.tsx";
import { useUndoKeys } from "./shell/undoKeys.ts";
import { view, viewTitles, type ViewName } from "./state/view.ts";
import { AnswerView } from "./views/answer.tsx";
import { InputsView } from "./views/inputs.tsx";
import { KeepView } from "./views/keep.tsx";
import { PitView } from "./views/pit.tsx";
import { SeasonsView } from "./views/seasons.tsx";
import { TeachView } from "./views/teach.tsx";

const views: Readonly<Record<ViewName, () => preact.JSX.Element>> = {
  pit: PitView,
  answer: AnswerView,
  inputs: InputsView,
  teach: TeachView,
  seasons: SeasonsView,
  keep: KeepView,
};

export function App() {
  useUndoKeys();
  const name = view.value;
  const main = useRef<HTMLElement>(null);
  const shown = useRef(name);
  useEffect(() => {
    document.title = `${viewTitles[name]} – rootfront`;
    // A reader of the page by ear is taken along to the view that was asked for.
    if (shown.current !== name) main.current?.focus({ preventScroll: true });
    shown.current = name;
    scrollTo(0, 0);
  }, [name]);
  const View = views[name];
  return (
    <>
      <a class="skip" href="#main" onClick={(event) => skipTo(event, main.current)}>
        Skip to the {viewTitles[name].toLowerCase()}
      </a>
      <Header />
      <Banners />
      <main id="main" ref={main} tabIndex={-1} aria-label={viewTitles[name]} class={`view view-${name}`}>
        <View />
      </main>
      <footer class="foot">
        <p>
          One-dimensional: no water or roots move sideways. An estimate to think with, not a basis for
          insurance or credit. Everything is worked out in this browser; nothing you enter leaves it.
        </p>
      </footer>
    </>
  );
}

/** The fragment is the page's address, so the jump is made by hand. */
function skipTo(event: Event, main: HTMLElement | null): void {
  event.preventDefault();
  main?.focus();
}
