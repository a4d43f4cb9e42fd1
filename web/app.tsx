import { useEffect, useRef } from "preact/hooks";
import { Banners } from "./shell/banners.tsx";
import { useDropAnywhere } from "./shell/dropAnywhere.ts";
import { Header } from "./shell/header.tsx";
import { lateView } from "./shell/lateView.tsx";
import { useUndoKeys } from "./shell/undoKeys.ts";
import { comeBackToRead } from "./state/scroll.ts";
import { openLeaf, skipWords, view, viewTitles, type ViewName } from "./state/view.ts";
import { AnswerView } from "./views/answer.tsx";

const late = {
  pit: lateView(async () => (await import("./views/pit.tsx")).PitView),
  inputs: lateView(async () => (await import("./views/inputs.tsx")).InputsView),
  field: lateView(async () => (await import("./views/field.tsx")).FieldView),
  teach: lateView(async () => (await import("./views/teach.tsx")).TeachView),
  seasons: lateView(async () => (await import("./views/seasons.tsx")).SeasonsView),
  keep: lateView(async () => (await import("./views/keep.tsx")).KeepView),
} as const;

const views: Readonly<Record<ViewName, () => preact.JSX.Element>> = {
  answer: AnswerView,
  pit: late.pit.View,
  inputs: late.inputs.View,
  field: late.field.View,
  teach: late.teach.View,
  seasons: late.seasons.View,
  keep: late.keep.View,
};

/** Fetches what is not looked at yet, once there is time for it. */
export function fetchAllViews(): void {
  for (const { fetch } of Object.values(late)) fetch();
}

export function App() {
  useUndoKeys();
  useDropAnywhere();
  const name = view.value;
  const leaf = name === "field" ? openLeaf.value : null;
  const main = useRef<HTMLElement>(null);
  const shown = useRef(name);
  useEffect(() => {
    document.title = `${viewTitles[name]} – rootfront`;
    // A reader of the page by ear is taken along to the view that was asked for.
    if (shown.current !== name) main.current?.focus({ preventScroll: true });
    shown.current = name;
  }, [name]);
  useEffect(comeBackToRead, [name, leaf]);
  const View = views[name];
  return (
    <>
      <a class="skip" href="#main" onClick={(event) => skipTo(event, main.current)}>
        {skipWords[name]}
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
