import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { runEnsemble, type Ensemble } from "../../src/answer/runs/ensemble.ts";
import { shownYield } from "../../src/answer/comparison/yieldUnits.ts";
import { roundForPrint } from "../../src/report/tables/roundForPrint.ts";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { yearSaid } from "../../src/report/tables/yearSaid.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import { faultsSeen, lookAt, pageOf, patience, settled, sharedHarness } from "./harness.ts";

const scenarios = new URL("../../shared/scenarios/", import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, scenarios), "utf8");
const demo = JSON.parse(textOf("sorghum-over-plough-pan.json")) as Record<string, unknown>;
const { evidence: _, ...undug } = demo;
const small = { ...undug, ensemble: { years: 18, seed: 4 } };

/** A record of years that are gone through again. */
const wheat = JSON.parse(textOf("wheat-after-fallow.json")) as {
  readonly weather: { readonly record: string };
};
const recordOf = ({ weather }: typeof wheat) => ({ [weather.record]: textOf(weather.record) });

async function run(scenario: unknown): Promise<Ensemble> {
  return runEnsemble(await resolveScenario(scenario, { fileName: "scenario", readText: textOf }));
}

const open = pageOf("seasons");
async function openSeasons(
  scenario: unknown,
  { query, files }: { query?: string; files?: Record<string, string> } = {},
) {
  const options = { permissions: ["clipboard-read", "clipboard-write"] };
  const tab = await open({ scenario, attachments: files, query, options, shared: scenario === small });
  await tab.page.waitForSelector(".season-card");
  if (scenario === small) {
    // What the page begins with; a shared tab has what was chosen last.
    for (const name of ["pan loosened", "Extra water"]) await choose(tab.page, name);
    await tab.page.getByRole("radio", { name: /^(?:most|largest gain|smallest loss) first$/ }).check();
  }
  return tab;
}

/** Runs in the order in which they lie on the page, from 0. */
async function runsShown(page: Page): Promise<number[]> {
  const links = await page
    .locator(".season-card")
    .evaluateAll((cards) => cards.map((card) => card.getAttribute("href") ?? ""));
  return links.map((link) => Number(new URLSearchParams(link.split("?")[1]).get("run")) - 1);
}

/** Runs sorted by a value, equal ones by run. */
function sortedRuns(values: ArrayLike<number>, way: 1 | -1): number[] {
  return Array.from(values, (_, i) => i).sort((a, b) => way * (values[a]! - values[b]!) || a - b);
}

/** The middle total's runs, as the engine has them. */
function middleOf({ byRainTotal }: Ensemble) {
  const at = byRainTotal[(byRainTotal.length - 1) >> 1]!;
  const [first, ...later] = at.cases;
  return {
    rainMm: first!.byRun.rainMm,
    extraWaterMm: later.map(({ byRun }) =>
      byRun.transpirationMm.map((mm, i) => mm - first!.byRun.transpirationMm[i]!),
    ),
    extraKgPerHa: later.map(({ yieldKgPerHaByRun }) =>
      yieldKgPerHaByRun.map((kg, i) => kg - first!.yieldKgPerHaByRun[i]!),
    ),
    cases: at.cases,
  };
}

const choose = (page: Page, name: string) => page.getByRole("radio", { name, exact: true }).check();

