import { useId } from "preact/hooks";
import { cropNames } from "../../../src/crop/crops.ts";
import { fallowYear, readyRotations } from "../../../src/scenario/fields/rotationFields.ts";
import {
  growInYear,
  mostRotationYears,
  rotationWay,
  toRotation,
  withOwnSowing,
  yearsWritten,
  type RotationWay,
  type YearWritten,
} from "../../forms/edits/rotationEdits.ts";
import { Field } from "../../forms/field.tsx";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState, problemsWithin } from "../../forms/place.tsx";
import { editMany, scenario, valueAt } from "../../state/scenarioStore.ts";
import { Fields, More } from "./section.tsx";

const waySaid: readonly (readonly [RotationWay, string])[] = [
  ["none", "one season by itself"],
  ...readyRotations.map((name) => [name, name === "every year" ? "the same crop every year" : name] as const),
  ["list", "listed year by year"],
];

/** Which crops follow one another on the field. */
export function RotationFields() {
  const way = rotationWay(scenario.value);
  const id = useId();
  const { problems } = fieldState("rotation");
  return (
    <>
      <Fields>
        <div class="field field-choice" data-path="rotation">
          <label for={id}>Crops year after year</label>
          <select
            id={id}
            value={way}
            aria-invalid={problems.length > 0 || undefined}
            aria-describedby={`${id}-hint`}
            onChange={({ currentTarget: { value } }) =>
              editMany(toRotation(scenario.value, value as RotationWay), "chosen", "choose a rotation")
            }
          >
            {waySaid.map(([one, word]) => (
              <option key={one} value={one}>
                {word}
              </option>
            ))}
          </select>
          <p class="field-hint" id={`${id}-hint`}>
            {way === "none"
              ? "With a rotation the answer is two: first year, and year after year with the water that each case leaves"
              : "The crop above has to be among them. Fallow and straw follow from the crop before; without water at the start, what the years before left"}
          </p>
          <ProblemNote id={`${id}-wrong`} problems={problems} />
        </div>
      </Fields>
      {way === "list" && <Years />}
      {way !== "none" && (
        <More title="How years in a row are run" paths={["chain.warmUp", "chain.length"]}>
          {() => (
            <Fields>
              <Field
                path="chain.warmUp"
                label="Years before the change"
                hint="Run under the first case's roots, where no water at the start is told"
              />
              <Field path="chain.length" label="Years of the path shown" />
            </Fields>
          )}
        </More>
      )}
    </>
  );
}

/** One line a year, by year of harvest. */
function Years() {
  const years = yearsWritten(scenario.value);
  const write = (changes: ReturnType<typeof growInYear>, said: string) => editMany(changes, "chosen", said);
  return (
    <fieldset class="plain-group">
      <legend>One a year, by year of harvest</legend>
      <ol class="rotation-years">
        {years.map((year, i) => (
          <Year key={i} {...{ year, i }} />
        ))}
      </ol>
      {years.length < mostRotationYears && (
        <button
          type="button"
          onClick={() => write(growInYear(years.length, fallowYear), "add a year to the rotation")}
        >
          Add a year
        </button>
      )}
      {years.length > 1 && (
        <button
          type="button"
          onClick={() =>
            write([[`rotation[${years.length - 1}]`, undefined]], "take the last year out of the rotation")
          }
        >
          Take out the last year
        </button>
      )}
    </fieldset>
  );
}

function Year({ year: { name, hasOwn }, i }: { year: YearWritten; i: number }) {
  const id = useId();
  const path = `rotation[${i}]`;
  const choices = [...cropNames, fallowYear];
  const all = choices.includes(name) ? choices : [name, ...choices];
  // What is wrong with its sowing is said at that field.
  const problems = problemsWithin(path).filter(({ field }) => field !== `${path}.sowing`);
  return (
    <li class="field field-choice" data-path={path}>
      <label for={id}>Year {i + 1}</label>
      <select
        id={id}
        value={name}
        onChange={({ currentTarget: { value } }) =>
          editMany(growInYear(i, value), "chosen", `grow ${value} in year ${i + 1}`)
        }
      >
        {all.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
      <ProblemNote id={`${id}-wrong`} problems={problems} />
      {hasOwn ? (
        <Field path={`${path}.sowing`} label={`Sowing, year ${i + 1}`} hint="May 10; left out, as usual" />
      ) : (
        // The crop in question has its numbers above.
        name !== fallowYear &&
        name !== valueAt("crop.name") && (
          <button
            type="button"
            class="small"
            onClick={() =>
              editMany(withOwnSowing(scenario.value, i), "chosen", `give year ${i + 1} a sowing day`)
            }
          >
            Give its sowing day
          </button>
        )
      )}
    </li>
  );
}
