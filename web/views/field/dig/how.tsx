import { Field } from "../../../forms/field.tsx";
import { layersOf } from "../../../forms/edits/layerEdits.ts";
import { Switch } from "../../../forms/switch.tsx";
import { edit, scenario, valueAt } from "../../../state/scenarioStore.ts";
import { problemsByPath, resolved } from "../../../worker/client.ts";
import { ProblemNote } from "../../../forms/notes.tsx";

/** What is made of the plants: pairs, what is fitted, and whether it goes into the answer. */
export function HowFitted() {
  const limit = valueAt("evidence.fit") === "penetration limit";
  return (
    <fieldset class="plain-group dig-how">
      <legend>What is made of them</legend>
      <Switch
        label="The dig decides in the answer"
        labelled
        value={valueAt("evidence.digDecides") === false ? "no" : "yes"}
        choices={[
          ["yes", "Yes"],
          ["no", "No, it is shown only"],
        ]}
        onChoose={(value) =>
          edit(
            "evidence.digDecides",
            value === "no" ? false : undefined,
            "chosen",
            value === "no" ? "show the dig only" : "let the dig decide",
          )
        }
      />
      <p class="aside">
        If yes, the value fitted to the plants replaces density or penetrometer in every run, and its interval
        goes into water, yield and money.
      </p>
      <ProblemNote id="field-dig-decides" problems={problemsByPath.value.get("evidence.digDecides") ?? []} />
      <div class="field-grid">
        <Field
          path="evidence.plantsPaired"
          label="Plants are in pairs"
          hint="The first plant of each column stood beside the first of the others, and so on"
        />
        <Field
          path="evidence.fit"
          label="What is fitted"
          hint="The dense layer's passage for roots, or the penetrometer reading at which they stop"
        />
        {!limit && (
          <Field path="evidence.denseLayer" label="Dense layer" choices={layerNames()} none="slows most" />
        )}
        <Field
          path="evidence.confidence"
          label="Confidence of intervals"
          hint="Of every interval on this page"
        />
      </div>
    </fieldset>
  );
}

/** As written; a soil read from a table of horizons has those of the engine's reading. */
function layerNames(): readonly string[] {
  const names = layersOf(scenario.value).flatMap(({ name }) => (typeof name === "string" ? [name] : []));
  return names.length > 0 ? names : (resolved.value?.cases[0]?.layers ?? []).map(({ name }) => name);
}
