import { useSignal } from "@preact/signals";
import { saveText } from "../../pictures/kit/download.ts";
import { answer, askText } from "../../worker/client.ts";
import { printReport } from "./printReport.ts";

/** The report: to print, or as a file that is enough to go on with. */
export function ReportSection() {
  const said = useSignal("");
  const make = async (then: (text: string, fileName: string) => string) => {
    said.value = "Writing the report …";
    const { text, fileName } = await askText("report");
    said.value = then(text, fileName);
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
        <button
          type="button"
          class="primary"
          disabled={!isReady}
          onClick={() =>
            void make((text) => {
              printReport(text);
              return "";
            })
          }
        >
          Print the report
        </button>
        <button
          type="button"
          disabled={!isReady}
          onClick={() =>
            void make((text, fileName) => {
              saveText(fileName, text, "text/html");
              return `${fileName} is saved.`;
            })
          }
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
