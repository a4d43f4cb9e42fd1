import "../style/sheet.css";
import type { ComponentChildren } from "preact";
import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import type { Json } from "../state/json.ts";
import type { Changes } from "../state/path.ts";
import { editMany, endEdit, scenario, valueAt } from "../state/scenarioStore.ts";
import { cellValue, pasted, pastedCells, type Column, type Table } from "./edits/cells.ts";
import { listText } from "./listText.ts";
import { ProblemNote } from "./notes.tsx";
import { fieldState, isWithin, problemsWithin } from "./place.tsx";
import { sayDefault } from "./sayDefault.ts";

interface SheetProps {
  readonly table: Table;
  /** For the ear: what it is a table of. */
  readonly title: string;
  readonly rows: number;
  /** Over what the rows are known by. */
  readonly rowHead: string;
  /** What a row is known by; its number where nothing is said. */
  readonly rowMark?: (row: number) => string;
  /** For the ear: `spot 3 of over the pan`. */
  readonly rowName: (row: number) => string;
  /** Head of a column in place of its word and unit. */
  readonly head?: (column: number) => ComponentChildren;
  /** Whether there is a cell: a list may end before another. */
  readonly has?: (row: number, column: number) => boolean;
  /** Null where a row cannot be removed. */
  readonly remove?: (row: number) => Changes | null;
  /** How to fill it in. */
  readonly how: ComponentChildren;
  /** That stands elsewhere for the eye. */
  readonly howHeard?: boolean;
  /** Of a row with nothing in it yet. */
  readonly blank?: string;
  /** What is to be said of a row beside its faults; "" = nothing. */
  readonly remark?: (row: number) => string;
  readonly class?: string;
}

/** A table as a spreadsheet has it: typed cell by cell, or pasted. What is wrong with a row stands below it. */
export function Sheet(props: SheetProps) {
  const { table, title, rows, rowHead, head, remove, how, howHeard = false } = props;
  const id = useId();
  return (
    <>
      <div class="scrolls tally-room" tabIndex={0} role="region" aria-label={title}>
        <table class={`tally ${props.class ?? ""}`}>
          <caption class="only-heard">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{rowHead}</th>
              {table.columns.map(({ key, word, unit = "" }, c) => (
                <th key={key} scope="col">
                  {head?.(c) ?? (unit === "" ? word : `${word}, ${unit}`)}
                </th>
              ))}
              {remove !== undefined && (
                <th scope="col">
                  <span class="only-heard">Remove</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: rows }, (_, row) => (
              <Row key={row} {...props} row={row} id={id} />
            ))}
          </tbody>
        </table>
      </div>
      <p class={howHeard ? "only-heard" : "field-hint tally-how"} id={`${id}-how`}>
        {how}
      </p>
    </>
  );
}

function Row(props: SheetProps & { readonly row: number; readonly id: string }) {
  const {
    table,
    title,
    row,
    id,
    rowMark = (r) => String(r + 1),
    rowHead,
    rowName,
    has,
    remove,
    blank,
    remark,
  } = props;
  const { columns, at } = table;
  const values = columns.map((_, c) => valueAt(at(row, c)));
  const isNew = table.placesOf(row).every((place) => isBlank(valueAt(place)));
  const told = table
    .placesOf(row)
    .flatMap(problemsWithin)
    .map((problem) => {
      const c = columns.findIndex((column, i) => isAbout(problem.field, at(row, i), column));
      return { problem, c, isBlank: isNew || (typeof values[c] === "string" && isBlank(values[c])) };
    });
  const mistakes = told.filter((one) => !one.isBlank);
  const blanks = [...new Set(told.flatMap((one) => (one.isBlank ? (columns[one.c]?.word ?? []) : [])))];
  const remarked = remark?.(row) ?? "";
  const noted = told.length > 0 || remarked !== "";
  const changes = remove?.(row) ?? null;
  return (
    <>
      <tr>
        <th scope="row">
          <span class="tally-of">{rowHead} </span>
          {rowMark(row)}
        </th>
        {columns.map(({ key, empty, word, unit = "" }, c) => (
          <td
            key={key}
            class={empty === null && values[c] === null ? "is-missing" : undefined}
            data-head={unit === "" ? word : `${word}, ${unit}`}
          >
            {(has?.(row, c) ?? true) && (
              <Cell
                {...{ table, title, row }}
                column={c}
                name={rowName(row)}
                wrong={mistakes.some((one) => one.c === c)}
                describedBy={noted ? `${id}-${row}` : `${id}-how`}
              />
            )}
          </td>
        ))}
        {remove !== undefined && (
          <td>
            {changes !== null && (
              <button
                type="button"
                class="small no-print"
                onClick={() => editMany(changes, "chosen", `remove ${rowName(row)}`)}
              >
                Remove<span class="only-heard"> {rowName(row)}</span>
              </button>
            )}
          </td>
        )}
      </tr>
      {noted && (
        <tr class="tally-note">
          <td colSpan={columns.length + (remove === undefined ? 1 : 2)} id={`${id}-${row}`}>
            <ProblemNote
              id={`${id}-${row}-wrong`}
              problems={mistakes.map(({ problem }) => problem)}
              of={(_, i) => columns[mistakes[i]!.c]?.word}
            />
            {told.length > mistakes.length && (
              <p class="field-hint">
                {(isNew && blank) ||
                  ["Still to be filled in", blanks.join(", ")].filter(Boolean).join(": ") + "."}
              </p>
            )}
            {remarked !== "" && <p class="field-odd">{remarked}</p>}
          </td>
        </tr>
      )}
    </>
  );
}

