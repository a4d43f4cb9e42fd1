import { useId } from "preact/hooks";
import { cropNames } from "../../../src/crop/crops.ts";
import { Field } from "../../forms/field.tsx";
import type { GroupProps } from "../../forms/fieldsOf.ts";
import { editMany, scenario, valueAt } from "../../state/scenarioStore.ts";
import { lineChoiceNames } from "../../../src/crop/yield/yieldLines.ts";
import { rotationWay } from "../../forms/edits/rotationEdits.ts";
import { RotationFields } from "./rotation.tsx";
import { CropFields } from "./cropFields.tsx";
import { Fields, Section } from "./section.tsx";

export function CropSection() {
  return (
    <Section id="crop">
      <Fields>
        <CropList />
        <Field
          path="crop.name"
          label="Crop"
          hint="One of the list, or another by its own numbers: sowing, stages, basal coefficients, height, deepest rooting"
        />
        {rotationWay(scenario.value) === "none" && <FallowField path="fallow" />}
      </Fields>
      <RotationFields />
      <CropFields path="crop" />
    </Section>
  );
}

/** Of the base or of a case. */
export function FallowField({ path, inherited }: GroupProps) {
  return (
    <Field
      path={`${path}.length`}
      label="Fallow before sowing"
      hint="11 months or 330 days; simulated too, so that stored water is a result"
      otherwise={inherited?.("length")}
    />
  );
}

/** The crops we have numbers of. A yield line that the next crop does not have goes with the crop that has it. */
function CropList() {
  const id = useId();
  const name = valueAt("crop.name");
  const known = cropNames.find((one) => one === name);
  return (
    <div class="field field-choice">
      <label for={id}>Crops we have numbers of</label>
      <select
        id={id}
        value={known ?? ""}
        onChange={({ currentTarget: { value } }) => {
          if (value !== "") grow(value);
        }}
      >
        <option value="">{known === undefined ? "a crop of your own" : "another"}</option>
        {cropNames.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    </div>
  );
}

function grow(crop: string): void {
  const line = valueAt("yield.line");
  const fits = typeof line === "string" && lineChoiceNames(crop).includes(line);
  editMany(
    [["crop.name", crop], ...(fits ? [] : [["yield.line", undefined] as const])],
    "chosen",
    `grow ${crop}`,
  );
}
