import { published } from "../published.ts";
import { closenessOf, recordsOf, sourceOf, type ReferenceRecord } from "./records.ts";

/** A table of `data-reference/`: columns of inputs, and one expected value a row. */
export type ReferenceTable = ReferenceRecord<
  { readonly [name: string]: readonly (number | string)[] | undefined },
  readonly number[]
>;

/** Runs tables of one file by their id; `noneLeft` fails where one was forgotten. */
export function tablesOf(file: readonly ReferenceTable[]) {
  const { take, noneLeft } = recordsOf(file);
  return {
    check(id: string, ours: (...inputs: never[]) => number): void {
      const table = take<ReferenceTable["inputs"], ReferenceTable["expected"]>(id);
      const columns = Object.values(table.inputs).filter((column) => column !== undefined);
      const rows = table.expected.map((value, row) => [...columns.map((column) => column[row]!), value]);
      published(`${id}: ${table.what}. ${sourceOf(table)}`, closenessOf(table), rows, ours);
    },
    noneLeft,
  };
}
