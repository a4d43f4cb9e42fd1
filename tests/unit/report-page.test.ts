import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import { readJson, resolveScenario } from "../../src/scenario/index.ts";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { firstLines } from "../../src/report/sentences/firstLine.ts";
import {
  embeddedText,
  largestEmbedded,
  leftOutOf,
  type KeptScenario,
} from "../../src/report/page/embedded.ts";
import { reportInput } from "../../src/report/page/reportInput.ts";
import { reportHtml } from "../../src/report/page/reportPage.ts";
import { coordinate } from "../../src/report/page/pictures/drawing.ts";
import { escaped } from "../../src/report/page/markup.ts";
import { paceUsed } from "../../src/report/page/paceUsed.ts";
import { depthRoom } from "../../src/report/page/pictures/depthAxis.ts";
import { sourcesUsed } from "../../src/report/page/sources.ts";
import { smallScenario } from "../cli/callCli.ts";

const noFiles = () => {
  throw new Error("it names no file");
};

async function inputOf(written: unknown, units: "us" | "metric" = "us") {
  const scenario = await resolveScenario(written, { fileName: "small.json", readText: noFiles });
  return reportInput(runEnsemble(scenario), units, { scenario: written, attachments: {} });
}

/** All text between tags, as a reader sees it. */
function readable(html: string): string {
  return html
    .replace(/<(script|style)[^]*?<\/\1>/g, " ")
    .replace(/<[^>]+>/g, " ")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&")
    .replace(/\s+/g, " ");
}

describe("the report", () => {
  test.each(["us", "metric"] as const)(
    "says the answer in the words of every other way out, in %s",
    async (units) => {
      const input = await inputOf(smallScenario, units);
      const text = readable(reportHtml(input));
      const comparison = comparisonOf(
        runEnsemble(await resolveScenario(smallScenario, { fileName: "small.json", readText: noFiles })),
        units,
      );
      for (const line of firstLines(comparison, shownIn(units))) expect(text).toContain(line);
      for (const caution of comparison.cautions) expect(text).toContain(caution.replace(/\s+/g, " "));
      for (const { field } of comparison.defaults) expect(text).toContain(`${field}: `);
      const headings = [
        "The question",
        "The soil",
        "The roots",
        "The answer",
        "Limits",
        "Method",
        "Sources",
        "Going on",
      ];
      const places = headings.map((heading) => text.indexOf(heading));
      expect(places.every((place) => place >= 0)).toBe(true);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    },
  );

  test("draws every front to the depth that the engine has it at", async () => {
    const input = await inputOf(smallScenario);
    const svg = /<svg[^]*?id="roots-title"[^]*?<\/svg>/.exec(reportHtml(input))![0];
    const ends = [
      ...svg.matchAll(/<path d="M[^"]*L[\d.]+ ([\d.]+)" fill="none" stroke="#[^"]+" stroke-width="2"/g),
    ];
    expect(ends).toHaveLength(2);
    // Marks on the axis tell the scale: 0 in and the next one.
    const marks = [...svg.matchAll(/<text x="28" y="([\d.]+)"[^>]*>(\d+)<\/text>/g)].map(([, y, inches]) => ({
      y: Number(y) - 3.5,
      mm: Number(inches) * 25.4,
    }));
    const perMm = (marks[1]!.y - marks[0]!.y) / (marks[1]!.mm - marks[0]!.mm);
    ends.forEach(([, y], c) => {
      const drawnMm = (Number(y) - marks[0]!.y) / perMm;
      expect(drawnMm).toBeCloseTo(input.season.cases[c]!.frontMm.at(-1)!, -1);
    });
  });

  test("one case only, one run only, many cases, and rain as it is", async () => {
    const { cases, ...others } = smallScenario;
    const single = reportHtml(await inputOf({ ...others, cases: [cases[0]], ensemble: { years: 1 } }));
    expect(readable(single)).toContain("There is only one case");
    expect(single).not.toContain('id="numbers-title"');
    const many = Array.from({ length: 19 }, (_, i) => ({ name: `case ${i}`, rootingDepth: `+${i + 1} in` }));
    const crowded = reportHtml(
      await inputOf({ ...others, cases: [cases[0], ...many], ensemble: { years: 2 } }),
    );
    for (const { name } of many) expect(readable(crowded)).toContain(name);
    const asItCame = await inputOf({
      ...others,
      cases,
      weather: { pattern: "even", annualRain: "13 in" },
      ensemble: { years: 3 },
    });
    for (const html of [single, crowded, reportHtml(asItCame)])
      expect(html).not.toMatch(/NaN|Infinity|undefined/);
  });

  test("names only sources that were used, each with its mark", async () => {
    const marked = (input: Awaited<ReturnType<typeof inputOf>>) =>
      sourcesUsed(input).map(({ source, mark }) => `${source} ${mark ?? ""}`);
    const grown = marked(await inputOf(smallScenario));
    for (const line of grown) expect(line).toMatch(/read|memory|ours|practice/);
    expect(grown.join()).toContain("Pierce");
    expect(grown.join()).not.toContain("Ehlers");
    const [topsoil, pan, subsoil] = smallScenario.soil.layers;
    const { bulkDensity: _density, ...plain } = pan!;
    const probed = { ...plain, penetrationResistance: "300 psi", structure: "pan without pores" };
    const probedSources = marked(
      await inputOf({
        ...smallScenario,
        soil: { ...smallScenario.soil, layers: [topsoil, probed, subsoil] },
      }),
    );
    expect(probedSources.join()).toContain("Gao");
  });
});

