import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildPage } from "../../scripts/buildPage.ts";
import { builtPageVariable } from "./harness.ts";

/** One build of the page for all files of browser tests. */
export default async function setup(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), "rootfront-page-"));
  await buildPage(fileURLToPath(new URL("../..", import.meta.url)), folder);
  process.env[builtPageVariable] = folder;
  return () => rm(folder, { recursive: true, force: true });
}
