import * as z from "zod";
import type { QuantityKind } from "../../../quantity/index.ts";

/** What a form needs to know of a field and its JSON Schema does not say. */
export interface FormFacts {
  readonly kind?: QuantityKind;
  /** Words to choose from, where others that mean the same are read too. */
  readonly choices?: readonly string[];
  /** Text is read too, but what is wanted is a number. */
  readonly isNumber?: boolean;
}

export const formFacts = z.registry<FormFacts>();
