import { Sheet } from "../../../forms/sheet.tsx";
import type { JsonGroup } from "../../../state/json.ts";
import { scenario, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { severalSaid, spotsTable, type Column } from "./columns.ts";
import { countsPath, oddRows, removeSpot } from "./edits.ts";

interface SpotsProps {
  /** Which of the tables. */
  readonly index: number;
  readonly title: string;
  readonly spots: readonly JsonGroup[];
  readonly columns: readonly Column[];
}

/** Spots of one case, as counted. */
export function SpotsTable({ index, title, spots, columns }: SpotsProps) {
  const path = `${countsPath}[${index}]`;
  return (
    <Sheet
      table={spotsTable(path, columns, units.value, (key) => valueAt(`${path}.${key}`))}
      title={`Spots of ${title}`}
      rows={spots.length}
      rowHead="Spot"
      rowName={(spot) => `spot ${spot + 1} of ${title}`}
      remove={(spot) => removeSpot(scenario.value, index, spot)}
      how={`${severalSaid(columns)} Rows copied from a spreadsheet may be pasted into the cell where they begin.`}
      blank="Nothing counted here yet: fill it in, or remove the row."
      remark={(spot) => {
        const odd = oddRows(spots[spot]?.["kernelRows"]);
        const are = odd.length === 1 ? "is" : "are";
        return odd.length === 0
          ? ""
          : `${odd.join(", ")} ${are} odd: kernel rows on an ear come in pairs, so count again.`;
      }}
    />
  );
}
