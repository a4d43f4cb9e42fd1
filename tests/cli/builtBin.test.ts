import { spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, realpathSync } from "node:fs";
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
    stderr: 'rootfront: not built yet; run "npm run build" first\n',
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
    expect(stdout).toMatch(/^date,case,.*\nrun 1: sown in 2001, rain scaled to 13 in\n$/);
  });

  test("the quick question answers in under 5 s", () => {
    const from = performance.now();
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
    expect(spawn(bin, "compare", ...quick).status).toBe(0);
    expect(performance.now() - from).toBeLessThan(5000);
  });
});