describe("the seasons", () => {
  test("lie in the order asked for, for each difference", async () => {
    const { page, wrong, close } = await openSeasons(small);
    const ensemble = await run(small);
    const { rainMm, extraWaterMm, extraKgPerHa } = middleOf(ensemble);
    const years = ensemble.preparation.yearByRun.map(({ year }) => year);
    for (const [d, to] of ["pan loosened", "two inches deeper"].entries()) {
      await choose(page, to);
      for (const [words, values] of [
        ["Rain in the season", rainMm],
        ["Extra water", extraWaterMm[d]!],
        ["Extra yield", extraKgPerHa[d]!],
        ["Year", years],
      ] as const) {
        await choose(page, words);
        const byYear = words === "Year";
        const [loses, gains] = [values.some((one) => one < -0.05), values.some((one) => one > 0.05)];
        const most = loses ? (gains ? "largest gain first" : "smallest loss first") : "most first";
        await choose(page, byYear ? "latest first" : most);
        expect(await runsShown(page), `${to}: ${words}, downward`).toEqual(sortedRuns(values, -1));
        await choose(page, byYear ? "earliest first" : loses ? "largest loss first" : "least first");
        expect(await runsShown(page), `${to}: ${words}, upward`).toEqual(sortedRuns(values, 1));
      }
    }
    // Every year was scaled to one total: no order there.
    expect(await page.getByRole("radio", { name: "Rain in the year" }).count()).toBe(0);
    expect(wrong).toEqual([]);
    await close();
  });

  test.each(["us", "metric"] as const)("are told in the engine's numbers, in %s units", async (units) => {
    const { page, close } = await openSeasons(small, { query: `?units=${units}` });
    const ensemble = await run(small);
    const { rainMm, extraWaterMm, extraKgPerHa, cases } = middleOf(ensemble);
    const shown = shownIn(units);
    const { factor, unit } = shownYield(ensemble.preparation.scenario.yieldLine.unit, units);
    const sorted = sortedRuns(extraWaterMm[0]!, -1);
    const [first] = sorted;
    const card = await page.locator(".season-card").first().innerText();
    expect(card).toContain(`+${shown.fineWater(extraWaterMm[0]![first!]!)} ${shown.length} water`);
    expect(card).toContain(`rain ${shown.water(rainMm[first!]!)} ${shown.length}`);
    expect(card).toContain(unit);

    await page.getByText("Read as a table").click();
    const rows = await page
      .locator(".picture tbody tr")
      .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
    expect(rows.map(([, number]) => Number(number) - 1)).toEqual(sorted);
    expect(rows[0]!.slice(2, 6)).toEqual([
      shown.water(rainMm[first!]!),
      units === "us" ? "13.0" : "330",
      shown.fineWater(extraWaterMm[0]![first!]!),
      (extraKgPerHa[0]![first!]! * factor).toFixed(unit === "bu/ac" ? 1 : 0),
    ]);

    await page.getByRole("button", { name: "Copy all as CSV" }).click();
    await expect.poll(() => page.locator(".copy-csv [role=status]").textContent(), patience).toBe("Copied.");
    const csv = await page.evaluate(() => navigator.clipboard.readText());
    const [head, ...lines] = csv.trim().split("\n");
    expect(head!.split(",").length).toBeGreaterThan(9);
    const perUnit = units === "us" ? 25.4 : 1;
    expect(lines).toHaveLength(ensemble.runs);
    lines.forEach((line, i) => {
      const cells = line.split(",").map(Number);
      const at = sorted[i]!;
      const expected = [
        rainMm[at]! / perUnit,
        330.2 / perUnit,
        extraWaterMm[0]![at]! / perUnit,
        extraKgPerHa[0]![at]! * factor,
        cases[0]!.byRun.finalRootDepthMm[at]! / perUnit,
        cases[0]!.byRun.waterUseMm[at]! / perUnit,
        cases[0]!.yieldKgPerHaByRun[at]! * factor,
      ];
      // The CSV has six digits; the last may fall to either side between two runtimes.
      expected.forEach((value, c) =>
        expect(Math.abs(cells[c + 2]! - roundForPrint(value))).toBeLessThanOrEqual(
          1.1e-5 * Math.abs(value) + 1e-9,
        ),
      );
    });
    await close();
  });

  test("draw both fronts and both uses of water, as deep and as far as the engine says", async () => {
    const { page, close } = await openSeasons(small);
    const { cases } = middleOf(await run(small));
    const deepest = Math.max(...cases.slice(0, 2).flatMap(({ byRun }) => [...byRun.finalRootDepthMm]));
    const most = Math.max(...cases.slice(0, 2).flatMap(({ byRun }) => [...byRun.waterUseMm]));
    const ends = await page
      .locator(".season-card")
      .evaluateAll((cards) =>
        cards.map((card) =>
          [...card.querySelectorAll("path")].map((path) =>
            Number((path.getAttribute("d") ?? "").split(" ").at(-1)),
          ),
        ),
      );
    const runs = await runsShown(page);
    runs.forEach((at, i) => {
      expect(ends[i]).toHaveLength(4);
      [0, 1].forEach((c) => {
        const { waterUseMm, finalRootDepthMm } = cases[c]!.byRun;
        // Ground at 52 px; 48 px up for the most water, 74 px down for the deepest front.
        expect(ends[i]![2 * c]).toBeCloseTo(52 - (48 * waterUseMm[at]!) / most, 0);
        expect(ends[i]![2 * c + 1]).toBeCloseTo(52 + (74 * finalRootDepthMm[at]!) / deepest, 0);
      });
    });
    await close();
  });
});

