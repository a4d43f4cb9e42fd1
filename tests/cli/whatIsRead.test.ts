import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { demoAsWritten } from "../support/demos.ts";
import { call } from "./callCli.ts";

const folder = mkdtempSync(join(tmpdir(), "rootfront-read-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("what is no scenario at all is told of its file", async () => {
  writeFileSync(join(folder, "list.json"), "[]");
  const { code, out, err } = await call(folder, "check", "list.json");
  expect([code, out]).toEqual([1, ""]);
  expect(err).toMatch(
    /^list\.json: expected a group of keys in braces, .* found an empty list; write it between/,
  );
});

test("a key that people call otherwise leads to its name here", async () => {
  const soil = { layers: [{ name: "stony", bottom: "40 in", texture: "loam", stones: "20 %" }] };
  writeFileSync(
    join(folder, "stony.json"),
    JSON.stringify({ ...demoAsWritten("sunflower-over-dry-clay"), soil }),
  );
  const { err } = await call(folder, "check", "stony.json");
  expect(err).toContain(
    'soil.layers[0].stones: expected a key that belongs here, found "stones"; did you mean "gravelVolume"?',
  );
});

test("a folder's name is no file to write to, and nothing is written", async () => {
  const before = readdirSync(folder);
  writeFileSync(join(folder, "good.json"), JSON.stringify(demoAsWritten("sunflower-over-dry-clay")));
  const { code, out, err } = await call(
    folder,
    "compare",
    "good.json",
    "--years",
    "4",
    "--out",
    "answer.txt/",
  );
  expect([code, out]).toEqual([2, ""]);
  expect(err).toBe(
    '--out: expected a file that can be written, found "answer.txt/", a folder\'s name; name a file in it\n',
  );
  expect(readdirSync(folder).sort()).toEqual([...before, "good.json"].sort());
});

test.skipIf(!existsSync("/dev/zero"))("what has no end is read no further than a text can hold", async () => {
  const { code, out, err } = await call(folder, "check", "/dev/zero");
  expect([code, out]).toEqual([1, ""]);
  expect(err).toMatch(/^\/dev\/zero: expected a file below 512 MB, found one of \d+ MB; /);
});
