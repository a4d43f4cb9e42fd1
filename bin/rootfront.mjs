#!/usr/bin/env node
import { existsSync } from "node:fs";

const built = new URL("../dist/rootfront.mjs", import.meta.url);
if (existsSync(built)) {
  const { runProcess } = await import(built.href);
  await runProcess();
} else {
  process.stderr.write('rootfront: not built yet; run "npm run prepare" first\n');
  process.exitCode = 3;
}
