/** The library as someone else gets it: packed, unpacked beside what it depends on, imported, bundled. */
import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, realpathSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { beforeAll, describe, expect, test } from "vitest";
import { build } from "vite";
import packageFile from "../../package.json" with { type: "json" };
import { ownFolder } from "./callCli.ts";

const root = join(import.meta.dirname, "../..");
const folder = realpathSync(ownFolder());
const project = join(folder, "project");
const user = join(folder, "user");
const inRoot = (name: string): string => join(root, name);

beforeAll(async () => {
  // Built into a folder of its own, so that no other build is in the way.
  for (const name of ["package.json", "LICENSE", "README.md", "bin", "docs", "shared"])
    cpSync(inRoot(name), join(project, name), { recursive: true });
  await build({
    root,
    configFile: inRoot("vite.library.config.ts"),
    logLevel: "error",
    build: { outDir: join(project, "dist/library") },
  });
  const tsc = [inRoot("node_modules/typescript/bin/tsc"), "-p", inRoot("tsconfig.library.json")];
  execFileSync(process.execPath, [...tsc, "--outDir", join(project, "dist/types")]);
  const pack = ["pack", "--ignore-scripts", "--offline", "--pack-destination", folder];
  execFileSync("npm", pack, { cwd: project, stdio: "ignore" });
  const modules = join(user, "node_modules");
  mkdirSync(modules, { recursive: true });
  execFileSync("tar", ["-xzf", join(folder, `rootfront-${packageFile.version}.tgz`), "-C", modules]);
  execFileSync("mv", [join(modules, "package"), join(modules, "rootfront")]);
  for (const name of Object.keys(packageFile.dependencies)) {
    mkdirSync(dirname(join(modules, name)), { recursive: true });
    symlinkSync(realpathSync(inRoot(`node_modules/${name}`)), join(modules, name));
  }
  writeFileSync(join(user, "package.json"), '{ "type": "module" }');
});

function node(file: string, text: string): { status: number | null; stdout: string; stderr: string } {
  writeFileSync(join(user, file), text);
  const { status, stdout, stderr } = spawnSync(process.execPath, [file], { cwd: user, encoding: "utf8" });
  return { status, stdout, stderr };
}

test("importing it does nothing: no output, nothing new in the global scope", () => {
  const text = `
    // zod notes on the global scope that it is there.
    const names = () => Object.getOwnPropertyNames(globalThis).filter((name) => !name.startsWith("__zod")).join();
    const before = names();
    const all = await import("rootfront");
    if (names() !== before) throw new Error("global: " + names());
    if (typeof all.answerOf !== "function") throw new Error("no answerOf");`;
  expect(node("import.js", text)).toEqual({ status: 0, stdout: "", stderr: "" });
});

describe("the examples of docs/library.md run as they stand", () => {
  const examples = [
    ...readFileSync(inRoot("docs/library.md"), "utf8").matchAll(/^```js\n([^]*?)^```$/gm),
  ].map(([, text]) => text!);
  const printed = [
    /^deeper: -?\d+\.\d mm more water used\nyield -?\d+\.\d bu\/ac more\n$/,
    /soil\.layers\[0\]\.texture: expected .* found "silt loom"; did you mean "silt loam"\?/,
    /^31 days, 77\.5 mm of rain\n/,
  ];
  test("all of them", () => expect(examples.length).toBe(printed.length));
  test.each(examples.map((text, i) => [i + 1, text] as const))("example %i", (number, text) => {
    const { status, stdout, stderr } = node(`example-${number}.js`, text);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(printed[number - 1]!);
  });
});

test("types come with it: a wrong call is refused, a right one is not", () => {
  const right = `import { answerOf, resolveScenario, type Comparison, type Scenario } from "rootfront";
    const scenario: Scenario = await resolveScenario({}, { fileName: "", readText: () => "" });
    const answer: Comparison = answerOf(scenario, "us");
    export const depthMm: number = answer.differences[0]!.extraDepthMm;`;
  writeFileSync(join(user, "right.ts"), right);
  writeFileSync(
    join(user, "wrong.ts"),
    right.replace('"us")', '"imperial")').replace("depthMm: number", "d: string"),
  );
  const check = (file: string) =>
    spawnSync(
      process.execPath,
      [
        inRoot("node_modules/typescript/bin/tsc"),
        "--noEmit",
        "--strict",
        "--skipLibCheck",
        "--target",
        "es2023",
        "--module",
        "esnext",
        "--moduleResolution",
        "bundler",
        "--types",
        "",
        file,
      ],
      { cwd: user, encoding: "utf8" },
    ).stdout;
  expect(check("right.ts")).toBe("");
  const wrong = check("wrong.ts");
  expect(wrong).toContain("TS2345");
  expect(wrong).toContain("TS2322");
});

describe("in a bundle, minified, gzip", () => {
  /** kB of what is loaded at once. */
  async function kilobytes(name: string, text: string): Promise<number> {
    const file = join(user, `${name}.js`);
    writeFileSync(file, text);
    const built = await build({
      root: user,
      configFile: false,
      logLevel: "error",
      build: { write: false, minify: true, rolldownOptions: { input: file } },
    });
    const { output } = built as Exclude<typeof built, unknown[]> & {
      output: readonly { type: string; isDynamicEntry?: boolean; code?: string }[];
    };
    const loaded = output.filter(({ type, isDynamicEntry }) => type === "chunk" && !isDynamicEntry);
    expect(loaded.length).toBeGreaterThan(0);
    return loaded.reduce((sum, { code }) => sum + gzipSync(code!).length / 1000, 0);
  }

  test("importing nothing by name brings nothing", async () => {
    expect(await kilobytes("nothing", 'import "rootfront";')).toBeLessThan(0.1);
  });

  test("one season run takes at most 10 kB", async () => {
    const text = `import { makeWorkspace, simulate } from "rootfront";
      globalThis.season = (input) => simulate(input, makeWorkspace(80));`;
    const size = await kilobytes("season", text);
    expect(size).toBeGreaterThan(4);
    expect(size).toBeLessThanOrEqual(10);
  });
});
