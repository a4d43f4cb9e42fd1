import { useRef } from "preact/hooks";
import { alternatives } from "../../../../src/scenario/fields/facts/alternatives.ts";
import { sayQuantity } from "../../../../src/quantity/sayQuantity.ts";
import { Field } from "../../../forms/field.tsx";
import { joinLayers, layersOf, namedIn, removeLayer, splitLayer } from "../../../forms/edits/layerEdits.ts";
import { problemsWithin } from "../../../forms/place.tsx";
import { fieldsOf, type GroupProps } from "../../../forms/fieldsOf.ts";
import type { Json } from "../../../state/json.ts";
import { attachments, replace, scenario, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { resolved } from "../../../worker/client.ts";
import type { LayerShown } from "../../../worker/protocol.ts";
import { DensityRuler } from "./densityRuler.tsx";
import type { Decides } from "../densityWords.ts";
import { otherWay } from "../../../forms/edits/alternatives.ts";
import { Fields, More } from "../section.tsx";

/** A layer as the engine last read it; null while it cannot be told which that is. */
export function layerShown(index: number, caseIndex = 0): LayerShown | null {
  const layer = resolved.value?.cases[caseIndex]?.layers[index];
  const name = valueAt(`soil.layers[${index}].name`);
  return layer !== undefined && (layer.name === name || problemsWithin("soil.layers").length === 0)
    ? layer
    : null;
}

/** One layer of the soil. */
export function LayerForm({ index }: { index: number }) {
  const path = `soil.layers[${index}]`;
  const shown = layerShown(index);
  const name = valueAt(`${path}.name`);
  const title = typeof name === "string" && name !== "" ? name : `Layer ${index + 1}`;
  return (
    <fieldset class="layer" data-path={path}>
      <legend>
        {title}
        {shown !== null && <span class="layer-where"> {whereOf(shown)}</span>}
      </legend>
      <LayerFields path={path} index={index} shown={shown} name={<LayerName index={index} />} />
      <LayerTools index={index} title={title} />
    </fieldset>
  );
}

/** `6 to 10 in, silt loam` */
export function whereOf({ topMm, bottomMm, texture }: LayerShown): string {
  const bottom = sayQuantity(bottomMm, "depth", units.value);
  const top = sayQuantity(topMm, "depth", units.value).replace(/ \D+$/, "");
  return `${top} to ${bottom}, ${texture}`;
}

interface LayerFieldsProps extends GroupProps {
  readonly index: number;
  readonly shown: LayerShown | null;
  readonly name?: preact.ComponentChildren;
  /** What goes along with writing a key; in a case, the layer's name. */
  readonly along?: (key: string, value: Json | undefined) => readonly (readonly [string, Json | undefined])[];
}

const ofEarth = ["sand", "clay", "organicMatter", "thickness"];
const ofProbe = ["penetrationResistance", "structure", "openShare"];
const measured = [
  "gravelVolume",
  "gravelMass",
  "fieldCapacity",
  "wiltingPoint",
  "availableWater",
  "saturation",
  "saturatedConductivity",
];

/** The fields of a layer, of the base or of a case. Saying one thing takes out the other way of saying it. */
export function LayerFields({ path, index, shown, name, along, inherited }: LayerFieldsProps) {
  const at = (key: string) => `${path}.${key}`;
  const base = `soil.layers[${index}]`;
  const ofGroup = fieldsOf({ path, inherited }, alternatives.layer);
  const field = (key: string) => {
    const usual = ofGroup(key);
    return {
      ...usual,
      defaultPath: `${base}.${key}`,
      also: (value: Json | undefined) => [...usual.also(value), ...(along?.(key, value) ?? [])],
    };
  };
  const otherEdge = (key: "bottom" | "thickness") => alternatives.layer[key][0]!;
  /** An edge taken out by a slip in the thickness comes back when that is emptied again, and the other way round. */
  const edgeField = (key: "bottom" | "thickness") => ({
    ...field(key),
    also: (value: Json | undefined) => [
      ...otherWay(at(otherEdge(key)), value),
      ...(along?.(key, value) ?? []),
    ],
  });
  const derived = (key: "bottom" | "thickness") =>
    shown === null || valueAt(at(otherEdge(key))) === undefined
      ? inherited?.(key)
      : `${sayQuantity(key === "bottom" ? shown.bottomMm : shown.bottomMm - shown.topMm, "depth", units.value)}, worked out`;
  const byShares = valueAt(at("sand")) !== undefined || valueAt(at("clay")) !== undefined;
  return (
    <>
      <Fields>
        {name}
        <Field {...edgeField("bottom")} otherwise={derived("bottom")} hint="Depth of its lower edge" />
        <Field
          {...field("texture")}
          none={byShares ? "by sand and clay" : along === undefined ? "choose" : "as in the rest"}
        />
      </Fields>
      <More title="Sand, clay, organic matter, thickness" paths={ofEarth.map(at)}>
        {() => (
          <Fields>
            <Field {...field("sand")} hint="Of the fine earth, by weight" />
            <Field {...field("clay")} hint="Of the fine earth, by weight" />
            <Field {...field("organicMatter")} hint="By weight" />
            <Field
              {...edgeField("thickness")}
              otherwise={derived("thickness")}
              hint="Instead of the lower edge"
            />
          </Fields>
        )}
      </More>
      <Fields title="What holds roots back">
        <div class="with-ruler">
          <Field {...field("bulkDensity")} hint="A core at field capacity: 1.42 g/cm^3 or 88 lb/ft^3" />
          {shown !== null && along === undefined && (
            <DensityRuler layer={shown} path={at("bulkDensity")} decides={decidesIn(at)} />
          )}
        </div>
        <Field
          {...field("origin")}
          hint="Half of the roots find cracks in dense natural soil, few in a pan or a track"
        />
      </Fields>
      <More title="Penetrometer, cracks and old root channels" paths={ofProbe.map(at)}>
        {() => (
          <Fields>
            <Field
              {...field("penetrationResistance")}
              hint="Or by penetrometer near field capacity: 300 psi or 2.1 MPa. It takes the density's place."
            />
            <Field
              {...field("structure")}
              hint="For a penetrometer reading: how hard a soil roots still get through"
            />
            <Field {...field("openShare")} hint="Roots that find cracks and old root channels" />
          </Fields>
        )}
      </More>
      <More title="Stones and measured water limits" paths={measured.map(at)}>
        {() => (
          <>
            <Fields>
              <Field {...field("gravelVolume")} hint="Larger than 2 mm, of the whole volume" />
              <Field {...field("gravelMass")} hint="Or of the whole mass" />
              <Field {...field("fieldCapacity")} hint="Of the whole volume: 31 % or 3.7 in/ft" />
              <Field {...field("wiltingPoint")} hint="Of the whole volume" />
              <Field {...field("availableWater")} hint="Where only the two's difference is known" />
              <Field {...field("saturation")} hint="Of the whole volume" />
              <Field {...field("saturatedConductivity")} hint="0.5 in/h or 9 um/s" />
            </Fields>
          </>
        )}
      </More>
    </>
  );
}

/** Without a reading or a density, of its own or by cores, the model lets roots pass. */
function decidesIn(at: (key: string) => string): Decides {
  if (valueAt(at("penetrationResistance")) !== undefined) return "penetrometer";
  return ["bulkDensity", "cores"].some((key) => valueAt(at(key)) !== undefined) ? "density" : "nothing";
}

/** Cases refer to a layer by its name: they follow. Which ones is settled as the field is entered, so that no half-typed name counts. */
function LayerName({ index }: { index: number }) {
  const followers = useRef<readonly string[]>([]);
  const path = `soil.layers[${index}].name`;
  return (
    <div
      onFocusCapture={() => {
        const name = valueAt(path);
        followers.current = typeof name === "string" ? namedIn(scenario.value, name) : [];
      }}
    >
      <Field
        path={path}
        label="Name"
        also={(value) => followers.current.map((one) => [one, value ?? ""] as const)}
      />
    </div>
  );
}

function LayerTools({ index, title }: { index: number; title: string }) {
  const count = layersOf(scenario.value).length;
  const [own, next] = [layerShown(index), layerShown(index + 1)];
  const sound = problemsWithin("soil.layers").length === 0;
  const change = (next: Json, said: string) => replace(next, attachments.value, said);
  return (
    <p class="tools">
      <button
        type="button"
        class="small"
        disabled={!sound || own === null}
        onClick={() => own && change(splitLayer(scenario.value, index, own, units.value), `split ${title}`)}
      >
        Split in two
      </button>
      {index + 1 < count && (
        <button
          type="button"
          class="small"
          disabled={!sound || own === null || next === null}
          onClick={() =>
            own &&
            next &&
            change(joinLayers(scenario.value, index, own, next, units.value), `join ${title} with the next`)
          }
        >
          Join with the next
        </button>
      )}
      <button
        type="button"
        class="small"
        disabled={count < 2}
        onClick={() => change(removeLayer(scenario.value, index), `remove ${title}`)}
      >
        Remove
      </button>
      {!sound && <span class="tools-why">Mend the layers first to split or join them.</span>}
    </p>
  );
}