describe("the first side", () => {
  const dug = {
    ...smallScenario,
    evidence: {
      rootDepths: [
        {
          case: smallScenario.cases[0]!.name,
          date: "2024-07-03",
          depths: ["9 in", "10 in"],
          turnedAt: ["7 in"],
        },
        { case: smallScenario.cases[1]!.name, date: "2024-07-03", depths: ["21 in", "23 in", "22 in"] },
      ],
      strips: {
        cases: [smallScenario.cases[0]!.name, smallScenario.cases[1]!.name],
        yields: [
          ["40 bu/ac", "47 bu/ac"],
          ["42 bu/ac", "45 bu/ac"],
          ["39 bu/ac", null],
        ],
      },
    },
    money: {
      price: "4.20 USD/bu",
      area: "160 ac",
      costs: [{ name: "a rig", amount: "3600 USD", years: 7, interest: "8 %" }],
    },
  };

  test("draws every plant dug at its depth, in both pictures, and where roots turned aside", async () => {
    const input = await inputOf(dug);
    const html = reportHtml(input);
    const pictureOf = (id: string) => html.slice(html.indexOf(`id="${id}-title"`)).split("</svg>")[0]!;
    for (const id of ["soil", "roots"]) {
      const rings = [...pictureOf(id).matchAll(/class="dug" cx="([\d.]+)" cy="([\d.]+)"/g)];
      expect(rings).toHaveLength(5);
      const room = depthRoom(input);
      const depths = rings.map(([, , y]) => (Number(y) - room.y(0)) / (room.y(25.4) - room.y(0)));
      [9, 10, 21, 23, 22].forEach((inches, i) => expect(depths[i]).toBeCloseTo(inches, 1));
    }
    expect(pictureOf("roots")).toContain("dug Jul 3");
    expect(pictureOf("soil")).toContain("roots turned aside at 7.0 in");
  });

  test("takes the pace from the dig where it decides, else from density", async () => {
    const byDig = await inputOf(dug);
    const layer = byDig.scenario.cases[0].layers.find(
      ({ name }) => name === byDig.comparison.evidence!.dig!.fit!.layer,
    )!;
    const used = paceUsed(byDig, byDig.scenario.cases[0].name, layer);
    const fitted = byDig.comparison.evidence!.dig!.fit!.cases[0]!;
    expect(used.byDig).toBe(true);
    expect(used.share).toBeCloseTo(fitted.verdict === "no passage is shut enough" ? 0 : fitted.value, 9);
    expect(used.share).not.toBeCloseTo(fitted.otherwise, 2);
    expect(reportHtml(byDig)).toMatch(/pace \d+ % as dug/);
    const byDensity = await inputOf({ ...dug, evidence: { ...dug.evidence, digDecides: false } });
    expect(paceUsed(byDensity, byDensity.scenario.cases[0].name, layer)).toEqual({
      share: fitted.otherwise,
      byDig: false,
    });
    expect(reportHtml(byDensity)).not.toMatch(/pace \d+ % as dug/);
  });

  test("tells tables and pictures, no passage, no P10 and no interval; those come after it", async () => {
    const html = reportHtml(await inputOf(dug));
    const [first = "", rest = ""] = html.slice(html.indexOf("<main")).split('<div class="check">');
    const told = readable(first);
    expect(told).not.toMatch(/passage|P10|P90|interval/);
    expect(readable(rest)).toMatch(/The passage of/);
    for (const words of [
      "Dug: deepest root of a plant, in",
      "Strips, bu/ac by pair",
      "40.0 42.0 39.0 40.3",
      "47.0 45.0 – 46.0",
      "By strips",
    ])
      expect(told).toContain(words);
    expect(first).toContain('id="money-title"');
    expect(told).toMatch(/pays in \d+ %/);
  });
});

describe("the scenario in the report", () => {
  const kept: KeptScenario = {
    scenario: { name: "</script><b>pan</b><!--", notes: ["a < b & c", "\u2028"] },
    attachments: { "x.csv": "date,rain\n2020-01-01,</script>" },
  };

  test("comes out as it went in, and holds nothing that could end it", async () => {
    const { embedded } = await import("../../src/report/page/embedded.ts");
    const block = embedded(kept);
    expect(block.match(/</g)).toHaveLength(2);
    const html = `<!doctype html><body><main>&lt;x&gt;</main>${block}</body>`;
    expect(readJson(embeddedText(html)!, "report.html")).toEqual(kept);
    expect(embeddedText("<!doctype html><p>another page</p>")).toBeNull();
  });

  test("leaves large records outside and says so", async () => {
    const large = { ...kept, attachments: { "x.csv": "x".repeat(largestEmbedded + 1) } };
    expect(leftOutOf(kept)).toEqual([]);
    expect(leftOutOf(large)).toEqual(["x.csv"]);
    const input = { ...(await inputOf(smallScenario)), kept: large };
    const html = reportHtml(input);
    expect(html.length).toBeLessThan(200_000);
    expect(readable(html)).toContain("keep beside it: x.csv");
  });
});

describe("its small parts", () => {
  test("text is no markup", () => {
    expect(escaped(`<a href="x" onclick='y'>&`)).toBe(
      "&lt;a href=&quot;x&quot; onclick=&#39;y&#39;&gt;&amp;",
    );
    expect(escaped("\u202eturned")).toBe(" turned");
  });
  test("what is no number is never drawn", () => {
    expect(() => coordinate(Number.NaN)).toThrow("coordinate");
    expect(() => coordinate(Infinity)).toThrow("coordinate");
  });
  test("its style asks nobody for anything", () => {
    const style = readFileSync(new URL("../../src/report/page/reportStyle.ts", import.meta.url), "utf8");
    expect(style).not.toMatch(/url\(|@import|https?:/);
  });
});
