import { Sheet } from "../../../forms/sheet.tsx";
import { scenario, valueAt } from "../../../state/scenarioStore.ts";
import { pairsIn, pairsTable, removePair, stripsPath } from "./edits.ts";

/**
 * Yields of neighbouring strips, as harvested.
 *
 * @param unit what a bare number counts in
 */
export function PairsTable({ unit }: { unit: string }) {
  const names = [0, 1].map((side) => String(valueAt(`${stripsPath}.cases[${side}]`) ?? `case ${side + 1}`));
  return (
    <Sheet
      table={pairsTable(names, unit)}
      title="Yields of strips"
      rows={pairsIn(scenario.value).length}
      rowHead="Pair"
      rowName={(pair) => `pair ${pair + 1}`}
      remove={(pair) => removePair(scenario.value, pair)}
      how="Strips side by side stand in one row. An empty cell is a strip that is missing: the pair is left out. Two columns copied from a spreadsheet may be pasted into the cell where they begin."
      class="strips-table"
    />
  );
}
