import { useSignal } from "@preact/signals";
import { readJson } from "../../src/scenario/readJson.ts";
import { InputError } from "../../src/problem.ts";
import { saveText } from "../pictures/download.ts";
import { demos, demoWork } from "../state/demos.ts";
import type { Json } from "../state/json.ts";
import { LinkError, linkOf } from "../state/link.ts";
import { attachments, replace, scenario, scenarioName, work } from "../state/scenarioStore.ts";
import { askText } from "../worker/client.ts";
import type { TextKind } from "../worker/protocol.ts";
import { fileNameOf } from "../state/fileName.ts";
import { Cautions } from "./parts.tsx";

/** In and out: files, links, texts. */
export function KeepView() {
  const said = useSignal("");
  return (
    <>
      <h1>Keep &amp; share</h1>
      <section>
        <h2>Scenario</h2>
        <p>
          <button type="button" onClick={saveScenario}>
            Save the scenario file
          </button>{" "}
          <label class="file-button">
            Open a scenario file
            <input
              type="file"
              accept=".json,application/json"
              onChange={async (event) => {
                const [file] = event.currentTarget.files ?? [];
                if (file !== undefined) said.value = await openScenario(file);
              }}
            />
          </label>{" "}
          <button type="button" onClick={async () => (said.value = await copyLink())}>
            Copy a link
          </button>
        </p>
        <p role="status">{said.value}</p>
      </section>
      <section>
        <h2>Demos</h2>
        <ul>
          {demos.map((demo) => (
            <li key={demo.id}>
              <button type="button" onClick={async () => openDemo(await demoWork(demo), demo.name)}>
                {demo.name}
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>Results</h2>
        <p>
          <button type="button" onClick={() => keep("ledger", "text/csv")}>
            Ledger of the run shown (CSV)
          </button>{" "}
          <button type="button" onClick={() => keep("json", "application/json")}>
            Answer (JSON)
          </button>{" "}
          <button type="button" onClick={() => keep("text", "text/plain")}>
            Answer (text)
          </button>
        </p>
        <Cautions />
      </section>
    </>
  );
}

function openDemo(
  { scenario: next, attachments: files }: Awaited<ReturnType<typeof demoWork>>,
  name: string,
): void {
  replace(next, files, `open ${name}`);
}

function saveScenario(): void {
  saveText(
    `${fileNameOf(scenarioName.value)}.json`,
    `${JSON.stringify(scenario.value, null, 2)}\n`,
    "application/json",
  );
}

async function openScenario(file: File): Promise<string> {
  try {
    replace(readJson(await file.text(), file.name) as Json, attachments.value, `open ${file.name}`);
    return `${file.name} is open. Undo brings back what was here before.`;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.message;
  }
}

async function copyLink(): Promise<string> {
  try {
    const { fragment, leftOut } = await linkOf(work.value);
    await navigator.clipboard.writeText(`${location.href.split("#")[0]}${fragment}`);
    return leftOut.length === 0
      ? "The link is copied."
      : `The link is copied, without ${leftOut.join(", ")}: pass the file on too.`;
  } catch (error) {
    return error instanceof LinkError
      ? error.message
      : "This browser does not let a page copy: save the scenario file instead.";
  }
}

async function keep(what: TextKind, type: string): Promise<void> {
  const { text, fileName } = await askText(what);
  saveText(fileName, text, type);
}
