/** batch as a process: signals, closed pipes, killed jobs. */
import { spawn, spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { callWith, ownFolder, smallScenario } from "./callCli.ts";

const root = join(import.meta.dirname, "../..");
const folder = ownFolder();
const tsx = import.meta.resolve("tsx");
const command = [process.execPath, "--import", tsx, join(root, "src/cli/main.ts"), "batch"];
const shell = command.map((part) => `"${part}"`).join(" ");

const input = Array.from({ length: 12 }, (_, i) =>
  JSON.stringify({ ...smallScenario, name: `field ${i}`, ensemble: { years: 4 } }),
);
writeFileSync(join(folder, "fields.ndjson"), `${input.join("\n")}\n`);

const whole = async (): Promise<string> => (await callWith(folder, `${input.join("\n")}\n`, "batch")).out;

test.each(["SIGINT", "SIGTERM"] as const)(
  "%s finishes the line in hand, and the run goes on later",
  async (signal) => {
    const out = join(folder, `${signal}.out`);
    const [node, ...args] = command;
    const child = spawn(node!, [...args, "fields.ndjson", "--out", out], { cwd: folder });
    let err = "";
    child.stderr.on("data", (piece) => (err += piece));
    const ended = new Promise<number | null>((done) => child.on("close", done));
    // From the first line on it is at work.
    const linesThere = () => {
      try {
        return readFileSync(out, "utf8").split("\n").length - 1;
      } catch {
        return 0;
      }
    };
    while (linesThere() < 1 && child.exitCode === null) await new Promise((on) => setTimeout(on, 5));
    child.kill(signal);
    expect(await ended).toBe(130);
    const text = readFileSync(out, "utf8");
    expect(text.endsWith("\n")).toBe(true);
    expect(linesThere()).toBeLessThan(input.length);
    expect(err).toBe(`rootfront: stopped after line ${linesThere()}; go on with --resume\n`);
    spawnSync("bash", ["-c", `${shell} fields.ndjson --out ${signal}.out --resume`], { cwd: folder });
    expect(readFileSync(out, "utf8")).toBe(await whole());
  },
  240_000,
);

test("stopped while it waits for a line, it ends", async () => {
  const [node, ...args] = command;
  const child = spawn(node!, args, { cwd: folder });
  const ended = new Promise<number | null>((done) => child.on("close", done));
  const first = new Promise((done) => child.stdout.once("data", done));
  child.stdin.write(`${input[0]}\n`);
  await first;
  child.kill("SIGINT");
  expect(await ended).toBe(130);
});

test("a reader that closes the pipe ends it quietly", () => {
  const { stdout } = spawnSync(
    "bash",
    ["-c", `${shell} fields.ndjson 2>errors | head -n 1 | wc -l; cat errors`],
    { cwd: folder, encoding: "utf8" },
  );
  expect(stdout.trim()).toBe("1");
});

const hasParallel = spawnSync("parallel", ["--version"], { encoding: "utf8" }).stdout?.startsWith("GNU");

test.skipIf(!hasParallel)(
  "under GNU parallel, jobs killed and resumed give the file of a single run",
  async () => {
    const bash = (text: string) => spawnSync("bash", ["-c", text], { cwd: folder, encoding: "utf8" });
    bash("split --lines 3 --additional-suffix .ndjson fields.ndjson part-");
    const jobs = `parallel --will-cite -j2 '${shell} {} --out {.}.out --resume' ::: part-*.ndjson`;
    // Killed where it stands, however far that is.
    bash(`${jobs} & engine=$!; sleep 3; kill -KILL $(ps -o pid= --ppid $engine) $engine`);
    bash(jobs);
    expect(bash("cat part-*.out").stdout).toBe(await whole());
  },
);
if (!hasParallel) console.log("GNU parallel is not on this machine: the test of killed jobs is skipped");
