import { Field } from "../../forms/field.tsx";
import { Fields, More, Section } from "./section.tsx";

export function RunsSection() {
  return (
    <Section id="runs">
      <More title="How uncertain things are drawn" paths={["ensemble"]}>
        {() => (
          <Fields>
            <Field path="ensemble.years" label="Years run for each total" hint="1 to 5000" />
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
            <Field path="model.uptake" label="Uptake rule" hint="The second is FAO-56's form" />
            <Field path="model.evaporation" label="Evaporation rule" hint="The second is FAO-56's form" />
          </Fields>
        )}
      </More>
    </Section>
  );
}
