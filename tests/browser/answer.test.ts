import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { differencesTold } from "../../src/report/sentences/firstLine.ts";
import { typeset } from "../../src/report/tables/typeset.ts";
import { differenceDigits } from "../../src/report/tables/differenceDigits.ts";
import { percent, shownIn } from "../../src/report/tables/formatters.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import { faultsSeen, lookAt, pageOf, panel, patience, unfold } from "./harness.ts";
import { demoAsWritten } from "../support/demos.ts";

const demo = demoAsWritten("sorghum-over-plough-pan");
const { evidence: _, ...undug } = demo;
const small = { ...undug, ensemble: { years: 24, seed: 1 } };

/** What the command line's `compare` gives. */
async function compared(scenario: unknown, units: Units = "us"): Promise<Comparison> {
  const read = await resolveScenario(scenario, { fileName: "scenario", readText: () => "" });
  return comparisonOf(runEnsemble(read), units);
}

const open = pageOf("answer", small);
/** In a shared tab where other tests begin with the same scenario, the first difference chosen. */
async function openAnswer(scenario: unknown, query = "") {
  const tab = await open({ scenario, query, shared: scenario === small });
  if (scenario === small) await tab.page.getByRole("radio", { name: "pan loosened", exact: true }).check();
  return tab;
}

/** The cells of a picture's table, row by row, as they stand on the page. */
function tableIn(page: Page, title: string): Promise<string[][]> {
  return panel(page, title)
    .locator("tbody tr")
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => cell.textContent?.trim() ?? "")),
    );
}

/** The chart's own data, as it was handed to be drawn. */
interface Drawn {
  readonly data: readonly { readonly name?: string; readonly x: number[]; readonly y: number[] }[];
  readonly layout: {
    readonly shapes: readonly { readonly x0: number; readonly x1: number }[];
    readonly annotations: readonly { readonly text: string }[];
  };
}
async function fanDrawn(page: Page): Promise<Drawn> {
  await page.waitForFunction(() => document.querySelector(".plot .shapelayer path") !== null);
  return page.locator(".plot").evaluate((chart) => {
    const { data, layout } = chart as unknown as Drawn;
    return JSON.parse(JSON.stringify({ data, layout })) as Drawn;
  });
}

