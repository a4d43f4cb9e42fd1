import { useSignal } from "@preact/signals";
import { kinds } from "../../../../src/quantity/kinds.ts";
import { layersOf } from "../../../forms/edits/layerEdits.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { Switch } from "../../../forms/switch.tsx";
import { editMany, scenario } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { problemsByPath } from "../../../worker/client.ts";
import { addCore, coresPath, removeCore, rowsAt, type Column } from "./edits.ts";
import { Sheet } from "./sheet.tsx";

type Ring = "volume" | "ring";

/** Cores layer by layer, as they come off the balance. */
export function CoresEntered() {
  const layers = layersOf(scenario.value);
  const chosen = useSignal<Ring | null>(null);
  const all = layers.flatMap((_, l) => rowsAt(scenario.value, coresPath(l)));
  const ring = chosen.value ?? (all.some((core) => core["diameter"] !== undefined) ? "ring" : "volume");
  if (layers.length === 0)
    return (
      <p class="aside">
        Cores go with layers described one by one. This soil is read from a table of horizons: describe it by
        layers in Inputs to enter cores.
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
        label="The ring is known by"
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
            rowsAt(scenario.value, coresPath(l)).flatMap((core, c) =>
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
            <Sheet
              path={coresPath(l)}
              title={title}
              noun="core"
              columns={columnsOf(ring)}
              onAdd={() => addCore(scenario.value, l, layers.length)}
              onRemove={(row) => removeCore(scenario.value, l, row, layers.length)}
            />
          </fieldset>
        );
      })}
    </div>
  );
}

function columnsOf(ring: Ring): readonly Column[] {
  const mass = kinds.sampleMass[units.value].unit;
  const depth = kinds.depth[units.value].unit;
  return [
    { key: "wetMass", word: "Wet", unit: mass },
    { key: "dryMass", word: "Dry", unit: mass, needed: true },
    ...(ring === "volume"
      ? [{ key: "volume", word: "Volume", unit: kinds.sampleVolume[units.value].unit }]
      : [
          { key: "diameter", word: "Diameter", unit: depth },
          { key: "length", word: "Length", unit: depth },
        ]),
    { key: "stoneMass", word: "Stones", unit: mass },
  ];
}
