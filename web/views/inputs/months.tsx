import { monthNames } from "../../../src/quantity/dates.ts";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { Sheet } from "../../forms/sheet.tsx";
import { units } from "../../state/view.ts";
import { monthsPath, monthsTable } from "./monthsTable.ts";

/** Twelve months of normals, cell by cell or pasted from a spreadsheet. */
export function MonthsTable() {
  const table = monthsTable(units.value);
  const places = [monthsPath, ...table.columns.map(({ key }) => `${monthsPath}.${key}`)];
  return (
    <div class="months" data-path={monthsPath}>
      <Sheet
        table={table}
        title="Monthly normals"
        rows={12}
        rowHead="Month"
        rowMark={(month) => monthNames[month]!}
        rowName={(month) => monthNames[month]!}
        head={(column) => (table.columns[column]!.key === "wetDays" ? "Wet days" : undefined)}
        how="A number alone counts in the unit of its column's head; another unit may be typed with it. Copied from a spreadsheet, months may run down or across: paste into the cell where they begin. Wet days, of 0.01 in (0.25 mm) or more, may be left out, all of them."
      />
      <ProblemNote
        id="inputs-months-wrong"
        problems={places.flatMap((place) => fieldState(place).problems)}
        of={({ field }) => table.columns.find(({ key }) => field === `${monthsPath}.${key}`)?.word}
      />
    </div>
  );
}
