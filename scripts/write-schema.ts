import { writeFileSync } from "node:fs";
import { formFields, scenarioJsonSchema } from "../src/scenario/index.ts";

/** Writes what is generated of the scenario file's fields; a test says when that is due. */
write("shared/rootfront-scenario-1.schema.json", scenarioJsonSchema());
write("web/forms/formFields.json", formFields());

function write(path: string, content: unknown): void {
  writeFileSync(new URL(`../${path}`, import.meta.url), `${JSON.stringify(content, null, 2)}\n`);
}
