import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { embeddedText } from "../../src/report/page/embedded.ts";
import { call, ownFolder, smallScenario, writeJson } from "./callCli.ts";

const folder = ownFolder();
const scenarios = join(import.meta.dirname, "../../shared/scenarios");

/** Only what a browser would run or fetch; a data block is neither. */
function runsOrFetches(html: string): string[] {
  const tags = html.match(/<[a-z][^>]*>/gi) ?? [];
  return tags.filter(
    (tag) =>
      (/^<script/i.test(tag) && !/type="application\/json"/.test(tag)) ||
      /\son\w+\s*=/i.test(tag) ||
      /^<(?:iframe|object|embed|base|form|img|a)\b/i.test(tag) ||
      (/\s(?:src|href|action|srcset|data)\s*=/i.test(tag) && !/href="data:,"/.test(tag)),
  );
}

function held(html: string): { scenario: unknown; attachments: Record<string, string> } {
  return JSON.parse(embeddedText(html) ?? "null") as ReturnType<typeof held>;
}

describe("rootfront report", () => {
  test("is one page that needs nothing else and holds the scenario", async () => {
    const file = writeJson(folder, "small.json", smallScenario);
    const { code, out, err } = await call(folder, "report", file);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(runsOrFetches(out)).toEqual([]);
    expect(out).not.toMatch(/url\(|@import|NaN|Infinity|undefined/);
    expect(held(out)).toEqual({ scenario: smallScenario, attachments: {} });
    const levels = [...out.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level));
    expect(levels[0]).toBe(1);
    levels.forEach((level, i) => expect(level).toBeLessThanOrEqual((levels[i - 1] ?? 0) + 1));
    // Every drawing has a name and says what there is to see.
    const drawings = out.match(/<svg/g)!.length;
    expect(drawings).toBe(5);
    expect(out.match(/<svg[^>]*role="img" aria-labelledby="(\w+)-title \1-says"/g)).toHaveLength(drawings);
  });

  test("says the same as compare on the same file", async () => {
    const file = writeJson(folder, "small.json", smallScenario);
    const compared = JSON.parse((await call(folder, "compare", file, "--json")).out) as {
      cases: { yield: { p10: number; p50: number; p90: number } }[];
    };
    const { out } = await call(folder, "report", file);
    for (const { yield: grown } of compared.cases) {
      const [low, middle, high] = [grown.p10, grown.p50, grown.p90].map((value) => value.toFixed(0));
      expect(out).toContain(
        `<td data-head="yield">${middle}</td><td data-head="low">${low}</td><td data-head="high">${high}</td>`,
      );
    }
  });

  test("holds the record it was made from", async () => {
    const { code, out } = await call(scenarios, "report", "wheat-after-fallow.json", "--years", "8");
    expect(code).toBe(0);
    const { scenario, attachments } = held(out);
    const written = JSON.parse(readFileSync(join(scenarios, "wheat-after-fallow.json"), "utf8")) as object;
    // With the flags in place: opened again it gives this very answer.
    expect(scenario).toEqual({ ...written, ensemble: { years: 8, seed: 1 } });
    expect(attachments).toEqual({
      "invented-station.csv": readFileSync(join(scenarios, "invented-station.csv"), "utf8"),
    });
  });

  test("takes names from anywhere as text", async () => {
    const nasty = "</script><b onload=x>&\"' עברית‮ 玉米";
    const file = writeJson(folder, "nasty.json", {
      ...smallScenario,
      name: nasty,
      soil: {
        ...smallScenario.soil,
        layers: smallScenario.soil.layers.map((layer, i) => ({ ...layer, name: `${nasty} ${i}` })),
      },
      cases: [{ name: `${nasty} A` }, { name: `${nasty} B`, rootingDepth: "+2 in" }],
    });
    const { code, out } = await call(folder, "report", file);
    expect(code).toBe(0);
    expect(runsOrFetches(out)).toEqual([]);
    expect(out).not.toContain("<b onload");
    expect(out.match(/<\/script>/g)).toHaveLength(1);
    expect(out).toContain("<bdi>&lt;/script&gt;&lt;b onload=x&gt;&amp;&quot;&#39; עברית  玉米</bdi>");
    expect((held(out).scenario as { name: string }).name).toBe(nasty);
  });

  test("in metric units", async () => {
    const file = writeJson(folder, "small.json", smallScenario);
    const { out } = await call(folder, "report", file, "--units", "metric");
    expect(out).toContain("kg/ha");
    expect(out).toContain("305 to 356 mm of rain");
    expect(out).not.toContain("bu/ac<");
  });

  test("goes to a file whole, over an old one, and says where", async () => {
    const file = writeJson(folder, "small.json", smallScenario);
    writeFileSync(join(folder, "out.html"), "old");
    const { code, out, err } = await call(folder, "report", file, "-o", "out.html");
    expect({ code, out }).toEqual({ code: 0, out: "" });
    expect(err).toContain("wrote out.html");
    expect(readFileSync(join(folder, "out.html"), "utf8")).toBe((await call(folder, "report", file)).out);
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });

  test("as JSON holds the page", async () => {
    const file = writeJson(folder, "small.json", smallScenario);
    const { out } = await call(folder, "report", file, "--json");
    const read = JSON.parse(out) as { format: string; html: string };
    expect(read.format).toBe("rootfront-report/1");
    expect(read.html).toBe((await call(folder, "report", file)).out);
  });

  test.each([
    ["no such file", ["absent.json"], /no such file/, 1],
    ["a fault in the scenario", ["wrong.json"], /bulkDensity/, 1],
    ["no folder for the page", ["small.json", "-o", "nowhere/out.html"], /no folder/, 2],
    ["the scenario itself as the target", ["small.json", "-o", "small.json"], /nothing is read from/, 2],
  ])("%s is one line", async (_what, args, said, exit) => {
    writeJson(folder, "small.json", smallScenario);
    writeJson(folder, "wrong.json", {
      ...smallScenario,
      soil: { layers: [{ ...smallScenario.soil.layers[0], bulkDensity: "1.42 in" }] },
    });
    const { code, out, err } = await call(folder, "report", ...args);
    expect({ code, out }).toEqual({ code: exit, out: "" });
    expect(err).toMatch(said);
    expect(err.trim().split("\n")).toHaveLength(1);
    expect(err).not.toContain("    at ");
    expect(existsSync(join(folder, "nowhere"))).toBe(false);
    expect(JSON.parse(readFileSync(join(folder, "small.json"), "utf8"))).toEqual(smallScenario);
  });
});
