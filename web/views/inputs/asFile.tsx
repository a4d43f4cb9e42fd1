import { signal } from "@preact/signals";
import { useId } from "preact/hooks";
import { InputError } from "../../../src/problem.ts";
import { readJson } from "../../../src/scenario/read/readJson.ts";
import { isGroup, type Json } from "../../state/json.ts";
import { attachments, replace, scenario } from "../../state/scenarioStore.ts";
import { addressOf } from "../../state/view.ts";
import { More, Section } from "./section.tsx";

/** Text under way that is not used yet; outlives a reload of its tab. Null = the scenario as it stands. */
const draftKey = "rootfront.asFile";
const draft = signal<string | null>(storedDraft());
const said = signal("");

/** The scenario as the file that the command line reads, to be read and changed as text. */
export function FileSection() {
  return (
    <Section id="file">
      <p class="aside">
        Plants dug, soil samples, counts, strips, rows and money are part of the file too; they are entered
        under <a href={addressOf("field")}>In the field</a>.
      </p>
      <More title="The scenario as text" paths={[]} open={draft.value !== null}>
        {() => (
          <>
            <Editor />
          </>
        )}
      </More>
    </Section>
  );
}

function Editor() {
  const id = useId();
  const text = draft.value ?? JSON.stringify(scenario.value, null, 2);
  return (
    <div class="as-file">
      <label for={id}>The same file as the command line's; nothing changes until it is used.</label>
      <textarea
        id={id}
        rows={18}
        spellcheck={false}
        value={text}
        aria-invalid={said.value !== "" || undefined}
        aria-describedby={`${id}-said`}
        onInput={({ currentTarget: { value } }) => keepDraft(value)}
        onKeyDown={(event) => {
          // Here undoing is the text's own.
          if (event.ctrlKey || event.metaKey) event.stopPropagation();
        }}
      />
      <p class="field-problem" id={`${id}-said`} role="alert">
        {said.value}
      </p>
      <p class="tools">
        <button type="button" class="primary" disabled={draft.value === null} onClick={useDraft}>
          Use this text
        </button>
        <button
          type="button"
          disabled={draft.value === null}
          onClick={() => {
            said.value = "";
            keepDraft(null);
          }}
        >
          Drop the changes
        </button>
      </p>
    </div>
  );
}

function useDraft(): void {
  if (draft.value === null) return;
  try {
    const read = readJson(draft.value, "the text") as Json;
    if (!isGroup(read)) {
      said.value = "A scenario begins with { and ends with }.";
      return;
    }
    replace(read, attachments.value, "use the text");
    said.value = "";
    keepDraft(null);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    said.value = error.message;
  }
}

function keepDraft(text: string | null): void {
  draft.value = text;
  try {
    if (text === null) sessionStorage.removeItem(draftKey);
    else sessionStorage.setItem(draftKey, text);
  } catch {
    // Storage is switched off or full: the text lasts while the page is open.
  }
}

function storedDraft(): string | null {
  try {
    return sessionStorage.getItem(draftKey);
  } catch {
    return null;
  }
}
