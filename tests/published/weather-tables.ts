import { expect, test } from "vitest";
import { published, type Closeness } from "./published.ts";

/** A table of `data-reference/`: columns of inputs, and one expected value a row. */
export interface ReferenceTable extends Omit<Closeness, "mark"> {
  readonly id: string;
  readonly what: string;
  readonly inputs: { readonly [name: string]: readonly (number | string)[] | undefined };
  readonly expected: readonly number[];
  readonly source: string;
  readonly locator: string;
  readonly provenance: string;
}

/** Runs tables of one file by their id; `noneLeft` fails where one was forgotten. */
export function tablesOf(file: readonly ReferenceTable[]) {
  const left = new Set(file.map(({ id }) => id));
  return {
    check(id: string, ours: (...inputs: never[]) => number): void {
      const table = file.find((each) => each.id === id);
      if (!table) throw new Error(`no table ${id}`);
      left.delete(id);
      const columns = Object.values(table.inputs).filter((column) => column !== undefined);
      const rows = table.expected.map((value, row) => [...columns.map((column) => column[row]!), value]);
      const name = `${id}: ${table.what}. ${table.source} ${table.locator}`;
      published(name, { ...table, mark: markOf(table) }, rows, ours);
    },
    noneLeft(): void {
      test("every table of the file is checked", () => expect([...left]).toEqual([]));
    },
  };
}

function markOf({ id, provenance }: ReferenceTable): Closeness["mark"] {
  if (provenance === "read" || provenance === "memory") return provenance;
  throw new Error(`table ${id} is neither read nor from memory`);
}
