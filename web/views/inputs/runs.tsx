import { Choice, NumberField, QuantityField } from "../../forms/field.tsx";
import { Fields, More, Section } from "./section.tsx";

export function RunsSection() {
  return (
    <Section id="runs">
      <More title="How uncertain things are drawn" paths={["ensemble"]}>
        {() => (
          <Fields>
            <NumberField path="ensemble.years" label="Years run for each total" hint="1 to 5000" />
            <NumberField path="ensemble.seed" label="Seed" hint="The same seed gives the same draws" />
            <QuantityField
              path="ensemble.availableCapacitySpread"
              label="Spread of available capacity"
              kind="share"
              hint="Standard deviation, a share of each layer's own"
            />
            <QuantityField
              path="ensemble.deepWaterSpread"
              label="Spread of deep starting water"
              kind="share"
              hint="Standard deviation, of available capacity"
            />
            <QuantityField
              path="ensemble.deepUptakeSpread"
              label="Spread of uptake by depth"
              kind="share"
              hint="100 %: uptake halves over anything from half that depth to twice"
            />
            <QuantityField path="ensemble.deepBelow" label="Deep starts at" kind="depth" />
            <Choice
              path="ensemble.density"
              label="How a density is read"
              choices={["range", "strict", "usual", "lenient"]}
              hint="As hindrance to roots; range draws between strict and lenient"
            />
          </Fields>
        )}
      </More>
      <More title="Choices between published methods" paths={["model"]}>
        {() => (
          <Fields>
            <Choice
              path="model.uptake"
              label="Uptake rule"
              choices={["by slice", "root-zone average"]}
              hint="The second is FAO-56's form"
            />
            <Choice
              path="model.evaporation"
              label="Evaporation rule"
              choices={["two-stage", "dual coefficient"]}
              hint="The second is FAO-56's form"
            />
          </Fields>
        )}
      </More>
    </Section>
  );
}
