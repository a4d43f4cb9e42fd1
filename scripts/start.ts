/**
 * `npm start`: the demo's answer on the terminal, then the page on it, served from this machine until Ctrl+C.
 * `npm start -- --port 9000` asks for another port.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { buildPageIfOlder } from "./buildPage.ts";
import { servePage } from "./serve.ts";

const usualPort = 8640;
const root = fileURLToPath(new URL("..", import.meta.url));

const port = portAsked();
if (port === null) {
  process.stderr.write(
    "--port: expected a port from 0 to 65535, such as 9000; leave it out for the usual one\n",
  );
  process.exit(2);
}
const demo = "shared/scenarios/sorghum-over-plough-pan.json";
const { status } = spawnSync(process.execPath, ["bin/rootfront.mjs", "compare", demo], {
  cwd: root,
  stdio: "inherit",
});
if (status !== 0) process.exit(status ?? 1);
await buildPageIfOlder(root);
const { address, close } = await servePage(`${root}dist-page`, port);
process.stdout.write(`\nThe page, with the same demo: ${address}\nCtrl+C ends it.\n`);
for (const signal of ["SIGINT", "SIGTERM"] as const) {
  process.on(signal, () => void close().then(() => process.exit(0)));
}

function portAsked(): number | null {
  try {
    const { values } = parseArgs({ options: { port: { type: "string" } } });
    const asked = values.port ?? String(usualPort);
    return /^\d{1,5}$/.test(asked) && Number(asked) <= 65_535 ? Number(asked) : null;
  } catch {
    return null;
  }
}
