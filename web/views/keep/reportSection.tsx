import { useSignal } from "@preact/signals";
import { answer, askText } from "../../worker/client.ts";
import { printReport } from "./printReport.ts";
import { saveReport } from "./saveReport.ts";

/** The report: to print, or as a file that is enough to go on with. */
export function ReportSection() {
  const said = useSignal("");
  const print = async () => {
    said.value = "Writing the report …";
    const { text } = await askText("report");
    printReport(text);
    said.value = "";
  };
  const isReady = answer.value !== null;
  return (
    <section class="keep-sheet">
      <h2>The report</h2>
      <p>
        Question, soil, roots, answer, method, limits and sources on two sides of paper, for the grower’s
        folder. As a file it holds the scenario as well: open it here again, or pass it on.
      </p>
      <p class="tools">
        <button type="button" class="primary" disabled={!isReady} onClick={() => void print()}>
          Print the report
        </button>
        <button
          type="button"
          disabled={!isReady}
          onClick={async () => {
            said.value = "Writing the report …";
            said.value = `${await saveReport()} is saved.`;
          }}
        >
          Save the report (one HTML page)
        </button>
      </p>
      <p role="status" class="keep-said">
        {said.value}
      </p>
    </section>
  );
}
