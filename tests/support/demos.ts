import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readJson, resolveScenario } from "../../src/scenario/index.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";

export const demoNames = [
  "sorghum-over-plough-pan",
  "wheat-after-fallow",
  "sunflower-over-dry-clay",
  "sorghum-in-rotation",
] as const;

const folder = new URL("../../shared/scenarios/", import.meta.url);

/** A demo as written, to be changed before it is resolved. */
export function demoAsWritten(name: (typeof demoNames)[number]): Record<string, unknown> {
  const text = readFileSync(new URL(`${name}.json`, folder), "utf8");
  return readJson(text, `${name}.json`) as Record<string, unknown>;
}

export function resolved(written: unknown): Promise<Scenario> {
  return resolveScenario(written, {
    fileName: "demo.json",
    readText: (path: string) => readFileSync(fileURLToPath(new URL(path, folder)), "utf8"),
  });
}
