import { saveText } from "../../pictures/kit/download.ts";
import { fileNameOf } from "../../state/fileName.ts";
import { lastPart } from "../../state/filesNamed.ts";
import type { Json } from "../../state/json.ts";
import { getAt, setAt } from "../../state/path.ts";
import { scenario, scenarioName } from "../../state/scenarioStore.ts";

/** The scenario as a file, the same as the command line reads. */
export function saveScenario(): void {
  const written = besideItself(scenario.value);
  saveText(
    `${fileNameOf(scenarioName.value)}.json`,
    `${JSON.stringify(written, null, 2)}\n`,
    "application/json",
  );
}

/** Saved files land in one folder: a record that was named with its folder is named without it. */
function besideItself(written: Json): Json {
  return ["weather.record", "soil.horizons.file"].reduce((next, path) => {
    const name = getAt(next, path);
    return typeof name === "string" && lastPart(name) !== name ? setAt(next, path, lastPart(name)) : next;
  }, written);
}
