import { Field } from "../../../forms/field.tsx";
import { pastedCells } from "../../../forms/edits/pasted.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { isList, type Json } from "../../../state/json.ts";
import { edit, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { resolved } from "../../../worker/client.ts";
import { itemKeys, newItem, withPasted } from "./edits.ts";

type What = "costs" | "returns";

const words = {
  costs: {
    title: "Costs that the change adds or saves",
    add: "Add a cost",
    added: "the change adds it",
    reduced: "the change saves it",
  },
  returns: {
    title: "Returns beside the yield",
    add: "Add a return",
    added: "the change brings it",
    reduced: "the change takes it away",
  },
} as const;

/** A line for each cost or return. A block copied from a spreadsheet may be pasted into any of its cells. */
export function Items({ what }: { what: What }) {
  const path = `money.${what}`;
  const list = valueAt(path);
  const items: readonly Json[] = isList(list) ? list : [];
  const { title, add } = words[what];
  return (
    <fieldset class="items" data-path={path}>
      <legend>{title}</legend>
      <ProblemNote id={`field-${what}-wrong`} problems={fieldState(path).problems} />
      {items.length > 0 && (
        <div onPasteCapture={(event) => paste(event, what, items)}>
          <div class="items-head" aria-hidden="true">
            <span>Name</span>
            <span>Amount</span>
            <span>Added or reduced</span>
            <span>For each</span>
            <span>Years it lasts</span>
            <span>Interest</span>
          </div>
          {items.map((_, i) => (
            <Item key={i} what={what} index={i} count={items.length} />
          ))}
        </div>
      )}
      <p class="tools no-print">
        <button
          type="button"
          onClick={() =>
            edit(`${path}[${items.length}]`, newItem(what, items.length, each()), "chosen", add.toLowerCase())
          }
        >
          {add}
        </button>
      </p>
    </fieldset>
  );
}

function Item({ what, index, count }: { what: What; index: number; count: number }) {
  const list = `money.${what}`;
  const path = `${list}[${index}]`;
  const name = fieldState(`${path}.name`).text || `line ${index + 1}`;
  return (
    <div class="item" role="group" aria-label={name}>
      <Field path={`${path}.name`} label="Name" />
      <Field path={`${path}.amount`} label="Amount" />
      <Field path={`${path}.kind`} label="Added or reduced" none="added" />
      <Field path={`${path}.per`} label="For each" none="as written" />
      <Field path={`${path}.years`} label="Years it lasts" />
      <Field path={`${path}.interest`} label="Interest" />
      <button
        type="button"
        class="small no-print"
        onClick={() => edit(count === 1 ? list : path, undefined, "chosen", `remove ${name}`)}
      >
        Remove<span class="only-heard"> {name}</span>
      </button>
    </div>
  );
}

/** What an amount without a unit is taken for. */
export function each(): string {
  return `${resolved.value?.money?.currency ?? "USD"}/${units.value === "us" ? "ac" : "ha"}`;
}

function paste(event: ClipboardEvent, what: What, items: readonly Json[]): void {
  const cells = pastedCells(event.clipboardData?.getData("text/plain") ?? "");
  const cell = event.target instanceof Element ? event.target.closest("[data-path]") : null;
  const found = /\[(\d+)\]\.(\w+)$/.exec(cell?.getAttribute("data-path") ?? "");
  const key = itemKeys.find((one) => one === found?.[2]);
  if (cells === null || found === null || key === undefined) return;
  event.preventDefault();
  const after = withPasted({ items, at: Number(found[1]), key, cells, what, each: each() });
  edit(`money.${what}`, after, "chosen", `paste ${what}`);
}
