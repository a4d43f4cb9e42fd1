import { writeFileSync } from "node:fs";
import { worthOfUnits } from "./unitsOfMathjs.ts";

/** Writes what the units of the trade are worth, as mathjs has it; a test says when that is due. */
const path = new URL("../src/quantity/unitTable.json", import.meta.url);
writeFileSync(path, `${JSON.stringify(await worthOfUnits(), null, 2)}\n`);
