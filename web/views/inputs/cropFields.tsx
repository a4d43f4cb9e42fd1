import { cropNamed, defaultPlan } from "../../../src/crop/crops.ts";
import { isSod } from "../../../src/crop/crop.ts";
import { Choice, ListField, NumberField, QuantityField } from "../../forms/field.tsx";
import { fieldsOf } from "../../forms/fieldsOf.ts";
import { fieldState } from "../../forms/place.tsx";
import { valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { Fields, More } from "./section.tsx";

interface CropFieldsProps {
  /** `crop`, or a case's. */
  readonly path: string;
  /** What holds while a key is left out; in a case, the base's. */
  readonly inherited?: (key: string) => string | undefined;
}

const stages = "Initial, development, mid-season and late season, a comma and a space between them";
const ofStand = ["population", "fullPopulation", "plantHabit"];
const ofRoots = ["maxRootDepth", "rootsEnd", "frontVelocity", "sowingDepth"];
const ofDates = ["ripe", "harvest"];
const development = [
  "clock",
  "stageLengths",
  "stageDays",
  "baseTemperature",
  "springGrowth",
  "dormantBelow",
  "kcbDormant",
];
const waterUse = [
  "kcbInitial",
  "kcbMid",
  "kcbEnd",
  "height",
  "uptakeShare",
  "denseRoots",
  "uptakeHalving",
  "depletionFraction",
];

/** Ways of saying how long the crop takes; each makes the others void. */
const lengths = ["maturity", "ripe", "harvest", "stageLengths", "stageDays"];
const otherThan = (...keys: string[]) => lengths.filter((key) => !keys.includes(key));

/** The numbers of a crop: what growers change in sight, the rest folded away. */
export function CropFields({ path, inherited }: CropFieldsProps) {
  const at = (key: string) => `${path}.${key}`;
  const field = fieldsOf(path, inherited);
  const clock = valueAt(at("clock")) ?? valueAt("crop.clock") ?? fieldState("crop.clock").fallback?.value;
  const byDays = clock === "days";
  const name = valueAt("crop.name");
  const known = typeof name === "string" ? cropNamed(name) : null;
  // What sod has not is left out, unless it is written and has to be taken out.
  const isAsked = (...keys: string[]) =>
    known === null || !isSod(defaultPlan(known)) || keys.some((key) => valueAt(at(key)) !== undefined);
  return (
    <>
      <Fields>
        <QuantityField {...field("sowing")} hint="Month and day: Jun 1" />
        {isAsked("maturity") && (
          <Choice {...field("maturity", ...otherThan("maturity"))} choices={["early", "medium", "full"]} />
        )}
        <QuantityField
          {...field("stand", "population", "fullPopulation")}
          kind="share"
          hint="Leaf area against a full stand; or give the plants"
        />
      </Fields>
      <More title="Plants in a thin stand" paths={ofStand.map(at)}>
        {() => (
          <Fields>
            <QuantityField
              {...field("population", "stand")}
              kind="population"
              hint="24,000 plants/ac or 6 plants/m^2, over rows and the room between them"
            />
            <QuantityField
              {...field("fullPopulation", "stand")}
              kind="population"
              hint="In rows of the usual width; left out: the crop's own on dry land"
            />
            <Choice {...field("plantHabit")} choices={["fills in", "stays small"]} />
          </Fields>
        )}
      </More>
      {isAsked(...ofDates) && (
        <More title="When it is ripe" paths={ofDates.map(at)}>
          {() => (
            <Fields>
              <QuantityField
                {...field("ripe", ...otherThan("ripe"))}
                hint="Day in a normal year here: Jun 25; in place of the maturity"
              />
              <QuantityField
                {...field("harvest", ...otherThan("harvest"))}
                hint="Usual day of harvest: Jul 1; in place of the day it is ripe"
              />
            </Fields>
          )}
        </More>
      )}
      <More title="Roots and seed" paths={ofRoots.map(at)}>
        {() => (
          <Fields>
            <QuantityField {...field("maxRootDepth")} kind="depth" hint="Where nothing is in the way" />
            <Choice
              {...field("rootsEnd")}
              choices={["flowering", "end of mid-season", "maturity"]}
              hint="When the roots stop going down"
            />
            <QuantityField
              {...field("frontVelocity")}
              kind="rate"
              hint={`Where nothing is in the way; for example ${units.value === "us" ? "0.9 in/day" : "23 mm/day"}`}
            />
            {isAsked("sowingDepth") && (
              <QuantityField {...field("sowingDepth")} kind="depth" hint="Where the root front starts" />
            )}
          </Fields>
        )}
      </More>
      <More title="Stages and warmth" paths={development.map(at)}>
        {() => (
          <>
            <Fields>
              <Choice {...field("clock")} choices={["thermal time", "days"]} />
              <ListField
                {...field("stageLengths", "maturity", "ripe", "harvest")}
                kind={byDays ? "duration" : "thermalTime"}
                hint={`${stages}: degree days such as 200 C day, or days`}
              />
              <ListField
                {...field("stageDays", "maturity", "ripe", "harvest")}
                kind="duration"
                hint={`${stages}, such as 20 days`}
              />
              <QuantityField
                {...field("baseTemperature")}
                kind="temperature"
                hint="Below it the thermal clock stands still"
              />
              <QuantityField
                {...field("springGrowth")}
                hint="A winter crop stays in its first stage until then: Mar 1"
              />
              <QuantityField
                {...field("dormantBelow")}
                kind="temperature"
                hint="A winter crop sleeps below this daily mean"
              />
              <NumberField {...field("kcbDormant")} />
            </Fields>
          </>
        )}
      </More>
      <More title="Water use and uptake" paths={waterUse.map(at)}>
        {() => (
          <>
            <Fields>
              <NumberField {...field("kcbInitial")} hint="FAO-56, 0 to 1.5" />
              <NumberField {...field("kcbMid")} hint="FAO-56, 0 to 1.5" />
              <NumberField {...field("kcbEnd")} hint="FAO-56, 0 to 1.5" />
              <QuantityField {...field("height")} kind="height" />
              <QuantityField
                {...field("uptakeShare")}
                kind="sharePerDay"
                hint="Of a rooted slice's available water, where roots are dense: 9.6 %/day"
              />
              <QuantityField
                {...field("denseRoots")}
                kind="depth"
                hint="The whole uptake in a day holds down to here"
              />
              <QuantityField
                {...field("uptakeHalving")}
                kind="depth"
                hint="Beneath the dense roots uptake in a day halves with every such depth"
              />
              <QuantityField
                {...field("depletionFraction")}
                kind="share"
                hint="FAO-56 p; only the root-zone average uses it"
              />
            </Fields>
          </>
        )}
      </More>
    </>
  );
}
