import { redo, redoSays, scenarioName, undo, undoSays } from "../state/scenarioStore.ts";
import { addressOf, theme, units, view, viewNames, viewTitles, type ThemeChoice } from "../state/view.ts";
import { busy, progress } from "../worker/client.ts";
import { Switch } from "../forms/switch.tsx";
import { startNew } from "../views/wayIn/give.ts";

export function Header() {
  return (
    <header class="head">
      <div class="head-row">
        <a class="mark" href={addressOf("answer")}>
          <Mark />
          rootfront
        </a>
        <p class="head-name" title={scenarioName.value}>
          {scenarioName.value}
        </p>
        <div class="head-tools">
          <button type="button" class="tool" onClick={startNew} title="Start a new field, empty">
            <span aria-hidden="true">+</span>
            <span class="tool-word">New</span>
          </button>
          <HistoryButton act={undo} says={undoSays.value} word="Undo" sign="↶" />
          <HistoryButton act={redo} says={redoSays.value} word="Redo" sign="↷" />
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
      <nav class="tabs" aria-label="Views">
        {viewNames.map((name) => (
          <a key={name} href={addressOf(name)} aria-current={view.value === name ? "page" : undefined}>
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