describe.each(["us", "metric"] as const)("the numbers in %s units", (units) => {
  test("are those of compare, for each difference", async () => {
    const { page, wrong, close } = await openAnswer(small, `?units=${units}`);
    const expected = await compared(small, units);
    const shown = shownIn(units);
    const told = differencesTold(expected, shown);
    const inWords = (text: string | null) => typeset(text ?? "");
    const { differences, cases, method } = expected;
    expect(await page.locator(".answer-sentence").textContent()).toBe(inWords(told[0]!.sentence));
    for (const [d, difference] of differences.entries()) {
      await page.getByRole("radio", { name: difference.to, exact: true }).check();
      await expect
        .poll(() => page.locator(".answer-sentence").textContent(), patience)
        .toBe(inWords(told[d]!.sentence));
      expect(await page.locator(".answer-odds").textContent()).toBe(inWords(told[d]!.odds));
      expect(await page.locator(".answer-totals").textContent()).toBe(inWords(told[d]!.otherTotals));

      const { p10, p50, p90 } = difference.extraWaterUsedMm;
      const say = differenceDigits(expected, d, shown).water;
      expect(await tableIn(page, "Three numbers for deeper roots")).toEqual([
        ["Rule of thumb", say(difference.ruleOfThumbMm), "–", "–"],
        ["Stored there at sowing", say(difference.storedInExtraDepthMm), "–", "–"],
        ["Taken up by the crop", say(p50), say(p10), say(p90)],
      ]);
      const drawn = await panel(page, "Three numbers for deeper roots").locator("svg text").allTextContents();
      for (const mm of [difference.ruleOfThumbMm, difference.storedInExtraDepthMm, p50])
        expect(drawn).toContain(`${say(mm)} ${shown.length}`);

      expect(await tableIn(page, "How often it mattered")).toEqual(
        expected.byRainTotal.map(({ rainTotalMm, differences: at }) => {
          const share = at[d]!.shareOfSeasonsItMattered;
          return [
            shown.total(rainTotalMm!),
            percent(share),
            String(Math.round(share * method.runs)),
            String(method.runs),
          ];
        }),
      );
      const counted = (await tableIn(page, "Season by season")).map(([, seasons]) => Number(seasons));
      expect(counted.reduce((a, b) => a + b)).toBe(method.runs);
    }
    expect(await tableIn(page, "Yield of each case")).toEqual(
      cases.flatMap(({ name }, c) =>
        expected.byRainTotal.map(({ rainTotalMm, cases: at }) => {
          const { p10, p50, p90 } = at[c]!.yield;
          return [name, shown.total(rainTotalMm!), p50.toFixed(0), p10.toFixed(0), p90.toFixed(0)];
        }),
      ),
    );
    expect((await page.locator("table.cases thead th").allInnerTexts()).slice(1)).toEqual(
      cases.map(({ name }) => name),
    );
    const rows = await page.locator("table.cases tbody tr").allInnerTexts();
    expect(rows.slice(0, 4).map((row) => row.split("\t").map((cell) => cell.trim()))).toEqual([
      ["Root depth", ...cases.map((one) => shown.depth(one.finalRootDepthMm))],
      ["Stored at sowing", ...cases.map((one) => shown.water(one.storedAtSowingMm))],
      ["Rain", ...cases.map((one) => shown.water(one.seasonRainMm))],
      ["Taken up by the crop", ...cases.map((one) => shown.water(one.transpirationMm))],
    ]);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("the fan", () => {
  test("opens over 8 to 20 in with the user's range marked, in water and in yield", async () => {
    const { page, wrong, close } = await openAnswer(small);
    await expect
      .poll(async () => (await tableIn(page, "Where depth starts to matter")).length, patience)
      .toBe(13);
    const { layout, data } = await fanDrawn(page);
    expect(layout.shapes).toHaveLength(1);
    expect(layout.shapes[0]!.x0).toBeCloseTo(12, 9);
    expect(layout.shapes[0]!.x1).toBeCloseTo(14, 9);
    expect(layout.annotations.map(({ text }) => text)).toEqual([
      "your 12 to 14 in",
      "pan loosened",
      "two inches deeper",
    ]);
    const rain = (await tableIn(page, "Where depth starts to matter")).map(([total]) => total);
    expect(rain).toEqual(Array.from({ length: 13 }, (_, i) => String(8 + i)));

    // With no more runs than the fan takes, a point of it is what compare says at that total, for years of the same middle.
    const wide = await compared({ ...small, weather: { pattern: "summer-peak", annualRain: "6..20 in" } });
    for (const { rainTotalMm, differences } of wide.byRainTotal.slice(2)) {
      const inches = rainTotalMm! / 25.4;
      const at = (line: Drawn["data"][number]) =>
        line.y[line.x.findIndex((x) => Math.abs(x - inches) < 1e-9)]! * 25.4;
      const named = (to: string) => at(data.find(({ name }) => name === to)!);
      for (const { to, extraWaterUsedMm } of differences)
        expect(named(to)).toBeCloseTo(extraWaterUsedMm.p50, 8);
      // The band of the difference on show.
      const { p10, p90 } = differences[0]!.extraWaterUsedMm;
      expect(at(data[0]!)).toBeCloseTo(p10, 8);
      expect(at(data[1]!)).toBeCloseTo(p90, 8);
    }

    await page.getByRole("radio", { name: "Extra yield" }).check();
    const [difference] = (await compared(small)).differences;
    await expect
      .poll(async () => {
        const { data: now } = await fanDrawn(page);
        const line = now.find(({ name }) => name === "pan loosened")!;
        return line.y[line.x.findIndex((x) => Math.abs(x - 13) < 1e-9)];
      }, patience)
      .toBeCloseTo(difference!.extraYield.p50, 8);
    expect(wrong).toEqual([]);
    await close();
  });

  test("marks a single total, and one outside its span", async () => {
    const { page, close } = await openAnswer({
      ...small,
      weather: { pattern: "summer-peak", annualRain: "24 in" },
    });
    const { layout } = await fanDrawn(page);
    expect(layout.shapes[0]!.x0).toBeCloseTo(24, 9);
    expect(layout.shapes[0]!.x1).toBeCloseTo(24, 9);
    expect(layout.annotations[0]!.text).toBe("your 24 in");
    await close();
  });
});

test("one case alone is told without differences", async () => {
  const { page, wrong, close } = await openAnswer({ ...small, cases: [{ name: "as it is" }] });
  expect(await page.locator(".answer-besides").textContent()).toContain("There is only one case");
  expect(await page.locator(".panel h2").allTextContents()).toEqual(["Yield"]);
  expect(await page.locator(".panel-lead").textContent()).not.toContain("overlap");
  expect(wrong).toEqual([]);
  await close();
});

test("a case without any difference is drawn, not broken", async () => {
  const { page, wrong, close } = await openAnswer({
    ...small,
    cases: [{ name: "this" }, { name: "the same" }],
  });
  expect(await page.locator(".answer-sentence").textContent()).toContain("exactly as much water");
  expect(await tableIn(page, "Three numbers for deeper roots")).toEqual([
    ["Rule of thumb", "0.00", "–", "–"],
    ["Stored there at sowing", "0.00", "–", "–"],
    ["Taken up by the crop", "0.00", "0.00", "0.00"],
  ]);
  await fanDrawn(page);
  expect(await page.locator(".answer").innerHTML()).not.toMatch(/NaN|Infinity|undefined/);
  expect(wrong).toEqual([]);
  await close();
});

test("the difference is chosen by keyboard, and cautions and method are at hand", async () => {
  const { page, close } = await openAnswer(small);
  await page.getByRole("radio", { name: "pan loosened" }).focus();
  await page.keyboard.press("ArrowRight");
  await expect
    .poll(() => page.locator(".answer-sentence").textContent(), patience)
    .toContain("two inches deeper");
  const cautions = await page.locator(".caution-list li").allTextContents();
  expect(cautions).toEqual((await compared(small)).cautions.map(typeset));
  expect(await page.locator(".caution-list li:visible").count()).toBe(2);
  expect(await page.locator(".method dl").isVisible()).toBe(false);
  await page.getByText("Method and sources").click();
  expect(await page.locator(".method dl").isVisible()).toBe(true);
  await close();
});

test("goes to paper in light colours, with the fan as narrow as the paper", async () => {
  const { page, wrong, close } = await openAnswer(small, "?theme=dark");
  await fanDrawn(page);
  await page.evaluate(() => {
    addEventListener("beforeprint", () => {
      const widthPx = Number(document.querySelector(".plot .main-svg")?.getAttribute("width"));
      document.documentElement.dataset["printed"] = `${document.documentElement.dataset["theme"]} ${widthPx}`;
    });
  });
  const before = await page.locator(".plot .main-svg").first().getAttribute("width");
  const pdf = await page.pdf({ format: "Letter" });
  expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
  const [theme, widthPx] = (await page.locator("html").getAttribute("data-printed"))!.split(" ");
  expect(theme).toBe("light");
  expect(Number(widthPx)).toBeLessThan(680);
  await expect
    .poll(() => page.locator(".plot .main-svg").first().getAttribute("width"), patience)
    .toBe(before);
  expect(await page.locator("html").getAttribute("data-theme")).toBe("dark");
  expect(wrong).toEqual([]);
  await close();
});

test("pictures are saved as PNG and SVG", async () => {
  const { page, wrong, close } = await openAnswer(small);
  await fanDrawn(page);
  for (const [title, file] of [
    ["Three numbers for deeper roots", "three-numbers"],
    ["How often it mattered", "seasons-it-mattered"],
    ["Where depth starts to matter", "depth-by-rain"],
    ["Season by season", "paired-difference"],
    ["Yield of each case", "yield-ranges"],
  ] as const) {
    for (const format of ["PNG", "SVG"]) {
      const coming = page.waitForEvent("download");
      await panel(page, title)
        .getByRole("button", { name: new RegExp(`^${format}`) })
        .click();
      const download = await coming;
      expect(download.suggestedFilename()).toBe(`${file}.${format.toLowerCase()}`);
      const bytes = readFileSync(await download.path());
      expect(bytes.toString("latin1")).toMatch(format === "PNG" ? /^.PNG/s : /<svg[^>]*xmlns=.*<text/s);
    }
  }
  expect(wrong).toEqual([]);
  await close();
});

test("for everyone: axe finds nothing serious with all unfolded, nothing is cut off", async () => {
  const { page, wrong, close } = await openAnswer(small);
  for (const look of [
    ["light", 1280],
    ["dark", 1280],
    ["light", 320],
  ] as const) {
    await lookAt(page, look);
    await fanDrawn(page);
    await unfold(page.locator(".panel"));
    expect(await faultsSeen(page, look), look.join()).toEqual([]);
  }
  expect(wrong).toEqual([]);
  await close();
});
