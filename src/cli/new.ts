import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { InputError } from "../problem.ts";
import { starterScenario } from "../scenario/index.ts";
import type { Act } from "./commands.ts";
import { handOver, refuseUnwritable } from "./writeFile.ts";

/** `new [FILE]`: a starter scenario, commented by example. Never writes over a file. */
export const act: Act = async (context, file) => {
  if (file !== undefined) {
    refuseUnwritable(context.cwd, file, file);
    if (existsSync(resolve(context.cwd, file))) {
      throw new InputError([
        {
          field: file,
          expected: "a file that does not exist yet",
          found: "one that does",
          mend: "name another",
        },
      ]);
    }
  }
  handOver(context, starterScenario(), file, file);
  if (file !== undefined) context.stderr.write(`wrote ${file}; look at it with: rootfront check ${file}\n`);
};
