import { saveText } from "../../pictures/kit/download.ts";
import { filesMissing, filesUsed, lastPart } from "../../state/filesNamed.ts";
import { attachments, scenario } from "../../state/scenarioStore.ts";
import { openFiles, openingSays } from "./openFiles.ts";
import { saveScenario } from "./saveScenario.ts";

/** Save the scenario and open one: the same file as the command line's. */
export function ScenarioSection() {
  const used = filesUsed(scenario.value, attachments.value);
  const names = Object.keys(used);
  const missing = filesMissing(scenario.value, attachments.value);
  return (
    <section class="keep-sheet">
      <h2>The scenario</h2>
      <p>
        Everything entered, as one file. The command line reads the same: <code>rootfront compare</code> gives
        the same answer.
      </p>
      <p class="tools">
        <button type="button" class="primary" onClick={saveScenario}>
          Save the scenario file
        </button>
        {names.map((name) => (
          <button key={name} type="button" onClick={() => saveText(lastPart(name), used[name]!, "text/csv")}>
            Save {lastPart(name)}
          </button>
        ))}
      </p>
      {names.length > 0 && (
        <p class="aside">
          The scenario names {names.map(lastPart).join(", ")}: put both into one folder, as it looks for it
          beside itself.
        </p>
      )}
      {missing.length > 0 && (
        <p class="aside">The scenario names {missing.join(", ")}, which nobody has given here yet.</p>
      )}
      <p class="tools">
        <label class="file-button">
          Open a scenario or a report
          <input
            type="file"
            multiple
            accept=".json,.html,.htm,.csv,.txt,.dly,application/json,text/html,text/csv,text/plain"
            onChange={(event) => {
              const { currentTarget } = event;
              void openFiles([...(currentTarget.files ?? [])]).then(() => {
                currentTarget.value = ""; // the same file may be chosen again
              });
            }}
          />
        </label>
      </p>
      <p class="aside">
        Or drop it anywhere here. A scenario that names a weather record: choose or drop both together. A
        report saved from here holds its scenario and opens too.
      </p>
      <p role="status" class={openingSays.value.isWrong ? "keep-said is-wrong" : "keep-said"}>
        {openingSays.value.text}
      </p>
    </section>
  );
}
