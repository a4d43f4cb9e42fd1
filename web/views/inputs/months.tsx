import { useSignal } from "@preact/signals";
import { kinds, type QuantityKind } from "../../../src/quantity/kinds.ts";
import { monthNames } from "../../../src/quantity/dates.ts";
import { ProblemNote } from "../../forms/notes.tsx";
import { monthColumns, pastedCells } from "../../forms/edits/pasted.ts";
import { fieldState, problemsWithin } from "../../forms/place.tsx";
import { cellWithUnit } from "../../forms/withUnit.ts";
import { isList, type Json } from "../../state/json.ts";
import { editMany, endEdit, valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";

const path = "weather.monthlyNormals";
const columns = [
  { key: "rain", word: "Rain", kind: "rain", unit: () => kinds.rain[units.value].unit },
  { key: "wetDays", word: "Wet days", kind: "duration", unit: () => "days" },
  { key: "tMax", word: "Mean high", kind: "temperature", unit: () => kinds.temperature[units.value].unit },
  { key: "tMin", word: "Mean low", kind: "temperature", unit: () => kinds.temperature[units.value].unit },
] as const satisfies readonly { key: string; word: string; kind: QuantityKind; unit: () => string }[];

/** Twelve months of normals, cell by cell or pasted from a spreadsheet. */
export function MonthsTable() {
  const problems = problemsWithin(path);
  return (
    <div class="months" data-path={path}>
      <p class="aside" id="inputs-months-how">
        A number alone counts in the unit of its column's head; another unit may be typed with it. Copied from
        a spreadsheet, months may run down or across: paste into the cell where they begin. Wet days, of 0.01
        in (0.25 mm) or more, may be left out, all of them.
      </p>
      <div class="scrolls" tabIndex={0} role="region" aria-label="Monthly normals">
        <table>
          <thead>
            <tr>
              <th scope="col">Month</th>
              {columns.map(({ key, word, unit }) => (
                <th key={key} scope="col">
                  {key === "wetDays" ? word : `${word}, ${unit()}`}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {monthNames.map((name, month) => (
              <tr key={name}>
                <th scope="row">{name.slice(0, 3)}</th>
                {columns.map((_, column) => (
                  <td key={column}>
                    <Cell column={column} month={month} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <ProblemNote id="inputs-months-wrong" problems={problems.slice(0, 6)} />
    </div>
  );
}

function Cell({ column, month }: { column: number; month: number }) {
  const { key, word, unit } = columns[column]!;
  const at = `${path}.${key}[${month}]`;
  const { text, problems } = fieldState(at);
  // While it is typed in, a cell shows what was typed; the scenario has its unit already.
  const typed = useSignal<string | null>(null);
  return (
    <div data-path={at}>
      <input
        type="text"
        autoComplete="off"
        aria-label={`${word}, ${monthNames[month]}`}
        aria-invalid={problems.length > 0 || undefined}
        aria-describedby={problems.length > 0 ? "inputs-months-wrong" : "inputs-months-how"}
        value={typed.value ?? text}
        onInput={({ currentTarget: { value } }) => {
          typed.value = value;
          write([{ column, month, text: value }], "typed", `type ${word} of ${monthNames[month]}`);
        }}
        onBlur={() => {
          typed.value = null;
          endEdit();
        }}
        onPaste={(event) => {
          const rows = pastedCells(event.clipboardData?.getData("text/plain") ?? "");
          if (rows === null) return;
          event.preventDefault();
          typed.value = null;
          const cells = monthColumns(rows).flatMap((values, c) =>
            values.map((value, m) => ({ column: column + c, month: month + m, text: value })),
          );
          write(
            cells.filter((cell) => cell.column < columns.length && cell.month < 12),
            "chosen",
            "paste monthly normals",
          );
        }}
        placeholder={unit()}
      />
    </div>
  );
}

interface CellText {
  readonly column: number;
  readonly month: number;
  readonly text: string;
}

/** Whole lists are written, so that none has fewer than twelve; a column emptied to the last is left out. */
function write(cells: readonly CellText[], how: "typed" | "chosen", said: string): void {
  const changes = columns.flatMap(({ key, unit }, c) => {
    const own = cells.filter(({ column }) => column === c);
    if (own.length === 0) return [];
    const before = valueAt(`${path}.${key}`);
    const list: Json[] = Array.from({ length: 12 }, (_, month) =>
      isList(before) ? (before[month] ?? "") : "",
    );
    for (const { month, text } of own) list[month] = cellWithUnit(text, unit());
    const empty = list.every((one) => one === "");
    return [[`${path}.${key}`, empty ? undefined : list] as const];
  });
  editMany(changes, how, said);
}
