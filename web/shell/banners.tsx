import { goToField, leafOf } from "../views/goToField.ts";
import { forThePage, placeInWords } from "../forms/placeWords.ts";
import { LeaveOut } from "../forms/leaveOut.tsx";
import { keepingSays, leaveOtherTab, otherTab, takeOver } from "../state/keeping.ts";
import { scenario } from "../state/scenarioStore.ts";
import { addressOf } from "../state/view.ts";
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

function WrongInput() {
  const [first, ...more] = problems.value;
  if (first === undefined) return null;
  return (
    <div class="banner banner-wrong" role="status">
      <p>
        {stale.value && <strong>The answer below is that of the last scenario that could be read. </strong>}
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
