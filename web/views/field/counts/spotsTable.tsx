import { useId } from "preact/hooks";
import { kinds } from "../../../../src/quantity/kinds.ts";
import type { Problem } from "../../../../src/problem.ts";
import { problemsWithin } from "../../../forms/place.tsx";
import type { Json, JsonGroup } from "../../../state/json.ts";
import { edit, editMany, scenario, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { Cell } from "./cell.tsx";
import { cellValue } from "./cellText.ts";
import { severalSaid, type Column } from "./columns.ts";
import { oddRows, pastedSpots, removeSpot } from "./edits.ts";

interface SpotsProps {
  /** Which of the tables. */
  readonly index: number;
  readonly title: string;
  readonly path: string;
  readonly spots: readonly JsonGroup[];
  readonly columns: readonly Column[];
}

/** Spots of one case, a row each; what is wrong with one stands below it. */
export function SpotsTable({ index, title, path, spots, columns }: SpotsProps) {
  const id = useId();
  return (
    <>
      <div class="scrolls" tabIndex={0} role="region" aria-label={`Spots of ${title}`}>
        <table class="tally">
          <caption class="only-heard">Spots of {title}</caption>
          <thead>
            <tr>
              <th scope="col">Spot</th>
              {columns.map((column) => (
                <th key={column.key} scope="col">
                  {column.word}
                  {unitOf(column) !== "" && `, ${unitOf(column)}`}
                </th>
              ))}
              <th scope="col">
                <span class="only-heard">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {spots.map((spot, s) => (
              <SpotRow key={s} {...{ index, title, path, spots, columns, spot, s, id }} />
            ))}
          </tbody>
        </table>
      </div>
      <p class="field-hint tally-how" id={`${id}-how`}>
        {severalSaid(columns)} Rows copied from a spreadsheet may be pasted into the cell where they begin.
      </p>
    </>
  );
}

interface RowProps extends SpotsProps {
  readonly spot: JsonGroup;
  readonly s: number;
  readonly id: string;
}

function SpotRow({ index, title, path, spots, columns, spot, s, id }: RowProps) {
  const here = `${path}.spots[${s}]`;
  const problems = problemsWithin(here);
  const isBlank = Object.keys(spot).length === 0;
  const odd = oddRows(spot["kernelRows"]);
  const noteId = `${id}-${s}`;
  const noted = problems.length > 0 || odd.length > 0;
  const write = (column: Column, text: string) =>
    edit(
      `${here}.${column.key}`,
      cellValue(text, column.kind, unitOf(column)),
      "typed",
      `type ${column.word} of spot ${s + 1}`,
    );
  return (
    <>
      <tr>
        <th scope="row">{s + 1}</th>
        {columns.map((column, c) => {
          const at = `${here}.${column.key}`;
          const wrong = !isBlank && problems.some(({ field }) => isAt(field, at, column.key));
          const label = `${column.word}, spot ${s + 1} of ${title}`;
          return (
            <td key={column.key}>
              {column.choices !== undefined ? (
                <ChoiceCell {...{ at, label, column, wrong }} describedBy={noted ? noteId : `${id}-how`} />
              ) : (
                <Cell
                  path={at}
                  label={label}
                  placeholder={placeholderOf(column, path)}
                  wrong={wrong}
                  describedBy={noted ? noteId : `${id}-how`}
                  wide={column.kind === "wholes" || column.kind === "quantities"}
                  onType={(text) => write(column, text)}
                  onPaste={(cells) =>
                    edit(
                      `${path}.spots`,
                      pastedSpots(spots, cells, { row: s, column: c }, columns, unitOf),
                      "chosen",
                      `paste counts of ${title}`,
                    )
                  }
                />
              )}
            </td>
          );
        })}
        <td>
          <button
            type="button"
            class="small"
            onClick={() => editMany(removeSpot(scenario.value, index, s), "chosen", `remove spot ${s + 1}`)}
          >
            Remove
            <span class="only-heard">
              {" "}
              spot {s + 1} of {title}
            </span>
          </button>
        </td>
      </tr>
      {noted && (
        <tr class="tally-note">
          <td colSpan={columns.length + 2} id={noteId}>
            {isBlank ? (
              <p class="field-hint">Nothing counted here yet: fill it in, or remove the row.</p>
            ) : (
              <ProblemsSaid problems={problems} columns={columns} here={here} />
            )}
            {odd.length > 0 && (
              <p class="field-odd">
                {odd.join(", ")} {odd.length === 1 ? "is" : "are"} odd: kernel rows on an ear come in pairs,
                so count again.
              </p>
            )}
          </td>
        </tr>
      )}
    </>
  );
}

/** Each with the column it is about. */
function ProblemsSaid({
  problems,
  columns,
  here,
}: {
  problems: readonly Problem[];
  columns: readonly Column[];
  here: string;
}) {
  if (problems.length === 0) return null;
  return (
    <p class="field-problem" role="alert">
      {problems.map(({ field, expected, found, mend }) => {
        const column = columns.find(({ key }) => isAt(field, `${here}.${key}`, key));
        return (
          <span key={field + expected}>
            {column !== undefined && `${column.word}: `}expected {expected}, found {found}; {mend}.
          </span>
        );
      })}
    </p>
  );
}

/** How many ears is asked for as heads. */
function isAt(field: string, at: string, key: string): boolean {
  return (
    field === at || field.startsWith(`${at}[`) || (key === "ears" && field === at.replace(/ears$/, "heads"))
  );
}

interface ChoiceCellProps {
  readonly at: string;
  readonly label: string;
  readonly column: Column;
  readonly wrong: boolean;
  readonly describedBy: string;
}

function ChoiceCell({ at, label, column, wrong, describedBy }: ChoiceCellProps) {
  const value: Json | undefined = valueAt(at);
  return (
    <div data-path={at}>
      <select
        aria-label={label}
        aria-invalid={wrong || undefined}
        aria-describedby={describedBy}
        value={typeof value === "string" ? value : ""}
        onChange={({ currentTarget }) =>
          edit(at, currentTarget.value === "" ? undefined : currentTarget.value, "chosen", `choose ${label}`)
        }
      >
        <option value="">as all</option>
        {column.choices?.map((word) => (
          <option key={word} value={word}>
            {word}
          </option>
        ))}
      </select>
    </div>
  );
}

/** What all spots of the table have, where this one says nothing of its own. */
function placeholderOf({ key, hint }: Column, path: string): string | undefined {
  const all = ["filled", "rowLength", "rows", "area"].includes(key) ? valueAt(`${path}.${key}`) : undefined;
  return typeof all === "string" || typeof all === "number" ? String(all) : hint;
}

/** What a bare number counts in; "" where there is no unit to it. */
function unitOf({ quantity }: Column): string {
  return quantity === undefined ? "" : kinds[quantity][units.value].unit;
}
