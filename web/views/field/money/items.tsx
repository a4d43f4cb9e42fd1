import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { Sheet } from "../../../forms/sheet.tsx";
import { isList } from "../../../state/json.ts";
import { edit, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { resolved } from "../../../worker/client.ts";
import { itemsTable, newItem } from "./edits.ts";

type What = "costs" | "returns";

const words = {
  costs: {
    title: "Costs that the change adds or saves",
    row: "Cost",
    add: "Add a cost",
  },
  returns: {
    title: "Returns beside the yield",
    row: "Return",
    add: "Add a return",
  },
} as const;

/** A line for each cost or return. */
export function Items({ what }: { what: What }) {
  const path = `money.${what}`;
  const list = valueAt(path);
  const count = isList(list) ? list.length : 0;
  const { title, add, row } = words[what];
  const nameAt = (i: number) => fieldState(`${path}[${i}].name`).text || `line ${i + 1}`;
  return (
    <fieldset class="items" data-path={path}>
      <legend>{title}</legend>
      <ProblemNote id={`field-${what}-wrong`} problems={fieldState(path).problems} />
      {count > 0 && (
        <Sheet
          table={itemsTable(what, each())}
          title={title}
          rows={count}
          rowHead={row}
          rowName={nameAt}
          remove={(i) => [[count === 1 ? path : `${path}[${i}]`, undefined]]}
          how="Rows copied from a spreadsheet may be pasted into the cell where they begin."
        />
      )}
      <p class="tools no-print">
        <button
          type="button"
          onClick={() => edit(`${path}[${count}]`, newItem(what, count, each()), "chosen", add.toLowerCase())}
        >
          {add}
        </button>
      </p>
    </fieldset>
  );
}

/** What an amount without a unit is taken for. */
function each(): string {
  return `${resolved.value?.money?.currency ?? "USD"}/${units.value === "us" ? "ac" : "ha"}`;
}
