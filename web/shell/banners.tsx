import { signal } from "@preact/signals";
import { leftoversIn, withoutLeftovers } from "../forms/edits/leftovers.ts";
import { openingSays } from "../views/keep/openFiles.ts";
import { goToField, leafOf } from "../views/goToField.ts";
import { forThePage, placeInWords } from "../forms/placeWords.ts";
import { LeaveOut } from "../forms/leaveOut.tsx";
import { keepingSays, leaveOtherTab, otherTab, takeOver } from "../state/keeping.ts";
import { attachments, replace, scenario } from "../state/scenarioStore.ts";
import { addressOf, view } from "../state/view.ts";
import { fault, problems, stale } from "../worker/client.ts";
import { newVersion, takeNewVersion } from "../offline/offline.ts";

/** What has to be known before anything else on the page is read. */
export function Banners() {
  return (
    <div class="banners" aria-live="polite">
      <WrongInput />
      {fault.value !== null && (
        <div class="banner banner-wrong">
          <p>A fault of ours: {fault.value}. Undo the last change, and please report what led here.</p>
        </div>
      )}
      <Leftover />
      {openingSays.value.text !== "" && view.value !== "keep" && (
        <div class={`banner${openingSays.value.isWrong ? " banner-wrong" : ""}`}>
          <p>{openingSays.value.text}</p>
          <button
            type="button"
            onClick={() => {
              openingSays.value = { text: "", isWrong: false };
            }}
          >
            Close
          </button>
        </div>
      )}
      {keepingSays.value !== null && (
        <div class="banner">
          <p>{keepingSays.value}</p>
          <button
            type="button"
            onClick={() => {
              keepingSays.value = null;
            }}
          >
            Close
          </button>
        </div>
      )}
      {otherTab.value !== null && (
        <div class="banner">
          <p>Another tab has changed its scenario, “{otherTab.value.name}”. This tab goes on with its own.</p>
          <button type="button" onClick={() => void takeOver()}>
            Take it over here
          </button>
          <button type="button" onClick={leaveOtherTab}>
            Keep mine
          </button>
        </div>
      )}
      {newVersion.value && (
        <div class="banner">
          <p>A newer rootfront is ready. Your work stays.</p>
          <button type="button" onClick={takeNewVersion}>
            Reload with it
          </button>
        </div>
      )}
    </div>
  );
}

/** Leftovers of an example that are to stay, as they were when that was said. */
const kept = signal<string | null>(null);

/** What was invented for an example stands in a field that is the example no more: one question, where it matters. */
function Leftover() {
  // Teach plays with the example as it is.
  const left = view.value === "teach" ? null : leftoversIn(scenario.value);
  if (left === null) return null;
  const said = listed(left.parts.map((part) => part.said));
  const key = `${left.example}: ${said}`;
  if (kept.value === key) return null;
  return (
    <div class="banner">
      <p>
        You changed {listed(left.differs)} of the invented example “{left.example}”. Still the example’s own:{" "}
        {said}. Take them out?
      </p>
      <button
        type="button"
        class="primary"
        onClick={() =>
          replace(withoutLeftovers(scenario.value, left), attachments.value, "take out what is the example's")
        }
      >
        Take them out
      </button>
      <button
        type="button"
        onClick={() => {
          kept.value = key;
        }}
      >
        Keep them
      </button>
    </div>
  );
}

/** @example listed(["a", "b", "c"]) // "a, b and c" */
function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function WrongInput() {
  const [first, ...more] = problems.value;
  if (first === undefined) return null;
  return (
    <div class="banner banner-wrong" role="status">
      <p>
        {stale.value && <strong>The answer below is from before this change. </strong>}
        <a
          href={addressOf(leafOf(first.field) === null ? "inputs" : "field")}
          onClick={(event) => {
            event.preventDefault();
            goToField(first);
          }}
        >
          {placeInWords(first.field, scenario.value)}
        </a>
        : expected {forThePage(first.expected)}, found {first.found}; {forThePage(first.mend)}.
        {more.length > 0 && ` (and ${more.length} more)`}
      </p>
      <LeaveOut />
    </div>
  );
}
