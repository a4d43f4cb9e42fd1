import { writeFileSync } from "node:fs";
import { scenarioJsonSchema } from "../src/scenario/say/jsonSchema.ts";

/** Writes the JSON Schema of the scenario file; a test says when that is due. */
const path = new URL("../shared/rootfront-scenario-1.schema.json", import.meta.url);
writeFileSync(path, `${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`);
