import { fieldState } from "../../../forms/place.tsx";
import { editMany, scenario } from "../../../state/scenarioStore.ts";
import { problemsByPath } from "../../../worker/client.ts";
import { Cell } from "../counts/cell.tsx";
import { pasteRows, rowsAt, writeCell, type Changes, type Column } from "./edits.ts";

interface SheetProps {
  /** The list in the scenario. */
  readonly path: string;
  /** For the ear: what the table is of. */
  readonly title: string;
  /** What one row is: "core". */
  readonly noun: string;
  readonly columns: readonly Column[];
  readonly onAdd: () => Changes;
  readonly onRemove: (row: number) => Changes;
}

/** Rows of numbers as a spreadsheet has them: typed cell by cell, or pasted. */
export function Sheet({ path, title, noun, columns, onAdd, onRemove }: SheetProps) {
  const rows = rowsAt(scenario.value, path);
  const wrongId = `field-${path.replace(/\W+/g, "-")}-wrong`;
  const problems = [...problemsByPath.value].flatMap(([at, list]) =>
    at.startsWith(`${path}[`) ? list.map((problem) => ({ at, problem })) : [],
  );
  const isBlank = (at: string) => fieldState(at).value === "";
  const mistakes = problems.filter(({ at }) => !isBlank(at)).slice(0, 6);
  const blanks = problems.length - problems.filter(({ at }) => !isBlank(at)).length;
  return (
    <div class="sheet" data-path={path}>
      {rows.length > 0 && (
        <div class="scrolls" tabIndex={0} role="region" aria-label={title}>
          <table>
            <thead>
              <tr>
                <th scope="col">{noun.charAt(0).toUpperCase() + noun.slice(1)}</th>
                {columns.map(({ key, word, unit }) => (
                  <th key={key} scope="col">
                    {word}, {unit}
                  </th>
                ))}
                <th scope="col">
                  <span class="only-heard">Take out</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((_, r) => (
                <tr key={r}>
                  <th scope="row">{r + 1}</th>
                  {columns.map((column, c) => {
                    const at = `${path}[${r}].${column.key}`;
                    const { problems: own, value } = fieldState(at);
                    const wrong = own.length > 0 && value !== "";
                    return (
                      <td key={column.key}>
                        <Cell
                          path={at}
                          label={`${column.word} of ${noun} ${r + 1}, ${title}`}
                          placeholder={column.unit}
                          wrong={wrong}
                          describedBy={wrong ? wrongId : `${wrongId}-how`}
                          onType={(text) =>
                            editMany(
                              writeCell(`${path}[${r}]`, column, text),
                              "typed",
                              `type ${column.word} of ${noun} ${r + 1}`,
                            )
                          }
                          onPaste={(cells) =>
                            editMany(
                              [
                                [
                                  path,
                                  pasteRows(
                                    rowsAt(scenario.value, path),
                                    cells,
                                    { row: r, column: c },
                                    columns,
                                  ),
                                ],
                              ],
                              "chosen",
                              `paste ${title}`,
                            )
                          }
                        />
                      </td>
                    );
                  })}
                  <td>
                    <button
                      type="button"
                      class="small"
                      onClick={() => editMany(onRemove(r), "chosen", `remove ${noun} ${r + 1}, ${title}`)}
                    >
                      Remove
                      <span class="only-heard">
                        {" "}
                        {noun} {r + 1}, {title}
                      </span>
                    </button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {rows.length > 0 && (
        <p class="only-heard" id={`${wrongId}-how`}>
          A number alone counts in the unit of its column's head.
        </p>
      )}
      {blanks > 0 && (
        <p class="plants-blank" role="status">
          {blanks === 1 ? "One cell is" : `${blanks} cells are`} still to be filled in.
        </p>
      )}
      {mistakes.length > 0 && (
        <p class="field-problem" id={wrongId} role="alert">
          {mistakes.map(({ at, problem: { expected, found, mend } }) => (
            <span key={at}>
              {saidPlace(at, path, noun, columns)}: expected {expected}, found {found}; {mend}.{" "}
            </span>
          ))}
        </p>
      )}
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() => editMany(onAdd(), "chosen", `add a ${noun}, ${title}`)}
        >
          Add a {noun}
          <span class="only-heard">, {title}</span>
        </button>
      </p>
    </div>
  );
}

/** @example saidPlace("soil.layers[0].cores[1].dryMass", …) // "Core 2, dry" */
function saidPlace(at: string, path: string, noun: string, columns: readonly Column[]): string {
  const [, row = "0", key] = /^\[(\d+)\](?:\.(\w+))?/.exec(at.slice(path.length)) ?? [];
  const word = columns.find((column) => column.key === key)?.word.toLowerCase() ?? key;
  const one = `${noun.charAt(0).toUpperCase() + noun.slice(1)} ${Number(row) + 1}`;
  return word === undefined ? one : `${one}, ${word}`;
}