describe("opening a year", () => {
  test("by click shows it on the pit wall, one step back from the seasons", async () => {
    const { page, wrong, close } = await openSeasons(small);
    await choose(page, "Rain in the season");
    const before = await runsShown(page);
    await page.locator(".season-card").nth(2).click();
    await expect.poll(() => page.url(), patience).toContain(`#/pit?run=${before[2]! + 1}`);
    await expect.poll(() => page.locator("h1").textContent(), patience).toMatch(/pit wall/i);
    await settled(page);
    const { preparation } = await run(small);
    const { year } = preparation.yearByRun[before[2]!]!;
    await expect.poll(() => page.locator("main").innerText(), patience).toContain(yearSaid(year, true));
    await page.goBack();
    await page.waitForSelector(".season-card");
    expect(await runsShown(page)).toEqual(before);
    expect(wrong).toEqual([]);
    await close();
  });

  test("by Enter too", async () => {
    const { page, close } = await openSeasons(small);
    const [, second] = await runsShown(page);
    await page.locator(".season-card").first().focus();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await expect.poll(() => page.url(), patience).toContain(`#/pit?run=${second! + 1}`);
    await page.goto(`${(await sharedHarness()).address}#/seasons?run=${second! + 1}`);
    await expect.poll(() => runsShown(page).then(({ length }) => length), patience).toBe(18);
    const current = await page.locator('.season-card[aria-current="true"]').getAttribute("href");
    expect(current).toContain(`run=${second! + 1}`);
    await close();
  });
});

test("many seasons come forty at a time", async () => {
  const { page, close } = await openSeasons({ ...small, ensemble: { years: 130, seed: 4 } });
  expect(await runsShown(page)).toHaveLength(40);
  await page.getByRole("button", { name: "Show 40 more" }).click();
  expect(await runsShown(page)).toHaveLength(80);
  await page.getByRole("button", { name: "Show all 130" }).click();
  expect(new Set(await runsShown(page)).size).toBe(130);
  expect(await page.getByRole("button", { name: /^Show \d+ more$/ }).count()).toBe(0);
  await close();
});

test("years that come again are shown once, or every run", async () => {
  const { page, wrong, close } = await openSeasons(wheat, { files: recordOf(wheat) });
  const ensemble = await run(wheat);
  const years = ensemble.preparation.yearByRun.map(({ year }) => year);
  const once = [...new Set(years)].sort((a, b) => a - b);
  expect(once.length).toBeLessThan(years.length);
  await choose(page, "Year");
  await choose(page, "earliest first");
  const shown = await runsShown(page);
  expect(shown.map((at) => years[at])).toEqual(once);
  // Each is the run in the middle of its year, by extra water.
  const extra = middleOf(ensemble).extraWaterMm[0]!;
  for (const at of shown) {
    const same = years.flatMap((year, i) => (year === years[at] ? [i] : []));
    const sorted = same.toSorted((a, b) => extra[a]! - extra[b]!);
    expect(at).toBe(sorted[(sorted.length - 1) >> 1]);
  }
  await choose(page, `All ${years.length} runs`);
  await page.getByRole("button", { name: `Show all ${years.length}` }).click();
  expect(await runsShown(page)).toHaveLength(years.length);
  expect(wrong).toEqual([]);
  await close();
});

test("one case alone is sorted by what it used and grew", async () => {
  const alone = { ...small, cases: [{ name: "as it is" }] };
  const { page, wrong, close } = await openSeasons(alone);
  const { cases } = middleOf(await run(alone));
  await choose(page, "Water used");
  await choose(page, "most first");
  expect(await runsShown(page)).toEqual(sortedRuns(cases[0]!.byRun.waterUseMm, -1));
  await choose(page, "Yield");
  expect(await runsShown(page)).toEqual(sortedRuns(cases[0]!.yieldKgPerHaByRun, -1));
  expect(wrong).toEqual([]);
  await close();
});

test("the sheet is saved as PNG and SVG, the table as CSV", async () => {
  const { page, wrong, close } = await openSeasons(small);
  for (const [button, file, holds] of [
    [/^PNG/, "seasons.png", /^.PNG/s],
    // Two fronts and two uses of water a season.
    [/^SVG/, "seasons.svg", /^<\?xml(?=[^]*18 of 18 seasons, by )(?:[^]*?<path){72}(?![^]*<path)/],
    [/^Save CSV/, "seasons.csv", /^Generated year,Run,(?:[^\n]*\n){18}[^\n]+$/],
  ] as const) {
    const coming = page.waitForEvent("download");
    await page.getByRole("button", { name: button }).click();
    const download = await coming;
    expect(download.suggestedFilename()).toBe(file);
    expect(readFileSync(await download.path(), "latin1").trimEnd()).toMatch(holds);
  }
  expect(wrong).toEqual([]);
  await close();
});

test("for everyone: axe finds nothing serious, nothing is cut off", async () => {
  const { page, wrong, close } = await openSeasons(small, { query: "?run=3" });
  await page.getByText("Read as a table").click();
  for (const look of [
    ["light", 1280],
    ["dark", 1280],
    ["light", 320],
  ] as const) {
    await lookAt(page, look);
    expect(await faultsSeen(page, look), look.join()).toEqual([]);
  }
  expect(wrong).toEqual([]);
  await close();
});
