import { isSod } from "../../../src/crop/crop.ts";
import { cropNamed, defaultPlan } from "../../../src/crop/crops.ts";
import { alternatives } from "../../../src/scenario/fields/facts/alternatives.ts";
import { kcbWithin } from "../../../src/scenario/fields/facts/limits.ts";
import { Field } from "../../forms/field.tsx";
import { fieldsOf, type GroupProps } from "../../forms/fieldsOf.ts";
import { fieldState } from "../../forms/place.tsx";
import { valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { Fields, More } from "./section.tsx";

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

/** The numbers of a crop: what growers change in sight, the rest folded away. */
export function CropFields({ path, inherited }: GroupProps) {
  const at = (key: string) => `${path}.${key}`;
  const field = fieldsOf({ path, inherited }, alternatives.crop);
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
        <Field {...field("sowing")} hint="Month and day: Jun 1" />
        {isAsked("maturity") && <Field {...field("maturity")} />}
        <Field {...field("stand")} hint="Leaf area against a full stand; or give the plants" />
      </Fields>
      <More title="Plants in a thin stand" paths={ofStand.map(at)}>
        {() => (
          <Fields>
            <Field
              {...field("population")}
              hint="24,000 plants/ac or 6 plants/m^2, over rows and the room between them"
            />
            <Field
              {...field("fullPopulation")}
              hint="In rows of the usual width; left out: the crop's own on dry land"
            />
            <Field {...field("plantHabit")} />
          </Fields>
        )}
      </More>
      {isAsked(...ofDates) && (
        <More title="When it is ripe" paths={ofDates.map(at)}>
          {() => (
            <Fields>
              <Field {...field("ripe")} hint="Day in a normal year here: Jun 25; in place of the maturity" />
              <Field
                {...field("harvest")}
                hint="Usual day of harvest: Jul 1; in place of the day it is ripe"
              />
            </Fields>
          )}
        </More>
      )}
      <More title="Roots and seed" paths={ofRoots.map(at)}>
        {() => (
          <Fields>
            <Field {...field("maxRootDepth")} hint="Where nothing is in the way" />
            <Field {...field("rootsEnd")} hint="When the roots stop going down" />
            <Field
              {...field("frontVelocity")}
              hint={`Where nothing is in the way; for example ${units.value === "us" ? "0.9 in/day" : "23 mm/day"}`}
            />
            {isAsked("sowingDepth") && <Field {...field("sowingDepth")} hint="Where the root front starts" />}
          </Fields>
        )}
      </More>
      <More title="Stages and warmth" paths={development.map(at)}>
        {() => (
          <>
            <Fields>
              <Field {...field("clock")} />
              <Field
                {...field("stageLengths")}
                kind={byDays ? "duration" : "thermalTime"}
                hint={`${stages}: degree days such as 200 C day, or days`}
              />
              <Field {...field("stageDays")} hint={`${stages}, such as 20 days`} />
              <Field {...field("baseTemperature")} hint="No growth below this temperature" />
              <Field
                {...field("springGrowth")}
                hint="A winter crop stays in its first stage until then: Mar 1"
              />
              <Field {...field("dormantBelow")} hint="A winter crop is dormant below this daily mean" />
              <Field {...field("kcbDormant")} />
            </Fields>
          </>
        )}
      </More>
      <More title="Water use and uptake" paths={waterUse.map(at)}>
        {() => (
          <>
            <Fields>
              <Field {...field("kcbInitial")} hint={`FAO-56, ${kcbWithin.says}`} />
              <Field {...field("kcbMid")} hint={`FAO-56, ${kcbWithin.says}`} />
              <Field {...field("kcbEnd")} hint={`FAO-56, ${kcbWithin.says}`} />
              <Field {...field("height")} />
              <Field
                {...field("uptakeShare")}
                hint="Of a rooted slice's available water, where roots are dense: 9.6 %/day"
              />
              <Field {...field("denseRoots")} hint="The whole uptake in a day holds down to here" />
              <Field
                {...field("uptakeHalving")}
                hint="Beneath the dense roots uptake in a day halves with every such depth"
              />
              <Field {...field("depletionFraction")} hint="FAO-56 p; only the root-zone average uses it" />
            </Fields>
          </>
        )}
      </More>
    </>
  );
}
