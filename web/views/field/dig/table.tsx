import { kinds } from "../../../../src/quantity/kinds.ts";
import { Field } from "../../../forms/field.tsx";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { Sheet } from "../../../forms/sheet.tsx";
import type { JsonGroup } from "../../../state/json.ts";
import { editMany, scenario } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import {
  addDug,
  closeUp,
  depthsOf,
  dugGroupsIn,
  dugPath,
  hasGaps,
  nameOf,
  plantsTable,
  removeDug,
  removePlant,
  rowsOf,
  wayOf,
} from "./plants.ts";

interface PlantsTableProps {
  readonly caseNames: readonly string[];
  /** For a column that is added. */
  readonly date: string;
}

/** A column for every case and day, a row for every plant: as neighbours stand beside each other. */
export function PlantsTable({ caseNames, date }: PlantsTableProps) {
  const groups = dugGroupsIn(scenario.value);
  const rows = rowsOf(groups);
  const { unit } = kinds.depth[units.value];
  return (
    <div class="plants" data-path={dugPath}>
      <Sheet
        table={plantsTable(groups, unit)}
        title="Plants dug"
        rows={rows}
        rowHead="Plant"
        rowName={(plant) => `plant ${plant + 1}`}
        head={(g) => <ColumnHead {...{ g, caseNames }} group={groups[g]!} />}
        has={(plant, g) => plant <= depthsOf(groups[g]!).length}
        remove={(plant) => (plant < rows - 1 ? removePlant(scenario.value, plant) : null)}
        how={`Depth of the deepest root of each plant. A number alone counts as ${unit === "in" ? "inches" : unit}; another unit may be typed with it. Go on in the last row, or paste columns from a spreadsheet into the cell where they begin.`}
      />
      {groups.map((group, g) => (
        <ProblemNote
          key={g}
          id={`field-dig-${g}-wrong`}
          problems={fieldState(`${dugPath}[${g}].depths`).problems}
          of={() => `Plants of ${nameOf(group, g)}`}
        />
      ))}
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() => editMany(addDug(scenario.value, caseNames, date), "chosen", "add plants dug")}
        >
          Add another case or day
        </button>
        {hasGaps(groups) && (
          <button
            type="button"
            class="small"
            onClick={() => editMany(closeUp(scenario.value), "chosen", "close up blank plants")}
          >
            Close up blanks
          </button>
        )}
      </p>
    </div>
  );
}

/** How roots met the dense layer: one word for the column; a file may have one for each plant. */
function RootsWay({ path, group }: { readonly path: string; readonly group: JsonGroup }) {
  if (wayOf(group) === null)
    return (
      <p class="plants-ways">
        Roots of each plant, from the file.{" "}
        <button
          type="button"
          class="small"
          onClick={() => editMany([[path, undefined]], "chosen", "tell one for all")}
        >
          Tell one for all
        </button>
      </p>
    );
  return (
    <Field
      path={`${path}[0]`}
      label="Roots went"
      none="not told"
      also={(value) => [[path, value === undefined ? undefined : [value]]]}
    />
  );
}

interface HeadProps {
  readonly g: number;
  readonly group: JsonGroup;
  readonly caseNames: readonly string[];
}

function ColumnHead({ g, group, caseNames }: HeadProps) {
  const path = `${dugPath}[${g}]`;
  const name = nameOf(group, g);
  return (
    <div class="plants-head">
      <Field path={`${path}.case`} label={`Case of column ${g + 1}`} quiet choices={caseNames} none={null} />
      <Field path={`${path}.date`} label="Dug on" />
      <Field path={`${path}.rowPosition`} label="Row" otherwise="not told" />
      <RootsWay path={`${path}.roots`} group={group} />
      <Field path={`${path}.turnedAt`} label="Turned at" otherwise="not told" />
      <button
        type="button"
        class="small"
        onClick={() => editMany(removeDug(scenario.value, g), "chosen", `remove plants of ${name}`)}
      >
        Remove column<span class="only-heard"> of {name}</span>
      </button>
    </div>
  );
}
