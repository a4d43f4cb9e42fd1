import { readingUse } from "../../../../src/evidence/samples/penetrometer.ts";
import { Field } from "../../../forms/field.tsx";
import { ProblemNote } from "../../../forms/notes.tsx";
import { groupsAt } from "../../../state/path.ts";
import { scenario } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { problemsByPath, resolved } from "../../../worker/client.ts";
import { addReading, logPath, readingsPath, readingsTable, removeReading } from "./edits.ts";
import { SamplesSheet } from "./sheet.tsx";

/** A penetrometer log: depth by depth, and how wet the soil was. */
export function PushesEntered() {
  const rows = groupsAt(scenario.value, readingsPath).length;
  const share = resolved.value?.cases[0]?.samples.log?.wetnessShare ?? null;
  return (
    <div class="pushes">
      <p class="aside">
        Push slowly, a day or two after a soaking, and write down the dial every few inches. You can enter
        several pushes. A layer without a reading of its own gets the mean of those within it.
      </p>
      <ProblemNote id="field-log-wrong" problems={problemsByPath.value.get(readingsPath) ?? []} />
      <SamplesSheet
        path={readingsPath}
        table={readingsTable(units.value)}
        rows={rows}
        title="penetrometer log"
        noun="reading"
        onAdd={() => addReading(scenario.value)}
        remove={(row) => removeReading(scenario.value, row)}
      />
      {rows > 0 && (
        <div class="field-grid">
          <Field
            path={`${logPath}.wetness`}
            label="How wet the soil was"
            hint='"dry", "moist", "wet", or a share of the available water such as "60 %"'
            otherwise="not told, taken as near field capacity"
          />
        </div>
      )}
      {rows > 0 && share !== null && readingUse(share) === "not used" && (
        <p class="caution">
          Dry soil reads hard whether it is dense or not: these readings are not used for roots. Push again a
          day or two after a soaking.
        </p>
      )}
      {rows > 0 && share !== null && readingUse(share) === "with a warning" && (
        <p class="caution">
          The soil was drier than it should be for this, so the dial may read higher than what roots meet
          after a soaking.
        </p>
      )}
    </div>
  );
}
