import { expect, test } from "vitest";
import type { Closeness } from "../published.ts";

/** A record of `data-reference/`: what was published, how closely we must meet it and why, and where it stands. */
export interface ReferenceRecord<Inputs, Expected, Tolerance = number> {
  readonly id: string;
  readonly what: string;
  readonly inputs: Inputs;
  readonly expected: Expected;
  readonly unit: string;
  readonly tolerance: Tolerance;
  readonly because: string;
  readonly source: string;
  readonly locator: string;
  readonly provenance: string;
}

type AnyRecord = ReferenceRecord<unknown, unknown, unknown>;

const agreedKeys = ["what", "unit", "tolerance", "because", "source", "locator", "provenance"] as const;

/** Hands out the records of one file; `noneLeft`, called last, fails where one was forgotten or says too little. */
export function recordsOf<R extends { readonly id: string }>(file: readonly R[]) {
  const left = new Set(file.map(({ id }) => id));
  return {
    /** One record; says what it holds, since a file's rows differ. */
    take<Inputs, Expected, Tolerance = number>(id: string): ReferenceRecord<Inputs, Expected, Tolerance> {
      const found = file.find((record) => record.id === id);
      if (!found) throw new Error(`no record ${id}`);
      left.delete(id);
      return found as unknown as ReferenceRecord<Inputs, Expected, Tolerance>;
    },
    /** Every record that `which` picks, for a table whose records are its rows. */
    rows(which: (record: R) => boolean = () => true): readonly R[] {
      const picked = file.filter(which);
      for (const { id } of picked) left.delete(id);
      return picked;
    },
    noneLeft(): void {
      test("every record of the file is checked, and says unit, tolerance, why and source", () => {
        expect([...left], "not checked").toEqual([]);
        expect(new Set(file.map(({ id }) => id)).size, "ids are each their own").toBe(file.length);
        for (const record of file as unknown as AnyRecord[]) {
          const missing = agreedKeys.filter((key) => record[key] === undefined || record[key] === "");
          expect(missing, record.id).toEqual([]);
          expect(markOf(record), record.id).toBe(record.provenance);
        }
      });
    },
  };
}

/** Source and place of a record, for a title. */
export const sourceOf = ({ source, locator }: Pick<AnyRecord, "source" | "locator">): string =>
  locator === "-" ? source : `${source}, ${locator}`;

/** How closely a record is to be met, as `published` takes it. */
export function closenessOf(record: ReferenceRecord<unknown, unknown>): Closeness {
  const { unit, tolerance, because } = record;
  return { unit, tolerance, because, mark: markOf(record) };
}

export function markOf({ provenance }: { readonly provenance: string }): Closeness["mark"] {
  if (provenance === "read" || provenance === "memory" || provenance === "common practice, no source")
    return provenance;
  throw new Error(`a record is marked "${provenance}", which is none of the agreed marks`);
}
