import { useSignal } from "@preact/signals";
import { useEffect, useId } from "preact/hooks";
import { filesUsed } from "../../state/filesNamed.ts";
import { isOwnMachine, LinkError, linkOf, longestLink, type MadeLink } from "../../state/link.ts";
import { work } from "../../state/scenarioStore.ts";
import { addressOf } from "../../state/view.ts";
import { saveReport } from "./saveReport.ts";
import { saveScenario } from "./saveScenario.ts";
import { answer } from "../../worker/client.ts";

/** The scenario as a link: how long it is, what it leaves out, and the link itself for those who copy by hand. */
export function LinkSection() {
  const id = useId();
  const made = useSignal<MadeLink | LinkError | null>(null);
  const said = useSignal("");
  const now = work.value;
  useEffect(() => {
    let isWanted = true;
    said.value = "";
    const whole = { ...now, attachments: filesUsed(now.scenario, now.attachments) };
    void linkOf(whole)
      .catch((error: unknown) => {
        if (error instanceof LinkError) return error;
        throw error;
      })
      .then((link) => {
        if (isWanted) made.value = link;
      });
    return () => {
      isWanted = false;
    };
  }, [now]);
  const link = made.value;
  return (
    <section class="keep-sheet">
      <h2>A link</h2>
      {isOwnMachine(location) ? (
        <OnlyHere />
      ) : (
        <p>
          The whole scenario in an address, to be sent on. Only those who get the link can see what is in it.
        </p>
      )}
      {link instanceof LinkError && <p class="keep-said is-wrong">{link.message}</p>}
      {link !== null && !(link instanceof LinkError) && (
        <>
          <p class="tools">
            <button type="button" onClick={async () => (said.value = await copied(addressFor(link)))}>
              Copy a link
            </button>
            <span role="status" class="keep-said">
              {said.value}
            </span>
          </p>
          <label for={id} class="keep-label">
            The link{isOwnMachine(location) && ", for this machine only"},{" "}
            {addressFor(link).length.toLocaleString("en")} characters
            {isLong(link) && ": some mail and chat programs cut so long a one off"}
          </label>
          <input
            id={id}
            type="text"
            class="keep-link"
            readOnly
            value={addressFor(link)}
            onFocus={(event) => event.currentTarget.select()}
          />
          {link.leftOut.length > 0 && (
            <p class="keep-left-out">
              Without {link.leftOut.join(", ")}, too long for a link (at most{" "}
              {longestLink.toLocaleString("en")} characters): send that file too, to be dropped on this view,
              or save the report, which holds both.
            </p>
          )}
        </>
      )}
    </section>
  );
}

/** What takes the work elsewhere while a link does not. */
function OnlyHere() {
  return (
    <div class="keep-only-here">
      <p>
        <strong>Only this machine can open a link from here:</strong> the page runs at the machine’s own
        address, {location.host === "" ? "a file on its disk" : location.host}. To a phone or to someone else,
        send a file; rootfront opens both of these there:
      </p>
      <p class="tools">
        <button type="button" onClick={saveScenario}>
          The scenario as a file
        </button>
        <button type="button" disabled={answer.value === null} onClick={() => void saveReport()}>
          The report, with its pictures
        </button>
      </p>
      <p class="aside">
        Or send a picture: PNG under each one, such as on the <a href={addressOf("pit")}>pit wall</a>. Once
        the page is put where others reach it, a link from there opens for them too.
      </p>
    </div>
  );
}

/** From here on it is said that a link may be cut off on its way. */
const longForMail = 2000;

function isLong(link: MadeLink): boolean {
  return addressFor(link).length > longForMail;
}

function addressFor({ fragment }: MadeLink): string {
  return `${location.href.split("#")[0]}${fragment}`;
}

async function copied(address: string): Promise<string> {
  try {
    await navigator.clipboard.writeText(address);
    return "The link is copied.";
  } catch {
    return "This browser does not let a page copy: select the link below and copy it.";
  }
}
