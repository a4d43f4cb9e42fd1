import { useSignal } from "@preact/signals";
import { runSaid } from "../../../src/report/tables/runSaid.ts";
import { saveText } from "../../pictures/kit/download.ts";
import { addressOf, units } from "../../state/view.ts";
import { answer, askText, season } from "../../worker/client.ts";
import type { TextKind } from "../../worker/protocol.ts";

const kinds = [
  ["json", "Answer (JSON)", "application/json"],
  ["text", "Answer (text)", "text/plain"],
  ["check", "The scenario in words", "text/plain"],
  ["ledger", "Ledger of the run shown (CSV)", "text/csv"],
] as const satisfies readonly (readonly [TextKind, string, string])[];

/** Results as files, the same as the command line writes. */
export function ResultsSection() {
  const said = useSignal("");
  const run = season.value;
  const isReady = answer.value !== null;
  return (
    <section class="keep-sheet">
      <h2>Results as files</h2>
      <p>The same as the command line writes, in the units chosen above.</p>
      <p class="tools">
        {kinds.map(([what, words, type]) => (
          <button
            key={what}
            type="button"
            disabled={!isReady}
            onClick={async () => {
              const { text, fileName, said: which } = await askText(what);
              saveText(fileName, text, type);
              said.value = `${fileName} is saved: ${which}.`;
            }}
          >
            {words}
          </button>
        ))}
      </p>
      {run !== null && (
        <p class="aside">
          The ledger is of {runSaid(run.run, run, run.rainTotalMm, units.value)}: the one on the{" "}
          <a href={addressOf("pit")}>pit wall</a>, where another can be chosen. Each picture, in whichever
          view, has PNG and SVG under it.
        </p>
      )}
      <p role="status" class="keep-said">
        {said.value}
      </p>
    </section>
  );
}
