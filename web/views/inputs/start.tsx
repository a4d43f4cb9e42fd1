import { coredWater } from "../../forms/edits/coredWater.ts";
import { alternatives } from "../../../src/scenario/fields/facts/alternatives.ts";
import { fieldsOf, type GroupProps } from "../../forms/fieldsOf.ts";
import { Field } from "../../forms/field.tsx";
import { layersOf } from "../../forms/edits/layerEdits.ts";
import { DefaultNote, ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { changeWay } from "../../forms/edits/alternatives.ts";
import { Switch } from "../../forms/switch.tsx";
import { scenario, valueAt } from "../../state/scenarioStore.ts";
import { addressOf, units } from "../../state/view.ts";
import { DiggingCaution } from "./caution.tsx";
import { Fields, Section } from "./section.tsx";

type Way = "unknown" | "share" | "probe" | "layers" | "cores";

const waterForms = "22 % by weight, 27 % by volume, 1.2 in available or 40 % of available";

export function StartSection() {
  const layers = layersOf(scenario.value);
  const start = "soil.startingWater";
  const hasWater = layers.some((layer) => layer["water"] !== undefined);
  const { isWeighed, hasBelow } = coredWater(scenario.value);
  const way: Way =
    valueAt(`${start}.from`) !== undefined
      ? "cores"
      : valueAt(`${start}.moistDepth`) !== undefined || valueAt(`${start}.shareBelow`) !== undefined
        ? "probe"
        : valueAt(`${start}.share`) !== undefined
          ? "share"
          : hasWater
            ? "layers"
            : "unknown";
  const waters = layers.map((_, l) => `soil.layers[${l}].water`);
  const choose = (wanted: Way) => {
    const all = [start, ...waters];
    const us = units.value === "us";
    if (wanted === "unknown")
      return changeWay([...all, "soil.waterMeasured"], [], "leave the water at the start out");
    if (wanted === "layers") {
      return changeWay(
        [start],
        waters.map((path) => [path, "50 % of available"] as const),
        "give the water layer by layer",
      );
    }
    const starts = {
      share: [[`${start}.share`, "50 %"]],
      probe: [
        [`${start}.moistDepth`, us ? "30 in" : "750 mm"],
        [`${start}.shareBelow`, "20 %"],
      ],
      cores: [[`${start}.from`, "cores"], ...(hasBelow ? [[`${start}.shareBelow`, "50 %"] as const] : [])],
    }[wanted] as readonly (readonly [path: string, start: string])[];
    changeWay(
      all
        .filter((path) => path !== start)
        .concat(["share", "moistDepth", "shareBelow", "from"].map((key) => `${start}.${key}`))
        .filter((path) => !starts.some(([own]) => own === path)),
      starts,
      "say the water at the start otherwise",
    );
  };
  const place = fieldState(start, `${start}.share`);
  return (
    <Section id="start">
      <p class="aside">
        What the subsoil holds when the run begins decides what deeper roots are worth. A probe or a core says
        more than anything else on this page.
      </p>
      <Switch
        label="How it is known"
        labelled
        value={way}
        choices={[
          ["unknown", "Not known"],
          ["share", "A share everywhere"],
          ["probe", "By push probe"],
          ...(layers.length > 0 ? ([["layers", "Layer by layer"]] as const) : []),
          ...(isWeighed || way === "cores" ? ([["cores", "From cores"]] as const) : []),
        ]}
        onChoose={choose}
      />
      <ProblemNote id="inputs-start-wrong" problems={place.problems} />
      {way === "unknown" && <DefaultNote id="inputs-start-default" place={place} />}
      {way === "share" && (
        <Fields>
          <ShareField path={start} />
        </Fields>
      )}
      {way === "probe" && (
        <Fields>
          <ProbeFields path={start} />
        </Fields>
      )}
      {way === "cores" && (
        <>
          <ProblemNote id="inputs-start-from-wrong" problems={fieldState(`${start}.from`).problems} />
          <p class="aside">
            As the cores tell that were weighed, under{" "}
            <a href={addressOf("field", { leaf: "samples" })}>In the field</a>, Soil samples.
          </p>
          {hasBelow && (
            <Fields>
              <Field
                path={`${start}.shareBelow`}
                label="Below the deepest core"
                hint="Share of the available water"
              />
            </Fields>
          )}
        </>
      )}
      {way === "layers" && (
        <Fields>
          {layers.map(({ name }, l) => (
            <Field
              key={l}
              path={waters[l]!}
              label={typeof name === "string" ? name : `Layer ${l + 1}`}
              hint={waterForms}
            />
          ))}
        </Fields>
      )}
      {way !== "unknown" && (
        <Fields>
          <Field
            path="soil.waterMeasured"
            label="Measured on"
            hint="Mar 12; runs then begin on that day"
            otherwise="the day the run begins"
          />
        </Fields>
      )}
      <DiggingCaution />
    </Section>
  );
}

/** Of the base or of a case. */
export function ShareField(group: GroupProps) {
  const field = fieldsOf(group, alternatives.startingWater);
  return <Field {...field("share")} hint="Everywhere: 0 % is wilting point, 100 % field capacity" />;
}

/** Of the base or of a case, which takes none of the base's probe: a case's water at the start replaces it as a whole. */
export function ProbeFields({ path }: GroupProps) {
  const field = fieldsOf({ path }, alternatives.startingWater);
  return (
    <>
      <Field {...field("moistDepth")} hint="As deep as the probe goes in by hand" />
      <Field {...field("shareBelow")} hint="Share of the available water" />
    </>
  );
}
