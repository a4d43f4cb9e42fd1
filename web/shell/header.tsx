import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { redo, redoSays, scenarioName, undo, undoSays } from "../state/scenarioStore.ts";
import { addressOf, theme, units, view, viewNames, viewTitles, type ThemeChoice } from "../state/view.ts";
import { busy, progress } from "../worker/client.ts";
import { Switch } from "../forms/switch.tsx";
import { startNew } from "../views/wayIn/give.ts";

/** On a narrow screen one row: what is looked at is the button of a menu that holds all else. */
export function Header() {
  const isMenuOpen = useSignal(false);
  const head = useRef<HTMLElement>(null);
  // Another view is where the menu led.
  useEffect(() => {
    isMenuOpen.value = false;
  }, [view.value]);
  useEffect(() => {
    const onKey = ({ key }: KeyboardEvent) => {
      if (key !== "Escape" || !isMenuOpen.peek()) return;
      isMenuOpen.value = false;
      head.current?.querySelector<HTMLElement>(".menu-button")?.focus();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
  return (
    <header class={isMenuOpen.value ? "head is-menu-open" : "head"} ref={head}>
      <div class="head-row">
        <a class="mark" href={addressOf("answer")} aria-label="rootfront, to the answer">
          <Mark />
          <span class="mark-word">rootfront</span>
        </a>
        <button
          type="button"
          class="menu-button"
          aria-expanded={isMenuOpen.value}
          aria-controls="menu-views menu-tools"
          onClick={() => (isMenuOpen.value = !isMenuOpen.value)}
        >
          <span aria-hidden="true">☰</span>
          <span>
            <span class="only-heard">Menu: </span>
            {viewTitles[view.value]}
          </span>
        </button>
        <p class="head-name" title={scenarioName.value}>
          {scenarioName.value}
        </p>
        <div class="head-tools">
          <HistoryButton act={undo} says={undoSays.value} word="Undo" sign="↶" />
          <HistoryButton act={redo} says={redoSays.value} word="Redo" sign="↷" />
        </div>
        <div class="head-tools menu-part" id="menu-tools">
          <button type="button" class="tool" onClick={startNew} title="Start a new field, empty">
            <span aria-hidden="true">+</span>
            <span class="tool-word">New</span>
          </button>
          <Switch
            label="Units"
            value={units.value}
            choices={[
              ["us", "in · lb"],
              ["metric", "mm · kg"],
            ]}
            onChoose={(chosen) => {
              units.value = chosen;
            }}
          />
          <label class="head-theme">
            <span class="only-heard">Colors</span>
            <select
              value={theme.value}
              onChange={(event) => {
                theme.value = event.currentTarget.value as ThemeChoice;
              }}
            >
              <option value="auto">Auto</option>
              <option value="light">Light</option>
              <option value="dark">Dark</option>
            </select>
          </label>
        </div>
      </div>
      <nav class="tabs menu-part" id="menu-views" aria-label="Views">
        {viewNames.map((name) => (
          <a
            key={name}
            href={addressOf(name)}
            aria-current={view.value === name ? "page" : undefined}
            onClick={() => (isMenuOpen.value = false)}
          >
            {viewTitles[name]}
          </a>
        ))}
      </nav>
      <WorkLine />
    </header>
  );
}

function HistoryButton({
  act,
  says,
  word,
  sign,
}: {
  act: () => void;
  says: string | null;
  word: string;
  sign: string;
}) {
  return (
    <button
      type="button"
      class="tool"
      disabled={says === null}
      onClick={act}
      title={says === null ? word : `${word}: ${says}`}
    >
      <span aria-hidden="true">{sign}</span>
      <span class="tool-word">{word}</span>
    </button>
  );
}

/** A pencil line that grows while the engine works; there only when it takes long enough to be noticed. */
function WorkLine() {
  const now = progress.value;
  const share = now === null || now.total === 0 ? 0 : now.done / now.total;
  const shown = busy.value && now !== null;
  return <div class="work-line" aria-hidden="true" style={{ transform: `scaleX(${shown ? share : 0})` }} />;
}

function Mark() {
  return (
    <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" class="mark-sign">
      <path d="M1 9h22" />
      <path d="M12 9v13M12 12c-3 0-4 2-4.5 7M12 13c3 0 4 2 4.5 5" />
      <path d="M12 9V5M12 6C11 3 9 2 7 2M12 6c1-3 3-4 5-4" />
    </svg>
  );
}
