import { resolve } from "node:path";
import { InputError, UsageError } from "../problem.ts";
import { loadUnits } from "../quantity/index.ts";
import { inFlags, quickScenario, type Scenario } from "../scenario/index.ts";
import type { Context } from "./context.ts";
import type { GivenFlags } from "./flags.ts";
import { resolveWith } from "./loadScenario.ts";
import { withFlags } from "./overrides.ts";
import { handOver, isSameFile, refuseExisting, refuseUnwritable } from "./writeFile.ts";

/** Flags of the quick question alone: beside a file they have nothing to say. */
export const quickFlags = [
  "texture",
  "crop",
  "deeper",
  "pattern",
  "sowing",
  "latitude",
  "elevation",
  "rotation",
  "residue",
  "moist",
  "save",
] as const satisfies readonly (keyof GivenFlags)[];

/** The flags of it that were given. */
export function quickFlagsGiven(flags: GivenFlags): readonly (typeof quickFlags)[number][] {
  return quickFlags.filter((name) => flags[name] !== undefined);
}

/** A scenario from flags alone, what it assumes told first; saved where that is asked. */
export async function askQuickly(context: Context, flags: GivenFlags): Promise<Scenario> {
  const { cwd } = context;
  refuseSaving(cwd, flags);
  await loadUnits();
  const { file, assumed } = quickScenario(flags);
  // The rain is in the file already.
  const { rain: _, ...others } = flags;
  const written = withFlags(file, others).raw;
  const scenario = await resolveWith(context, written, { units: flags.units }, "quick question", cwd).catch(
    (error: unknown) => {
      throw error instanceof InputError ? inFlags(error.problems) : error;
    },
  );
  if (flags.save !== undefined) {
    refuseExisting(cwd, flags.save, "--save");
    handOver(context, `${JSON.stringify(written, null, 2)}\n`, flags.save, "--save");
  }
  return { ...scenario, defaults: [...assumed, ...scenario.defaults] };
}

/** A scenario is saved to a file of its own that is not there yet. */
function refuseSaving(cwd: string, { save, out }: GivenFlags): void {
  if (save === undefined) return;
  if (save === "-") throw new UsageError('--save writes a file: name one such as "my-field.json"');
  if (out !== undefined && out !== "-" && isSameFile(resolve(cwd, save), resolve(cwd, out)))
    throw new UsageError("--save and --out name the same file; name two");
  refuseUnwritable(cwd, save, "--save");
  refuseExisting(cwd, save, "--save");
}
