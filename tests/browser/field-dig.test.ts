import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { fieldSentences, fieldTypeset } from "../../src/report/sentences/field/fieldSentences.ts";
import { fixed, percent, shownIn } from "../../src/report/tables/formatters.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import { faultsSeen, lastComparison, lookAt, openLeaf, patience, settled, typeAt } from "./harness.ts";
import { demoAsWritten } from "../support/demos.ts";

const demo = demoAsWritten("sorghum-over-plough-pan") as Record<string, unknown> & {
  readonly soil: { readonly layers: readonly object[] };
  readonly evidence: Record<string, unknown>;
};
const dug = { ...demo, ensemble: { years: 18, seed: 1 } };
const { evidence: _, ...undug } = dug;
const ring = { volume: "318 cm^3" };
const sampled = {
  ...undug,
  soil: {
    ...demo.soil,
    layers: demo.soil.layers.map((layer, l) => ({
      ...layer,
      ...[
        {
          cores: [
            { wetMass: "512 g", dryMass: "430 g", ...ring },
            { wetMass: "498 g", dryMass: "421 g", ...ring },
            { wetMass: "505 g", dryMass: "426 g", ...ring },
          ],
        },
        { cores: [{ wetMass: "598 g", dryMass: "511 g", ...ring }] },
      ][l],
    })),
    startingWater: { from: "cores", shareBelow: "50 %" },
    penetrometer: {
      wetness: "dry",
      readings: [
        { depth: "2 in", resistance: "90 psi" },
        { depth: "8 in", resistance: "390 psi" },
        { depth: "14 in", resistance: "200 psi" },
      ],
    },
  },
};

async function compared(
  scenario: unknown,
  units: Units = "us",
): Promise<[Comparison, readonly string[], readonly string[]]> {
  const read = await resolveScenario(scenario, { fileName: "scenario", readText: () => "" });
  const comparison = comparisonOf(runEnsemble(read), units);
  const { dig, samples } = fieldTypeset(fieldSentences(comparison, read, units));
  return [comparison, dig, samples];
}

function tableOf(page: Page, name: string | RegExp): Promise<string[][]> {
  return page
    .getByRole("figure", { name })
    .locator("tbody tr")
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => cell.textContent?.trim() ?? "")),
    );
}

const said = (page: Page, of: string) => page.locator(`.${of} li`).allTextContents();

