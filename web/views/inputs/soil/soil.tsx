import { Field } from "../../../forms/field.tsx";
import { addLayer, layersOf } from "../../../forms/edits/layerEdits.ts";
import type { GroupProps } from "../../../forms/fieldsOf.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { changeWay } from "../../../forms/edits/alternatives.ts";
import { Switch } from "../../../forms/switch.tsx";
import { attachments, replace, scenario, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { HorizonsForm } from "./horizons.tsx";
import { LayerForm } from "./layer.tsx";
import { Fields, More, Section } from "../section.tsx";

const firstLayers = [{ name: "layer 1", thickness: "48 in", texture: "silt loam" }];

export function SoilSection() {
  const byFile = valueAt("soil.horizons") !== undefined;
  return (
    <Section id="soil">
      <Switch
        label="Where the layers come from"
        labelled
        value={byFile ? "file" : "layers"}
        choices={[
          ["layers", "Layers given here"],
          ["file", "A survey's or laboratory's file"],
        ]}
        onChoose={(way) =>
          way === "file"
            ? changeWay(["soil.layers"], [["soil.horizons", { file: "" }]], "take the soil from a file")
            : changeWay(["soil.horizons"], [["soil.layers", firstLayers]], "give the layers here")
        }
      />
      <ProblemNote
        id="inputs-soil-wrong"
        problems={[...fieldState("soil").problems, ...fieldState("soil.layers").problems]}
      />
      {byFile ? <HorizonsForm /> : <Layers />}
      <More
        title="What ends the soil, and how it is cut"
        paths={["soil.restriction", "soil.hydrologicGroup", "soil.sliceThickness"]}
      >
        {() => (
          <>
            <Fields>
              <SoilEndFields path="soil" />
              <Field path="soil.sliceThickness" label="Thickest slice" hint="For the calculation" />
            </Fields>
          </>
        )}
      </More>
    </Section>
  );
}

/** What ends the soil, and its hydrologic group; of the base or of a case. */
export function SoilEndFields({ path, inherited }: GroupProps) {
  const isCase = inherited !== undefined;
  const isEnded = valueAt(`${path}.restriction`) !== undefined;
  const unended = isEnded ? undefined : "the last layer's lower edge";
  return (
    <>
      <Field
        path={`${path}.restriction.depth`}
        label="Soil ends at"
        hint="For roots and for water"
        otherwise={isCase ? inherited("restriction.depth") : unended}
      />
      <Field
        path={`${path}.restriction.kind`}
        label="What lies there"
        none={isCase ? "as in the rest" : "nothing"}
      />
      <Field
        path={`${path}.hydrologicGroup`}
        label="Hydrologic group"
        none={isCase ? "as in the rest" : "worked out"}
      />
    </>
  );
}

function Layers() {
  const layers = layersOf(scenario.value);
  return (
    <>
      <p class="aside">
        From the surface down, to the depth that roots might reach. Say how deep each goes by its lower edge
        or its thickness.
      </p>
      {layers.map((_, index) => (
        <LayerForm key={index} index={index} />
      ))}
      <p class="tools">
        <button
          type="button"
          onClick={() => replace(addLayer(scenario.value, units.value), attachments.value, "add a layer")}
        >
          Add a layer below
        </button>
      </p>
    </>
  );
}
