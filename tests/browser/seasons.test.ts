import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { runEnsemble, type Ensemble } from "../../src/answer/runs/ensemble.ts";
import { shownYield } from "../../src/answer/comparison/yieldUnits.ts";
import { roundForPrint } from "../../src/report/tables/roundForPrint.ts";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { yearSaid } from "../../src/report/tables/yearSaid.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import { faultsSeen, goTo, lastComparison, lookAt, pageOf, panel, patience, settled } from "./harness.ts";

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
  await tab.page.waitForSelector(".strip-years");
  if (scenario === small) {
    // What the page begins with; a shared tab has what was chosen last.
    for (const name of ["pan loosened", "Extra water", "by size"]) await choose(tab.page, name);
  }
  return tab;
}

/** Runs in the order in which they lie in the strip, from 0: as its table has them. */
async function runsShown(page: Page): Promise<number[]> {
  return (await rowsShown(page)).map(([, run]) => Number(run) - 1);
}

const rowsShown = (page: Page): Promise<string[][]> =>
  page
    .locator(".strip tbody tr")
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));

/** A bar is tapped, by its place from 0. */
async function tap(page: Page, place: number, of: number): Promise<void> {
  const years = page.locator(".strip-years");
  const box = (await years.boundingBox())!;
  await years.click({ position: { x: ((place + 0.5) / of) * box.width, y: box.height / 2 } });
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
  test("lie by size, by year or by rain, for each difference", async () => {
    const { page, wrong, close } = await openSeasons(small);
    const ensemble = await run(small);
    const { rainMm, extraWaterMm, extraKgPerHa } = middleOf(ensemble);
    const years = ensemble.preparation.yearByRun.map(({ year }) => year);
    for (const [d, to] of ["pan loosened", "two inches deeper"].entries()) {
      await choose(page, to);
      for (const [order, of, values, way] of [
        ["by size", "Extra water", extraWaterMm[d]!, -1],
        ["by size", "Extra yield", extraKgPerHa[d]!, -1],
        ["by year", "Extra yield", years, 1],
        // Every year was scaled to one total: it is the season's rain that tells.
        ["by rain", "Extra water", rainMm, 1],
      ] as const) {
        await choose(page, order);
        await choose(page, of);
        expect(await runsShown(page), `${to}: ${of} ${order}`).toEqual(sortedRuns(values, way));
      }
    }
    expect(await page.locator(".strip svg").innerHTML()).toContain("Rain in the season");
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
    await tap(page, 0, sorted.length);
    const card = await page.locator(".season-card").innerText();
    expect(card).toContain(yearSaid(ensemble.preparation.yearByRun[first!]!.year, true).replace("g", "G"));
    expect(card).toContain(`+${shown.fineWater(extraWaterMm[0]![first!]!)} ${shown.length} water`);
    expect(card).toContain(`rain ${shown.water(rainMm[first!]!)} ${shown.length} in the season`);
    expect(card).toContain(unit);

    await page.getByText("Read as a table").click();
    const rows = await rowsShown(page);
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

  test("stand as high as the engine says, each over its own rain", async () => {
    const { page, close } = await openSeasons(small);
    const { extraWaterMm, rainMm } = middleOf(await run(small));
    const runs = await runsShown(page);
    const bars = await page.locator(".strip svg path").evaluateAll((paths) =>
      paths
        .map((path) => (path.getAttribute("d") ?? "").match(/[^M]+/g) ?? [])
        .filter((parts) => parts.length === 18 && parts.every((part) => /h.*V.*h.*z/.test(part)))
        .map((parts) =>
          parts.map((part) =>
            part
              .match(/ ([\d.]+)h.*V([\d.]+)h/)!
              .slice(1)
              .map(Number),
          ),
        ),
    );
    for (const [drawn, values] of [
      [bars[0]!, extraWaterMm[0]!],
      [bars[1]!, rainMm],
    ] as const) {
      const highest = Math.max(...values);
      const most = Math.max(...drawn.map(([from, to]) => from! - to!));
      runs.forEach((at, i) => {
        const [from, to] = drawn[i]!;
        expect(from! - to!).toBeCloseTo((most * values[at]!) / highest, 0);
      });
    }
    await close();
  });
});

describe("opening a year", () => {
  test("shows its card, and from there the pit wall, one step back from the strip", async () => {
    const { page, wrong, close } = await openSeasons(small);
    expect(await page.locator(".season-card").count()).toBe(0);
    await choose(page, "by rain");
    const before = await runsShown(page);
    await tap(page, 2, before.length);
    const { preparation } = await run(small);
    const { year } = preparation.yearByRun[before[2]!]!;
    const title = yearSaid(year, true).replace("g", "G");
    expect(await page.locator(".season-card h2").textContent()).toBe(title);
    // No invented calendar year.
    expect(await page.locator(".season-card").innerText()).not.toMatch(/\b2[01]\d\d\b/);
    await page.getByRole("link", { name: "Open on the pit wall" }).click();
    await expect.poll(() => page.url(), patience).toContain(`#/pit?run=${before[2]! + 1}`);
    await settled(page);
    await expect.poll(() => page.locator("main").innerText(), patience).toContain(yearSaid(year, true));
    await page.goBack();
    await page.waitForSelector(".season-card");
    expect(await runsShown(page)).toEqual(before);
    expect(wrong).toEqual([]);
    await close();
  });

  test("by keys too, said for those who hear it", async () => {
    const { page, close } = await openSeasons(small);
    const runs = await runsShown(page);
    const slider = page.getByRole("slider", { name: "Year looked at" });
    await slider.focus();
    await page.keyboard.press("End");
    await page.keyboard.press("ArrowLeft");
    await expect.poll(() => page.url(), patience).toContain(`run=${runs.at(-2)! + 1}`);
    expect(await slider.getAttribute("aria-valuetext")).toMatch(
      /^generated year \d+, .* rain [\d.]+ in in the season/,
    );
    await close();
  });
});

test("with a rotation the years in a row are shown, each with its own rain", async () => {
  const rotating = {
    ...(JSON.parse(textOf("sorghum-in-rotation.json")) as object),
    weather: { pattern: "summer-peak", annualRain: "19 in" },
    ensemble: { years: 14, seed: 3 },
    chain: { warmUp: 2, length: 4 },
  };
  const { page, wrong, close } = await openSeasons(rotating);
  const { chain, differences } = await lastComparison(page);
  expect(await page.locator(".seasons-lead").innerText()).toContain("in the years in a row");
  const everyRun = page.getByRole("radio", { name: /^All \d+ runs$/ });
  if ((await everyRun.count()) > 0) await everyRun.check();
  const rows = await rowsShown(page);
  const { years } = chain!.overRain![0]!.differences[0]!.yearAfterYear;
  expect(rows).toHaveLength(years.length);
  const head = await page.locator(".strip thead th").allTextContents();
  const column = (name: RegExp) => rows.map((row) => Number(row[head.findIndex((one) => name.test(one))]));
  const inches = (mm: number) => Number((mm / 25.4).toFixed(1));
  expect(column(/^Rain in the year/).toSorted((a, b) => a - b)).toEqual(
    years.map(({ rainMm }) => inches(rainMm)),
  );
  const sum = column(/^Extra water/).reduce((a, b) => a + b, 0);
  const expected = years.reduce((a, { extraWaterUsedMm }) => a + extraWaterUsedMm / 25.4, 0);
  expect(Math.abs(sum - expected)).toBeLessThan(0.006 * years.length);
  await tap(page, 0, rows.length);
  expect(await page.locator(".season-card").innerText()).toContain("Stored at sowing");
  // A year among others has no pit wall of its own.
  expect(await page.locator(".season-open").count()).toBe(0);

  // The same years over their own rain, in place of other totals.
  await goTo(page, "answer");
  const over = panel(
    page,
    `Where ${differences[0]!.onlyRootsDiffer ? "depth" : "the difference"} starts to matter`,
  );
  expect(await over.locator("figcaption").textContent()).toContain(`${years.length} years, year after year`);
  const dots = await over.locator("svg path[stroke-linecap=round]").getAttribute("d");
  expect(dots!.match(/M/g)).toHaveLength(years.length);
  await over.getByRole("radio", { name: "First year" }).check();
  await expect.poll(() => over.locator("figcaption").textContent(), patience).toContain("years, first year");
  expect(wrong).toEqual([]);
  await close();
}, 120_000);

test("years that come again are shown once, or every run", async () => {
  const { page, wrong, close } = await openSeasons(wheat, { files: recordOf(wheat) });
  const ensemble = await run(wheat);
  const years = ensemble.preparation.yearByRun.map(({ year }) => year);
  const once = [...new Set(years)].sort((a, b) => a - b);
  expect(once.length).toBeLessThan(years.length);
  await choose(page, "by year");
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
  expect(await runsShown(page)).toHaveLength(years.length);
  expect(wrong).toEqual([]);
  await close();
});

test("one case alone is sorted by what it used and grew", async () => {
  const alone = { ...small, cases: [{ name: "as it is" }] };
  const { page, wrong, close } = await openSeasons(alone);
  const { cases } = middleOf(await run(alone));
  await choose(page, "Water used");
  await choose(page, "by size");
  expect(await runsShown(page)).toEqual(sortedRuns(cases[0]!.byRun.waterUseMm, -1));
  await choose(page, "Yield");
  expect(await runsShown(page)).toEqual(sortedRuns(cases[0]!.yieldKgPerHaByRun, -1));
  expect(wrong).toEqual([]);
  await close();
});

test("the strip is saved as PNG and SVG, the table as CSV", async () => {
  const { page, wrong, close } = await openSeasons(small);
  for (const [button, file, holds] of [
    [/^PNG/, "seasons.png", /^.PNG/s],
    [/^SVG/, "seasons.svg", /^<\?xml[^]*Extra water used[^]*Rain in the season/],
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
