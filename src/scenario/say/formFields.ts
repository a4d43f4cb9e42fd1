import * as z from "zod";
import type { QuantityKind } from "../../quantity/index.ts";
import { formFacts } from "../fields/facts/formFacts.ts";
import { scenarioFileFields } from "../fields/file.ts";

/** How a form has to ask for a field. */
export interface FormField {
  readonly as: "quantity" | "number" | "text" | "list" | "choice" | "switch";
  readonly kind?: QuantityKind;
  readonly choices?: readonly string[];
}

/**
 * Every field of the scenario file by its place, an index as `[]`: what the page's forms take their controls from. The page has it
 * as JSON, so that it needs no zod.
 * @example formFields()["soil.layers[].bulkDensity"] // { as: "quantity", kind: "density" }
 */
export function formFields(): Readonly<Record<string, FormField>> {
  const found: Record<string, FormField> = {};
  collect(scenarioFileFields, "", found);
  return found;
}

function collect(type: z.core.$ZodType, at: string, found: Record<string, FormField>): void {
  const field = unwrapped(type);
  if (field instanceof z.ZodObject) {
    for (const [key, child] of Object.entries(field.shape))
      collect(child as z.core.$ZodType, at === "" ? key : `${at}.${key}`, found);
    return;
  }
  const form = formOf(field);
  if (form !== null) found[at] = form;
  if (field instanceof z.ZodArray) collect(field.element, `${at}[]`, found);
  else if (form === null && field instanceof z.ZodUnion)
    for (const option of field.options) collect(option, at, found);
}

/** Null for what no single control asks for. */
function formOf(field: z.core.$ZodType): FormField | null {
  const { kind, choices, isNumber } = formFacts.get(field) ?? {};
  if (isNumber === true) return { as: "number" };
  if (choices !== undefined) return { as: "choice", choices };
  const read = field instanceof z.ZodPipe ? field.in : field;
  if (field instanceof z.ZodEnum) return { as: "choice", choices: field.options.map(String) };
  if (read instanceof z.ZodBoolean) return { as: "switch" };
  if (read instanceof z.ZodNumber) return { as: "number" };
  if (read instanceof z.ZodString) return { as: "text" };
  if (read instanceof z.ZodArray) {
    const item = formOf(unwrapped(read.element));
    return item?.as === "quantity" ? { ...item, as: "list" } : null;
  }
  if (!(read instanceof z.ZodUnion)) return null;
  const takesList = read.options.some((one) => one instanceof z.ZodArray);
  if (kind !== undefined) return { as: takesList ? "list" : "quantity", kind };
  return read.options.every((one) => one instanceof z.ZodString || one instanceof z.ZodNumber)
    ? { as: "text" }
    : null;
}

function unwrapped(type: z.core.$ZodType): z.core.$ZodType {
  return type instanceof z.ZodOptional || type instanceof z.ZodNullable ? unwrapped(type.unwrap()) : type;
}
