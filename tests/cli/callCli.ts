import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";
import { run } from "../../src/cli/main.ts";

export interface Called {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A folder of its own for a test file, gone afterwards. */
export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "rootfront-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Calls the command line in this process. */
export async function call(cwd: string, ...args: readonly string[]): Promise<Called> {
  return callWith(cwd, "", ...args);
}

/** The same with this on standard input, in pieces that end anywhere. */
export async function callWith(
  cwd: string,
  input: string | Uint8Array,
  ...args: readonly string[]
): Promise<Called> {
  const bytes = Buffer.from(input);
  let out = "";
  let err = "";
  const code = await run(args, {
    stdout: { write: (text) => (out += text) },
    stderr: { write: (text) => (err += text) },
    cwd,
    isTerminal: false,
    stdin: {
      whole: () => bytes,
      pieces: async function* () {
        for (let at = 0; at < bytes.length; at += 1000) yield bytes.subarray(at, at + 1000);
      },
    },
  });
  return { code, out, err };
}

/** A small scenario, invented: two cases on silt loam. */
export const smallScenario = {
  format: "rootfront-scenario/1",
  name: "small and invented",
  invented: true,
  site: { latitude: "38.5 N", elevation: "3300 ft" },
  soil: {
    layers: [
      { name: "topsoil", thickness: "6 in", texture: "silt loam", bulkDensity: "1.35 g/cm^3" },
      { name: "pan", thickness: "3 in", texture: "silt loam", bulkDensity: "1.62 g/cm^3" },
      { name: "subsoil", bottom: "110 in", texture: "silt loam" },
    ],
    startingWater: { share: "50 %" },
  },
  weather: { pattern: "summer-peak", annualRain: "12..14 in" },
  crop: { name: "grain sorghum" },
  cases: [{ name: "as dug" }, { name: "deeper", rootingDepth: "+2 in" }],
  ensemble: { years: 12 },
};

export function writeJson(folder: string, name: string, value: unknown): string {
  writeFileSync(join(folder, name), JSON.stringify(value));
  return name;
}