function isBlank(value: Json | undefined): boolean {
  if (typeof value === "string") return value.trim() === "";
  return value == null || (typeof value === "object" && Object.values(value).every(isBlank));
}

function isAbout(field: string, at: string, { key, askedAs }: Column): boolean {
  return isWithin(field, at) || (askedAs !== undefined && field === at.slice(0, -key.length) + askedAs);
}

interface CellProps {
  readonly table: Table;
  readonly title: string;
  readonly row: number;
  readonly column: number;
  readonly name: string;
  readonly wrong: boolean;
  /** Where it is told what is wrong, or how to fill in. */
  readonly describedBy: string;
}

/** While it is typed in, a cell shows what was typed; the scenario may have split it up and added units already. */
function Cell({ table, title, row, column, name, wrong, describedBy }: CellProps) {
  const typed = useSignal<string | null>(null);
  const path = table.at(row, column);
  const own = table.columns[column]!;
  const { word, kind, choices, hint = own.unit } = own;
  const label = `${word}, ${name}`;
  const { value: there, fallback } = fieldState(path);
  const text = listText(there);
  const write = (written: string, how: "typed" | "chosen") => {
    const value = cellValue(written, own);
    editMany(
      table.write(scenario.value, [{ row, column, value }]),
      how,
      `${how === "typed" ? "type" : "choose"} ${label}`,
    );
  };
  const said = {
    "aria-label": label,
    "aria-invalid": wrong || undefined,
    "aria-describedby": describedBy,
  };
  return (
    <div
      class="cell"
      data-path={path}
      onPaste={(event) => {
        const cells = pastedCells(event.clipboardData?.getData("text/plain") ?? "");
        if (cells === null) return;
        event.preventDefault();
        typed.value = null;
        const changes = pasted(table, scenario.value, cells, { row, column });
        editMany(changes, "chosen", `paste ${title.charAt(0).toLowerCase()}${title.slice(1)}`);
      }}
    >
      {choices === undefined ? (
        <input
          type="text"
          inputMode={isOfNumbers(own) ? "decimal" : undefined}
          autoComplete="off"
          spellcheck={false}
          class={kind === "numbers" || kind === "quantities" || kind === "word" ? "is-wide" : undefined}
          {...said}
          placeholder={fallback === null ? hint : sayDefault(fallback.value)}
          value={typed.value ?? text}
          onInput={({ currentTarget: { value } }) => {
            typed.value = value;
            write(value, "typed");
          }}
          onBlur={() => {
            typed.value = null;
            endEdit();
          }}
        />
      ) : (
        <select {...said} value={text} onChange={({ currentTarget }) => write(currentTarget.value, "chosen")}>
          <option value="">{own.none}</option>
          {[...new Set([...choices, text])].filter(Boolean).map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      )}
      {(kind === "numbers" || kind === "quantities") && (
        <NextButton
          label={label}
          onNext={() => {
            const listed = (typed.value ?? text).replace(/[,;\s]*$/, "");
            typed.value = listed === "" ? "" : `${listed}, `;
          }}
        />
      )}
    </div>
  );
}

/** A number pad has no comma that parts a list: on a phone this is its key. The pad stays up. */
function NextButton({ label, onNext }: { label: string; onNext: () => void }) {
  return (
    <button
      type="button"
      class="small cell-next"
      onPointerDown={(event) => event.preventDefault()}
      onClick={({ currentTarget }) => {
        const input = currentTarget.parentElement?.querySelector("input");
        input?.focus();
        onNext();
        requestAnimationFrame(() => input?.setSelectionRange(input.value.length, input.value.length));
      }}
    >
      Next<span class="only-heard"> number: {label}</span>
    </button>
  );
}

/** What can be typed on a number pad: a unit, where one is needed, is the column's own. */
function isOfNumbers({ kind, unit = "" }: Column): boolean {
  return kind === "number" || kind === "numbers" || (kind !== "word" && unit !== "");
}
