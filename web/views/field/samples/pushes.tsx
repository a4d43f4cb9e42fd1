import { readingUse } from "../../../../src/evidence/samples/penetrometer.ts";
import { kinds } from "../../../../src/quantity/kinds.ts";
import { Field } from "../../../forms/field.tsx";
import { ProblemNote } from "../../../forms/notes.tsx";
import { scenario } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { problemsByPath, resolved } from "../../../worker/client.ts";
import { addReading, logPath, readingsPath, removeReading, rowsAt } from "./edits.ts";
import { Sheet } from "./sheet.tsx";

/** A penetrometer log: depth by depth, and how wet the soil was. */
export function PushesEntered() {
  const has = rowsAt(scenario.value, readingsPath).length > 0;
  const share = resolved.value?.cases[0]?.samples.log?.wetnessShare ?? null;
  return (
    <div class="pushes">
      <p class="aside">
        Push slowly, a day or two after a soaking, and write down the dial every few inches. Several pushes
        may be put together. A layer that types no reading of its own gets the mean of those within it.
      </p>
      <ProblemNote id="field-log-wrong" problems={problemsByPath.value.get(readingsPath) ?? []} />
      <Sheet
        path={readingsPath}
        title="penetrometer log"
        noun="reading"
        columns={[
          { key: "depth", word: "Depth", unit: kinds.depth[units.value].unit, needed: true },
          { key: "resistance", word: "Dial", unit: kinds.resistance[units.value].unit, needed: true },
        ]}
        onAdd={() => addReading(scenario.value)}
        onRemove={(row) => removeReading(scenario.value, row)}
      />
      {has && (
        <div class="field-grid">
          <Field
            path={`${logPath}.wetness`}
            label="How wet the soil was"
            hint='"dry", "moist", "wet", or a share of the available water such as "60 %"'
            otherwise="not told, taken as near field capacity"
          />
        </div>
      )}
      {has && share !== null && readingUse(share) === "not used" && (
        <p class="caution">
          Dry soil reads hard whether it is dense or not: these readings are not used for roots. Push again a
          day or two after a soaking.
        </p>
      )}
      {has && share !== null && readingUse(share) === "with a warning" && (
        <p class="caution">
          The soil was drier than it should be for this, so the dial may read higher than what roots meet
          after a soaking.
        </p>
      )}
    </div>
  );
}