describe("the dig", () => {
  test.each(["us", "metric"] as const)("shows what the engine makes of it, in %s units", async (units) => {
    const { page, wrong, close } = await openLeaf(dug, "The dig", `?units=${units}`);
    const [expected, sentences] = await compared(dug, units);
    const dig = expected.evidence!.dig!;
    const got = (await lastComparison(page)).evidence!.dig!;
    got.fit!.cases.forEach((one, c) => {
      const wanted = dig.fit!.cases[c]!;
      for (const key of ["value", "low", "high", "otherwise", "simulatedMm"] as const)
        expect(Math.abs(one[key] - wanted[key])).toBeLessThanOrEqual(1e-9 * Math.abs(wanted[key]));
    });
    expect(await said(page, "dig-said")).toEqual(sentences);

    const { depth } = shownIn(units);
    const pit = await tableOf(page, /Roots dug/);
    expect(pit.map(([name, on, n, middle]) => [name, on, n, middle]).slice(0, 2)).toEqual(
      dig.groups.map((one) => [one.case, one.date, String(one.depthMm.n), depth(one.depthMm.median!)]),
    );
    expect(pit.slice(0, 2).map((row) => row.at(-1))).toEqual(
      dig.fit!.cases.map(({ simulatedMm }) => depth(simulatedMm)),
    );
    const { low, high } = dig.differences[0]!.depthMm.interval!;
    expect(pit[2]!.slice(4, 6)).toEqual([
      `${depth(low)} to ${depth(high)}`,
      depth(dig.differences[0]!.depthMm.value!),
    ]);
    expect(await tableOf(page, /Fitted passage/)).toEqual(
      dig.fit!.cases.map((one) => [
        one.case,
        percent(one.value),
        `${percent(one.low)} to ${percent(one.high)}`,
        percent(one.otherwise),
        "yes",
      ]),
    );
    // A root for every plant, as deep as it was measured, and a line for every pair.
    const drawn = await page
      .locator("[data-depth-mm]")
      .evaluateAll((roots) => roots.map((root) => Number(root.getAttribute("data-depth-mm"))));
    expect(drawn).toHaveLength(12);
    expect(drawn[0]).toBeCloseTo(23.5 * 25.4, 6);
    expect(await page.locator("[data-pair]").count()).toBe(6);
    expect(wrong).toEqual([]);
    await close();
  });

  test("begins empty; plants are typed, pasted, taken out and undone", async () => {
    const { page, wrong, close } = await openLeaf(undug, "The dig");
    await page.getByRole("button", { name: "Enter plants dug" }).click();
    expect(await page.locator(".plants .tally-note").textContent()).toContain("filled in: over the pan");
    const first = "evidence.rootDepths[0]";
    await typeAt(page, `${first}.date`, "2024-07-18");
    await typeAt(page, "evidence.rootDepths[1].date", "2024-07-18");
    await page.locator(`[data-path="${first}.depths[0]"] input`).evaluate((input) => {
      const data = new DataTransfer();
      data.setData("text/plain", "over\tbeside\n24\t29\n26.5\t31\n22\t28.5\n");
      input.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
      );
    });
    // The row after the last takes one more.
    await typeAt(page, `${first}.depths[3]`, "610 mm");
    await settled(page);
    const { groups } = (await lastComparison(page)).evidence!.dig!;
    expect(groups.map(({ depthMm }) => depthMm.n)).toEqual([4, 3]);
    expect(groups[0]!.depthMm.median).toBeCloseTo((610 + 24 * 25.4) / 2, 9);
    expect(await page.locator("[data-depth-mm]").count()).toBe(7);
    expect(await page.locator("[data-pair]").count()).toBe(0);

    await page.getByRole("button", { name: /Remove plant 4/ }).click();
    await settled(page);
    expect(await page.locator("[data-depth-mm]").count()).toBe(6);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await settled(page);
    expect(await page.locator("[data-depth-mm]").count()).toBe(7);

    await page.getByRole("button", { name: /Remove column of pan loosened/ }).click();
    await page.getByRole("button", { name: /Remove column of over the pan/ }).click();
    await settled(page);
    expect(await page.getByRole("button", { name: "Enter plants dug" }).count()).toBe(1);
    expect((await lastComparison(page)).evidence).toBeNull();
    expect(wrong).toEqual([]);
    await close();
  });

  test("says beside the table what is wrong, and keeps the last good answer, marked stale", async () => {
    const { page, close } = await openLeaf(dug, "The dig");
    const before = await said(page, "dig-said");
    await typeAt(page, "evidence.rootDepths[1].depths[2]", "-3 in");
    const alert = page.locator(".plants [role=alert]");
    await expect.poll(() => alert.textContent(), patience).toMatch(/^pan loosened: expected .*more than 0/);
    const cell = page.locator('[data-path="evidence.rootDepths[1].depths[2]"] input');
    expect(await cell.getAttribute("aria-invalid")).toBe("true");
    expect(await cell.inputValue()).toBe("-3 in");
    expect(await page.locator(".stale-mark").count()).toBe(1);
    expect(await said(page, "dig-said")).toEqual(before);
    await typeAt(page, "evidence.rootDepths[1].depths[2]", "26 in");
    await settled(page);
    expect(await page.locator(".stale-mark").count()).toBe(0);
    await close();
  });

  test("decides in the answer, or not", async () => {
    const { page, close } = await openLeaf(dug, "The dig");
    const apart = (await lastComparison(page)).differences[0]!.extraWaterUsedMm.p50;
    await page.getByRole("radio", { name: "Yes" }).check();
    await settled(page);
    const { digDecides: _decides, ...evidence } = demo.evidence;
    const [expected] = await compared({ ...dug, evidence });
    const got = (await lastComparison(page)).differences[0]!.extraWaterUsedMm.p50;
    expect(got).toBeCloseTo(expected.differences[0]!.extraWaterUsedMm.p50, 9);
    expect(got).not.toBe(apart);
    expect((await said(page, "dig-said")).join(" ")).toContain("The fit decides in the answer");
    await close();
  });

  test("draws no front for a case that nothing is fitted to", async () => {
    const stated = structuredClone(dug) as unknown as { evidence: { rootDepths: { case: string }[] } };
    stated.evidence.rootDepths[1]!.case = "two inches deeper";
    const { page, close } = await openLeaf(stated, "The dig");
    expect(await page.locator("[data-depth-mm]").count()).toBe(12);
    expect(await page.locator("[data-front-mm]").count()).toBe(1);
    expect((await tableOf(page, /Roots dug/))[1]!.at(-1)).toBe("–");
    expect((await tableOf(page, /Fitted passage/)).map(([name]) => name)).toEqual(["over the pan"]);
    await close();
  });
});

