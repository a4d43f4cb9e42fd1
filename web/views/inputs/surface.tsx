import { alternatives } from "../../../src/scenario/fields/facts/alternatives.ts";
import { curveNumberWithin } from "../../../src/scenario/fields/facts/limits.ts";
import { usualDecaySaid } from "../../../src/scenario/fields/facts/usualDecay.ts";
import { percent } from "../../../src/report/tables/formatters.ts";
import { residueGood } from "../../../src/season/curveNumber.ts";
import { Field } from "../../forms/field.tsx";
import { fieldsOf, type GroupProps } from "../../forms/fieldsOf.ts";
import { listText } from "../../forms/listText.ts";
import { valueAt } from "../../state/scenarioStore.ts";
import { defaultsByPath } from "../../worker/client.ts";
import { Fields, More, Section } from "./section.tsx";

export function SurfaceSection() {
  return (
    <Section id="surface">
      <SurfaceFields path="surface" />
    </Section>
  );
}

const ofCurve = ["cover", "treatment", "condition", "curveNumberFallow", "curveNumberCrop"];
const ofSnow = ["snowCatch", "snowBelow", "melt", "evaporatingDepth", "readilyEvaporable"];

/** Residue, runoff, snow and evaporation. */
export function SurfaceFields({ path, inherited }: GroupProps) {
  const at = (key: string) => `${path}.${key}`;
  const field = fieldsOf({ path, inherited }, alternatives.surface);
  /** Fallow begins with the residue cover of the first day, where that is written. */
  const ofFallow = () => {
    const first = listText(valueAt(at("residueCover")));
    return {
      ...field("residueCoverFallow"),
      ...(first === "" ? {} : { otherwise: `${first}, as on the first day` }),
    };
  };
  return (
    <>
      <Fields>
        <Field
          {...field("residueCover")}
          hint="Ground under dead residue on the first day: when fallow begins, or at sowing without fallow"
        />
        <Field {...ofFallow()} hint="When fallow begins, where it differs" />
        <Field {...field("residueCoverCrop")} hint="At sowing; if left empty, what the fallow leaves of it" />
        <Field {...field("residueDecay")} none={usualDecaySaid} />
        <Field
          {...field("curveNumber")}
          otherwise={inherited?.("curveNumber") ?? lookedUp(path)}
          hint={`${curveNumberWithin.says}, at average wetness; if left empty, looked up in the handbook's table`}
        />
      </Fields>
      <More title="What the curve number is looked up by" paths={ofCurve.map(at)}>
        {() => (
          <>
            <Fields>
              <Field {...field("cover")} />
              <Field {...field("treatment")} />
              <Field
                {...field("condition")}
                none={`good from ${percent(residueGood)} residue on; pasture by its cover`}
              />
              <Field {...field("curveNumberFallow")} hint={curveNumberWithin.says} />
              <Field {...field("curveNumberCrop")} hint={curveNumberWithin.says} />
            </Fields>
          </>
        )}
      </More>
      <More title="Snow and evaporation" paths={ofSnow.map(at)}>
        {() => (
          <>
            <Fields>
              <Field {...field("snowCatch")} hint="Kept by standing stubble, of the snowfall" />
              <Field {...field("snowBelow")} hint="Below this daily mean it snows" />
              <Field {...field("melt")} hint="0.06 in/F/day or 2.74 mm/C/day" />
              <Field {...field("evaporatingDepth")} hint="FAO-56 Ze" />
              <Field {...field("readilyEvaporable")} hint="FAO-56 REW" />
            </Fields>
          </>
        )}
      </More>
    </>
  );
}

/** The handbook's two numbers, where neither is written. */
function lookedUp(path: string): string | undefined {
  const [fallow, crop] = ["curveNumberFallow", "curveNumberCrop"].map((key) =>
    defaultsByPath.value.get(`${path}.${key}`),
  );
  if (fallow === undefined || crop === undefined) return undefined;
  return `${fallow.value} fallow, ${crop.value} crop`;
}
