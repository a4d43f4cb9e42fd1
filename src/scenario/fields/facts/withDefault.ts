import type * as z from "zod";
import { sayBoth, type QuantityKind } from "../../../quantity/index.ts";
import { formFacts } from "./formFacts.ts";

/** What holds while a field is left out. */
export interface Default<T> {
  readonly value: T;
  /** Of a quantity; words and plain numbers have none. */
  readonly kind?: QuantityKind | undefined;
  /** Where it comes from; empty where it goes without saying, and no answer tells it. */
  readonly why: string;
}

export function sayDefault({ value, kind }: Default<string | number | boolean>): string {
  return typeof value === "number" && kind !== undefined ? sayBoth(value, kind) : String(value);
}

type WithDefault<S extends z.ZodType> = z.ZodOptional<S> & { readonly byDefault: Default<z.output<S>> };

/** A field that may be left out, with what holds then: the schema tells it, the resolver takes it. */
export function withDefault<S extends z.ZodType<string | number | boolean>>(
  field: S,
  value: z.output<S>,
  why = "",
): WithDefault<S> {
  const byDefault = { value, kind: formFacts.get(field)?.kind, why };
  const means = (field.description ?? "").replace(/\.$/, "");
  const optional = field.describe(`${means}. Left out: ${sayDefault(byDefault)}.`).optional();
  return Object.assign(optional, { byDefault });
}
