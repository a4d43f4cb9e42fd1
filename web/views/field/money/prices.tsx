import { useId } from "preact/hooks";
import { Field, FieldGroup } from "../../../forms/field.tsx";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState, problemsWithin } from "../../../forms/place.tsx";
import { isGroup, isList } from "../../../state/json.ts";
import { edit, endEdit, valueAt } from "../../../state/scenarioStore.ts";
import { rangeWith } from "./edits.ts";

/** What the crop sells for, and the land that the money is about. */
export function Prices() {
  return (
    <FieldGroup title="Price and land">
      <Field path="money.price" label="Price" hint="5 USD/bu, 0.20 USD/lb, 190 EUR/t" />
      <PriceEnd end={0} label="Lowest price you expect" />
      <PriceEnd end={1} label="Highest price you expect" />
      <Field
        path="money.area"
        label="Land worked in a year"
        hint="160 ac or 65 ha; if empty, all is per acre or hectare"
      />
      {(perRow() || valueAt("money.implementRows") !== undefined) && (
        <Field path="money.implementRows" label="Rows of the implement" hint="For costs per row" />
      )}
    </FieldGroup>
  );
}

/** One end of the price range; both stand in one list of the scenario. */
function PriceEnd({ end, label }: { end: 0 | 1; label: string }) {
  const id = useId();
  const path = "money.priceRange";
  const list = valueAt(path);
  const texts = isList(list) ? list.map((one) => (typeof one === "string" ? one : "")) : [];
  // What is wrong with the range as a whole is said once.
  const problems = [
    ...fieldState(`${path}[${end}]`).problems,
    ...(end === 0 ? fieldState(path).problems : []),
  ];
  const wrong = problems.length > 0;
  return (
    <div class={`field${wrong ? " is-wrong" : ""}`} data-path={`${path}[${end}]`}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={texts[end] ?? ""}
        aria-invalid={wrong || undefined}
        aria-describedby={wrong ? `${id}-wrong` : end === 0 && list === undefined ? `${id}-none` : undefined}
        onInput={(event) =>
          edit(path, rangeWith(texts, end, event.currentTarget.value), "typed", `type ${label.toLowerCase()}`)
        }
        onBlur={endEdit}
      />
      <ProblemNote id={`${id}-wrong`} problems={problems} />
      {!wrong && end === 0 && list === undefined && (
        <p class="field-default" id={`${id}-none`}>
          If empty, the price is certain
        </p>
      )}
    </div>
  );
}

function perRow(): boolean {
  if (problemsWithin("money.implementRows").length > 0) return true;
  return ["costs", "returns"].some((what) => {
    const list = valueAt(`money.${what}`);
    return isList(list) && list.some((one) => isGroup(one) && one["per"] === "row");
  });
}