describe("soil samples", () => {
  test.each(["us", "metric"] as const)("show what the engine makes of them, in %s units", async (units) => {
    const { page, wrong, close } = await openLeaf(sampled, "Soil samples", `?units=${units}`);
    const [expected, , sentences] = await compared(sampled, units);
    const { layers } = expected.evidence!.samples[0]!.cores!;
    const got = (await lastComparison(page)).evidence!.samples[0]!.cores!.layers;
    got.forEach((one, l) => expect(one.storedMm!.mean).toBeCloseTo(layers[l]!.storedMm!.mean, 9));
    expect(await said(page, "samples-said")).toEqual(sentences);
    const { fineWater } = shownIn(units);
    const rows = await page
      .locator(".samples-table tbody tr")
      .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
    expect(rows).toEqual(
      layers.map((one) => {
        const cell = (mean: typeof one.storedMm, say: (value: number) => string) =>
          `${say(mean!.mean)}${mean!.interval === null ? "" : `${say(mean!.interval.low)} to ${say(mean!.interval.high)}`}`;
        return [
          one.name,
          String(one.cores),
          cell(one.densityKgPerM3, (value) => fixed(value / 1000, 2)),
          cell(one.gravimetricPercent, (value) => `${fixed(value, 1)} %`),
          cell(one.volumeFraction, (value) => `${fixed(100 * value, 1)} %`),
          cell(one.storedMm, fineWater),
          cell(one.availableMm, fineWater),
        ];
      }),
    );
    // Dry soil: warned of, and the stretch above the line marked where the line crosses it.
    expect(await page.locator(".pushes .caution").textContent()).toContain("Dry soil");
    const [above] = expected.evidence!.samples[0]!.penetrometer!.above;
    expect(Number(await page.locator("[data-above]").getAttribute("data-above"))).toBeCloseTo(
      above!.fromMm,
      9,
    );
    expect(await page.locator("[data-mpa]").count()).toBe(3);
    expect(wrong).toEqual([]);
    await close();
  });

  test("are entered, begin the run, go wrong, and are taken out again", async () => {
    const { page, wrong, close } = await openLeaf(undug, "Soil samples");
    expect(await page.getByText("No samples yet.").count()).toBe(1);
    await page.getByRole("button", { name: /Add a core.*topsoil/ }).click();
    const core = "soil.layers[0].cores[0]";
    await typeAt(page, `${core}.dryMass`, "430");
    await typeAt(page, `${core}.wetMass`, "512");
    await typeAt(page, `${core}.volume`, "318");
    await page.getByRole("radio", { name: "The water of the cores" }).check();
    await settled(page);
    const { samples } = (await lastComparison(page)).evidence!;
    expect(samples[0]!.cores!.layers[0]!.gravimetricPercent!.mean).toBeCloseTo((100 * 82) / 430, 9);
    expect(samples[0]!.cores!.layers[0]!.densityKgPerM3!.mean).toBeCloseTo((1000 * 430) / 318, 9);
    expect(await page.getByRole("textbox", { name: "Below the deepest core" }).inputValue()).toBe("50 %");

    await typeAt(page, `${core}.wetMass`, "400");
    await expect
      .poll(() => page.locator(".cores [role=alert]").first().textContent(), patience)
      .toMatch(/^Wet: expected at least the dry weight/);
    expect(await page.locator(".stale-mark").count()).toBe(1);

    await page.getByRole("button", { name: /Remove.*core 1, topsoil/ }).click();
    await settled(page);
    expect((await lastComparison(page)).evidence).toBeNull();
    expect(await page.getByRole("radio", { name: "The water told in Inputs" }).isChecked()).toBe(true);

    await page.getByRole("radio", { name: "The push probe's" }).check();
    await typeAt(page, "soil.startingWater.moistDepth", "24 in");
    await settled(page);
    expect((await lastComparison(page)).evidence!.samples[0]!.probe!.moistDepthMm).toBeCloseTo(609.6, 9);
    expect((await said(page, "samples-said"))[0]).toMatch(/^Push probe: moist to 24\.0 in/);
    expect(wrong).toEqual([]);
    await close();
  });
});

test.each([
  ["The dig", dug],
  ["Soil samples", sampled],
] as const)("%s: axe finds nothing serious, and it fits a narrow screen", async (leaf, scenario) => {
  const { page, close } = await openLeaf(scenario, leaf);
  for (const look of [
    ["light", 1280],
    ["dark", 1280],
    ["light", 390],
  ] as const) {
    await lookAt(page, look);
    expect(await faultsSeen(page, look), look.join()).toEqual([]);
    expect(await page.locator(".svg-picture").count()).toBe(2);
  }
  await close();
});
