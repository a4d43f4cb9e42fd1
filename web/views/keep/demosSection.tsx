import { demos, demoWork, type Demo } from "../../state/demos.ts";
import { isGroup, isList } from "../../state/json.ts";
import { openWork, scenarioName } from "../../state/scenarioStore.ts";
import { openingSays } from "./openFiles.ts";

/** Scenarios that come with the page. */
export function DemosSection() {
  return (
    <section class="keep-sheet">
      <h2>Demos</h2>
      <p>All invented, to try things on. Undo brings back what was here before.</p>
      <ul class="keep-demos">
        {demos.map((demo) => (
          <li key={demo.id}>
            <button
              type="button"
              aria-current={scenarioName.value === demo.name ? "true" : undefined}
              onClick={() => void openDemo(demo)}
            >
              {demo.name}
            </button>
            {isInvented(demo) && <span class="keep-mark">invented</span>}
            <p class="aside">{aboutOf(demo)}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

async function openDemo(demo: Demo): Promise<void> {
  openWork(await demoWork(demo), `open ${demo.name}`);
  openingSays.value = { text: "", isWrong: false };
}

function isInvented({ scenario }: Demo): boolean {
  return isGroup(scenario) && scenario["invented"] === true;
}

/** What its notes say, but for that it is invented. */
function aboutOf({ scenario }: Demo): string {
  const notes = isGroup(scenario) && isList(scenario["notes"]) ? scenario["notes"] : [];
  return notes.find((note): note is string => typeof note === "string" && !note.startsWith("Invented")) ?? "";
}
