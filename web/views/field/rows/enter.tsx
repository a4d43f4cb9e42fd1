import { alternatives } from "../../../../src/scenario/fields/facts/alternatives.ts";
import { takesOut } from "../../../forms/fieldsOf.ts";
import { Field, FieldGroup } from "../../../forms/field.tsx";
import { casesIn } from "../../../forms/edits/caseEdits.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { Switch } from "../../../forms/switch.tsx";
import { isList, type Json } from "../../../state/json.ts";
import { edit, scenario, valueAt } from "../../../state/scenarioStore.ts";
import { answer, resolved } from "../../../worker/client.ts";
import { countedStart, sharesOf } from "./edits.ts";
import { forgetRows, TyreList } from "./tyres.tsx";

/** Rows are told in one of two ways, and can be told in the other. */
export function EnterRows() {
  const typed = isList(valueAt("rowPositions"));
  return (
    <>
      <Switch
        labelled
        label="How the rows are told"
        value={typed ? "shares" : "counted"}
        choices={[
          ["counted", "counted across one pass"],
          ["shares", "as shares of the field"],
        ]}
        onChoose={(way) =>
          way === "shares"
            ? edit(
                "rowPositions",
                sharesOf(resolved.value?.rowPositions ?? null, caseNames()),
                "chosen",
                "tell rows as shares",
              )
            : edit("rowPositions", newCount(), "chosen", "count rows")
        }
      />
      <ProblemNote id="field-rows-wrong" problems={fieldState("rowPositions").problems} />
      {typed ? <Shares /> : <Counted />}
      <p class="tools no-print">
        <button type="button" class="small" onClick={forgetRows}>
          Take the rows out
        </button>
      </p>
    </>
  );
}

export function newCount(): Json {
  return countedStart(
    caseNames(),
    (answer.value?.comparison.cases ?? []).map(({ finalRootDepthMm }) => finalRootDepthMm),
  );
}

export function caseNames(): string[] {
  return casesIn(scenario.value).map(({ name }) => (typeof name === "string" ? name : ""));
}

/** While it is not said what rows become. */
const left = "as the cases compared say";

function Counted() {
  const names = caseNames();
  const at = (key: keyof typeof alternatives.countedRows) => ({
    path: `rowPositions.${key}`,
    also: takesOut("rowPositions", key, alternatives.countedRows),
  });
  return (
    <>
      <FieldGroup title="One pass">
        <Field {...at("rows")} label="Rows" hint="Or give width and spacing" />
        <Field {...at("implementWidth")} label="Width of the implement" hint="40 ft or 12 m" />
        <Field {...at("rowSpacing")} label="From row to row" hint="30 in or 76 cm" />
      </FieldGroup>
      <FieldGroup title="Tracks">
        <TyreList />
        <Field {...at("rowsInTrack")} label="Or only how many rows a tire runs on" />
        <Field {...at("rowsBesideTrack")} label="and how many stand next to one" />
      </FieldGroup>
      <FieldGroup title="Which case the rows are">
        <Field path="rowPositions.inTrack" label="In the wheel track" choices={names} none={null} />
        <Field
          path="rowPositions.besideTrack"
          label="Beside the track"
          choices={names}
          none="as the other rows"
        />
        <Field path="rowPositions.other" label="Other rows" choices={names} none={null} />
      </FieldGroup>
      <FieldGroup title="What they become with the change">
        <Field path="rowPositions.inTrackAfter" label="In the track, after" choices={names} none={left} />
        <Field
          path="rowPositions.besideTrackAfter"
          label="Beside the track, after"
          choices={names}
          none={left}
        />
        <Field path="rowPositions.otherAfter" label="Other rows, after" choices={names} none={left} />
      </FieldGroup>
    </>
  );
}

function Shares() {
  const list = valueAt("rowPositions");
  const names = caseNames();
  const count = isList(list) ? list.length : 0;
  return (
    <>
      <p class="aside">Shares of all rows of the field; together they make 100 %.</p>
      {Array.from({ length: count }, (_, r) => (
        <fieldset class="row-share" key={r}>
          <legend class="only-heard">Position {r + 1}</legend>
          <Field path={`rowPositions[${r}].name`} label="Where" hint="wheel track" />
          <Field path={`rowPositions[${r}].case`} label="Case" choices={names} none={null} />
          <Field path={`rowPositions[${r}].after`} label="After the change" choices={names} none={left} />
          <Field path={`rowPositions[${r}].share`} label="Share" hint="12.5 %" />
          <p class="tools no-print">
            <button
              type="button"
              class="small"
              onClick={() =>
                count === 1
                  ? forgetRows()
                  : edit(`rowPositions[${r}]`, undefined, "chosen", `remove position ${r + 1}`)
              }
            >
              Remove<span class="only-heard"> position {r + 1}</span>
            </button>
          </p>
        </fieldset>
      ))}
      <p class="tools no-print">
        <button
          type="button"
          onClick={() =>
            edit(
              `rowPositions[${count}]`,
              { name: `position ${count + 1}`, case: names[0] ?? "", share: "0 %" },
              "chosen",
              "add a position",
            )
          }
        >
          Add a position
        </button>
      </p>
    </>
  );
}
