import { sayWhole, yearsWithin } from "../../../src/scenario/fields/facts/limits.ts";
import { Field } from "../../forms/field.tsx";
import type { GroupProps } from "../../forms/fieldsOf.ts";
import { Fields, More, Section } from "./section.tsx";

export function RunsSection() {
  return (
    <Section id="runs">
      <More title="How uncertain things are drawn" paths={["ensemble"]}>
        {() => (
          <Fields>
            <Field path="ensemble.years" label="Years run for each total" hint={sayWhole(yearsWithin)} />
            <Field path="ensemble.seed" label="Seed" hint="The same seed gives the same draws" />
            <Field
              path="ensemble.availableCapacitySpread"
              label="Spread of available capacity"
              hint="Standard deviation, a share of each layer's own"
            />
            <Field
              path="ensemble.deepWaterSpread"
              label="Spread of deep starting water"
              hint="Standard deviation, of available capacity"
            />
            <Field
              path="ensemble.deepUptakeSpread"
              label="Spread of uptake by depth"
              hint="100 %: uptake halves over anything from half that depth to twice"
            />
            <Field path="ensemble.deepBelow" label="Deep starts at" />
            <Field
              path="ensemble.density"
              label="How a density is read"
              hint="As hindrance to roots; range draws between strict and lenient"
            />
          </Fields>
        )}
      </More>
      <More title="Choices between published methods" paths={["model"]}>
        {() => (
          <Fields>
            <MethodFields path="model" />
          </Fields>
        )}
      </More>
    </Section>
  );
}

/** Choices between published methods; of the base or of a case. */
export function MethodFields({ path, inherited }: GroupProps) {
  const none = inherited === undefined ? "as usual" : "as in the rest";
  const hint = "The second is FAO-56's form";
  const field = (key: string) => ({ path: `${path}.${key}`, otherwise: inherited?.(key), none, hint });
  return (
    <>
      <Field {...field("uptake")} label="Uptake rule" />
      <Field {...field("evaporation")} label="Evaporation rule" />
    </>
  );
}
