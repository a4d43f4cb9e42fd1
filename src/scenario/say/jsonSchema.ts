import * as z from "zod";
import { scenarioFileFields } from "../fields/file.ts";

/** The scenario file as a JSON Schema, for editors; generated from what the reader itself checks. */
export function scenarioJsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(scenarioFileFields, { io: "input" });
  return { $schema, $id: "rootfront-scenario-1.schema.json", title: "rootfront scenario", ...rest };
}
