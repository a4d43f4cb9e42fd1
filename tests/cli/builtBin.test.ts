import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, readFileSync, realpathSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { build } from "vite";
import { ownFolder, smallScenario, writeJson } from "./callCli.ts";

// The shipped program: built into a folder of its own, so that no other build is in the way.
const root = join(import.meta.dirname, "../..");
const folder = realpathSync(ownFolder());
const bin = join(folder, "bin", "rootfront.mjs");
mkdirSync(join(folder, "bin"));
copyFileSync(join(root, "bin/rootfront.mjs"), bin);
writeJson(folder, "small.json", smallScenario);

function spawn(script: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...args], {
    cwd: folder,
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

test("not built yet, it says so", () => {
  expect(spawn(bin, "--version")).toEqual({
    status: 3,
    stdout: "",
    stderr: 'rootfront: not built yet; run "npm run prepare" first\n',
  });
});

describe("built", () => {
  beforeAll(() =>
    build({
      root,
      configFile: join(root, "vite.cli.config.ts"),
      logLevel: "error",
      build: { outDir: join(folder, "dist") },
    }),
  );

  test("it answers, the same bytes through the bin and by itself", () => {
    const byBin = spawn(bin, "compare", "small.json", "--json");
    const bySelf = spawn(join(folder, "dist/rootfront.mjs"), "compare", "small.json", "--json");
    expect(byBin).toMatchObject({ status: 0, stderr: "" });
    expect(bySelf).toEqual(byBin);
    expect(JSON.parse(byBin.stdout)).toMatchObject({ format: "rootfront-comparison/1" });
  });

  test("exit codes 1 and 2 reach the shell, without a stack trace", () => {
    expect(spawn(bin, "compare", "gone.json")).toEqual({
      status: 1,
      stdout: "",
      stderr: "gone.json: expected a file, found no such file; check the path\n",
    });
    expect(spawn(bin, "frobnicate")).toMatchObject({ status: 2, stdout: "" });
  });

  test("a reader that closes the pipe early is no fault", () => {
    const command = `"${process.execPath}" "${bin}" ledger small.json --run 1 2>errors | head -n 1; cat errors`;
    const { stdout } = spawnSync("bash", ["-c", command], { cwd: folder, encoding: "utf8" });
    expect(stdout).toMatch(
      /^date,case,.*\nrun 1: sown in generated year 1 \(2001\), rain scaled to 13 in\n$/,
    );
  });

  test.skipIf(!existsSync("/dev/full"))("a full disk is told in one line, exit 1", () => {
    const command = `"${process.execPath}" "${bin}" new > /dev/full`;
    const { status, stderr } = spawnSync("bash", ["-c", command], { cwd: folder, encoding: "utf8" });
    expect({ status, stderr }).toEqual({
      status: 1,
      stderr:
        "rootfront: the result cannot be written to standard output: no room left on the disk (ENOSPC)\n",
    });
  });

  test("a result led into a file is whole", () => {
    const command = `"${process.execPath}" "${bin}" compare small.json --json > led.json`;
    expect(spawnSync("bash", ["-c", command], { cwd: folder }).status).toBe(0);
    expect(readFileSync(join(folder, "led.json"), "utf8")).toBe(
      spawn(bin, "compare", "small.json", "--json").stdout,
    );
  });

  // How long it takes is for the benchmark to say: a timed test fails on a busy machine.
  test("the quick question is answered without a file", () => {
    const quick = [
      "--texture",
      "silt loam",
      "--rain",
      "12..14 in",
      "--crop",
      "grain sorghum",
      "--deeper",
      "2 in",
    ];
    const { status, stdout } = spawn(bin, "compare", ...quick);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^At a mean of 13 in of rain a year, /);
  });
});
