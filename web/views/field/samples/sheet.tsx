import type { Table } from "../../../forms/edits/cells.ts";
import { Sheet } from "../../../forms/sheet.tsx";
import type { Changes } from "../../../state/path.ts";
import { editMany } from "../../../state/scenarioStore.ts";

interface SamplesProps {
  /** The list in the scenario. */
  readonly path: string;
  readonly table: Table;
  readonly rows: number;
  readonly title: string;
  /** What one row is: "core". */
  readonly noun: "core" | "reading";
  readonly onAdd: () => Changes;
  readonly remove: (row: number) => Changes;
}

/** A table of what was weighed or read, once there is a row, and a button for one more. */
export function SamplesSheet({ path, noun, onAdd, ...own }: SamplesProps) {
  return (
    <div data-path={path}>
      {own.rows > 0 && (
        <Sheet
          {...own}
          rowHead={noun === "core" ? "Core" : "Reading"}
          rowName={(row) => `${noun} ${row + 1}, ${own.title}`}
          how="A number alone counts in the unit of its column's head."
          howHeard
        />
      )}
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() => editMany(onAdd(), "chosen", `add a ${noun}, ${own.title}`)}
        >
          Add a {noun}
          <span class="only-heard">, {own.title}</span>
        </button>
      </p>
    </div>
  );
}
