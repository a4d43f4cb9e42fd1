import { dirname, resolve } from "node:path";
import { InputError } from "../problem.ts";
import { readJson, resolveScenario, type Scenario, type Surroundings } from "../scenario/index.ts";
import type { Context } from "./context.ts";
import type { GivenFlags } from "./flags.ts";
import { namingFlags, withFlags } from "./overrides.ts";
import { readInput } from "./readFile.ts";
import { fileSaid } from "./standardInput.ts";

/** A scenario file read, flags put in place of its fields, and resolved. Paths in it are relative to it. */
export async function loadScenario(context: Context, file: string, flags: GivenFlags): Promise<Scenario> {
  const { cwd } = context;
  const name = fileSaid(file);
  const written = readJson(readInput(context, flags, cwd, file), name);
  return resolveWith(context, written, flags, name, dirname(resolve(cwd, file)));
}

/**
 * A scenario as written, from a file or from a quick question, resolved under the flags.
 *
 * @param shared what many scenarios read from together
 */
export async function resolveWith(
  context: Context,
  written: unknown,
  flags: GivenFlags,
  fileName: string,
  folder: string,
  shared: Partial<Surroundings> = {},
): Promise<Scenario> {
  const { raw, overrides } = withFlags(written, flags);
  try {
    return await resolveScenario(raw, {
      fileName,
      readText: (path: string, field: string) => readInput(context, flags, folder, path, field),
      longGaps: flags.skipGaps === true ? "told" : "refused",
      ...shared,
    });
  } catch (error) {
    throw namingFlags(wholeFile(error, fileName), overrides);
  }
}

/** What is no scenario at all is told of the file. */
function wholeFile(error: unknown, fileName: string): unknown {
  if (!(error instanceof InputError)) return error;
  return new InputError(
    error.problems.map((one) => (one.field === "scenario" ? { ...one, field: fileName } : one)),
  );
}
