import type { FormField } from "../../src/scenario/say/formFields.ts";
import { lookUp } from "../../src/lookUp.ts";
import table from "./formFields.json" with { type: "json" };

/**
 * How to ask for a place of the scenario, from the table that `npm run schema` writes.
 * @example formOf("soil.layers[0].bulkDensity") // { as: "quantity", kind: "density" }
 */
export function formOf(path: string): FormField {
  const found = lookUp(table as Readonly<Record<string, FormField>>, path.replace(/\[\d+\]/g, "[]"));
  if (found === undefined) throw new Error(`${path} is no field of a scenario`);
  return found;
}
