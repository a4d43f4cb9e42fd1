import { Choice, NumberField, QuantityField } from "../../forms/field.tsx";
import { fieldsOf } from "../../forms/fieldsOf.ts";
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

interface SurfaceFieldsProps {
  /** `surface`, or a case's. */
  readonly path: string;
  /** What holds while a key is left out; in a case, the base's. */
  readonly inherited?: (key: string) => string | undefined;
}

const ofCurve = ["cover", "treatment", "condition", "curveNumberFallow", "curveNumberCrop"];
const ofSnow = ["snowCatch", "snowBelow", "melt", "evaporatingDepth", "readilyEvaporable"];

/** Residue, runoff, snow and evaporation. */
export function SurfaceFields({ path, inherited }: SurfaceFieldsProps) {
  const at = (key: string) => `${path}.${key}`;
  const field = fieldsOf(path, inherited);
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
        <QuantityField
          {...field("residueCover", "residueCoverFallow", "residueCoverCrop")}
          kind="share"
          hint="Ground under dead residue on the first day: when fallow begins, or at sowing without fallow"
        />
        <QuantityField {...ofFallow()} kind="share" hint="When fallow begins, where it differs" />
        <QuantityField
          {...field("residueCoverCrop")}
          kind="share"
          hint="At sowing; if left empty, what the fallow leaves of it"
        />
        <Choice
          {...field("residueDecay")}
          choices={["by weather", "none"]}
          none="by weather; under sod none"
        />
        <NumberField
          {...field("curveNumber", "curveNumberFallow", "curveNumberCrop")}
          otherwise={inherited?.("curveNumber") ?? lookedUp(path)}
          hint="30 to 100, at average wetness; if left empty, looked up in the handbook's table"
        />
      </Fields>
      <More title="What the curve number is looked up by" paths={ofCurve.map(at)}>
        {() => (
          <>
            <Fields>
              <Choice
                {...field("cover")}
                choices={["row crops", "small grain", "close-seeded legumes", "pasture or range"]}
              />
              <Choice
                {...field("treatment")}
                choices={["straight row", "contoured", "contoured and terraced"]}
              />
              <Choice
                {...field("condition")}
                choices={["poor", "fair", "good"]}
                none="good from 20 % residue on; pasture by its cover"
              />
              <NumberField {...field("curveNumberFallow")} hint="30 to 100" />
              <NumberField {...field("curveNumberCrop")} hint="30 to 100" />
            </Fields>
          </>
        )}
      </More>
      <More title="Snow and evaporation" paths={ofSnow.map(at)}>
        {() => (
          <>
            <Fields>
              <QuantityField
                {...field("snowCatch")}
                kind="share"
                hint="Kept by standing stubble, of the snowfall"
              />
              <QuantityField
                {...field("snowBelow")}
                kind="temperature"
                hint="Below this daily mean it snows"
              />
              <QuantityField {...field("melt")} kind="meltFactor" hint="0.06 in/F/day or 2.74 mm/C/day" />
              <QuantityField {...field("evaporatingDepth")} kind="depth" hint="FAO-56 Ze" />
              <QuantityField {...field("readilyEvaporable")} kind="rain" hint="FAO-56 REW" />
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
