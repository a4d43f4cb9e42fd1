import { useSignal } from "@preact/signals";
import { layersOf } from "../../../forms/edits/layerEdits.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { Switch } from "../../../forms/switch.tsx";
import { groupsAt } from "../../../state/path.ts";
import { editMany, scenario } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { problemsByPath } from "../../../worker/client.ts";
import { addCore, coresPath, coresTable, removeCore, type Ring } from "./edits.ts";
import { SamplesSheet } from "./sheet.tsx";

/** Cores layer by layer, as they come off the balance. */
export function CoresEntered() {
  const layers = layersOf(scenario.value);
  const chosen = useSignal<Ring | null>(null);
  const all = layers.flatMap((_, l) => groupsAt(scenario.value, coresPath(l)));
  const ring = chosen.value ?? (all.some((core) => core["diameter"] !== undefined) ? "ring" : "volume");
  if (layers.length === 0)
    return (
      <p class="aside">
        Cores belong to layers entered one by one, and this soil is read from a table of horizons: enter its
        layers in Inputs first.
      </p>
    );
  return (
    <div class="cores">
      <p class="aside">
        Weigh each core as taken, without its ring, and again after drying at 105 °C (221 °F). Its volume
        gives the bulk density; without it the core tells water by weight only. Several cores of a layer give
        an interval.
      </p>
      <Switch
        label="Core ring given as"
        labelled
        value={ring}
        choices={[
          ["volume", "Its volume"],
          ["ring", "Diameter and length"],
        ]}
        onChoose={(value) => {
          chosen.value = value;
          // One or the other: both would be refused.
          const away = value === "ring" ? ["volume"] : ["diameter", "length"];
          const changes = layers.flatMap((_, l) =>
            groupsAt(scenario.value, coresPath(l)).flatMap((core, c) =>
              away
                .filter((key) => core[key] !== undefined)
                .map((key) => [`${coresPath(l)}[${c}].${key}`, undefined] as const),
            ),
          );
          if (changes.length > 0) editMany(changes, "chosen", "tell the ring otherwise");
        }}
      />
      {layers.map(({ name }, l) => {
        const title = typeof name === "string" ? name : `Layer ${l + 1}`;
        return (
          <fieldset key={l} class="plain-group">
            <legend>{title}</legend>
            <ProblemNote id={`field-cores-${l}`} problems={problemsByPath.value.get(coresPath(l)) ?? []} />
            <SamplesSheet
              path={coresPath(l)}
              table={coresTable(l, ring, units.value)}
              rows={groupsAt(scenario.value, coresPath(l)).length}
              title={title}
              noun="core"
              onAdd={() => addCore(scenario.value, l, layers.length)}
              remove={(row) => removeCore(scenario.value, l, row, layers.length)}
            />
          </fieldset>
        );
      })}
    </div>
  );
}
