import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";

/** What the page is made from. */
const sources = ["web", "src", "data-reference", "shared", "vite.config.ts", "package-lock.json"];

/** Builds the page into dist-page/ unless what lies there is newer than all it is made from. */
export async function buildPageIfOlder(root: string): Promise<void> {
  const built = newest(join(root, "dist-page", "sw.js"));
  if (built > Math.max(...sources.map((name) => newest(join(root, name))))) return;
  await buildPage(root);
}

/** @param outDir where it goes, in place of dist-page/ */
export async function buildPage(root: string, outDir?: string): Promise<void> {
  // A test runner sets this to "test", and then the page would be built for development.
  const before = process.env["NODE_ENV"];
  process.env["NODE_ENV"] = "production";
  try {
    await build({
      configFile: join(root, "vite.config.ts"),
      logLevel: "error",
      ...(outDir === undefined ? {} : { build: { outDir } }),
    });
  } finally {
    if (before === undefined) delete process.env["NODE_ENV"];
    else process.env["NODE_ENV"] = before;
  }
}

/** When the youngest file below a place was changed, ms; 0 where there is none. */
function newest(place: string): number {
  const here = statSync(place, { throwIfNoEntry: false });
  if (here === undefined) return 0;
  if (!here.isDirectory()) return here.mtimeMs;
  return Math.max(here.mtimeMs, ...readdirSync(place).map((name) => newest(join(place, name))));
}
