/**
 * One walk through the built page, in one tab, that meets most parts of it once. The other files beside it look at each part
 * closely, and take long.
 */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import { differencesTold } from "../../src/report/sentences/firstLine.ts";
import { typeset } from "../../src/report/tables/typeset.ts";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { resolved } from "../support/demos.ts";
import { differing } from "./differing.ts";
import {
  axeFaults,
  goTo,
  lastComparison,
  openCard,
  leftWith,
  listenToEngine,
  openPage,
  rulesOnColours,
  settled,
  sharedHarness,
  typeAt,
} from "./harness.ts";
import { demoAsWritten } from "../support/demos.ts";

const demo = demoAsWritten("sorghum-over-plough-pan");
const small = { ...demo, ensemble: { years: 16, seed: 1 } };
const patience = { timeout: 30_000 };

const folder = mkdtempSync(join(tmpdir(), "rootfront-walk-"));
let context: BrowserContext;
let page: Page;
let wrong: string[];
let expected: Comparison;

beforeAll(async () => {
  const harness = await sharedHarness();
  context = await harness.newContext({ permissions: ["clipboard-read", "clipboard-write"] });
  await leftWith(context, small);
  await listenToEngine(context);
  ({ page, wrong } = await openPage(harness, "", context));
  await settled(page);
  expected = comparisonOf(runEnsemble(await resolved(small)), "us");
});
afterAll(async () => {
  await context.close();
  rmSync(folder, { recursive: true, force: true });
});

const go = (view: string) => goTo(page, view);
const undo = () => page.getByRole("button", { name: /Undo/ }).click();
const button = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });

async function saved(name: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), button(name).click()]);
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  return readFileSync(path, "utf8");
}

test("the answer is the command line's: every number of it, and its sentence", async () => {
  expect(differing(await lastComparison(page), expected)).toEqual([]);
  const [told] = differencesTold(expected, shownIn("us"));
  expect(await page.locator(".answer-sentence").textContent()).toBe(typeset(told!.sentence));
  await page.waitForSelector(".plot .main-svg", patience);
});

test("the pit wall reads out a day, and keys step through them", async () => {
  await go("pit");
  const readout = page
    .locator("main")
    .getByText(/day \d+/)
    .first();
  const last = await readout.textContent();
  await page.locator(".glass").focus();
  await page.keyboard.press("ArrowLeft");
  await expect.poll(() => readout.textContent(), patience).not.toBe(last);
});

test("a value is typed and undone; a bad one says what is wrong, and the last good answer stays, marked stale", async () => {
  await go("inputs");
  await typeAt(page, "weather.annualRain", "381 mm");
  await expect
    .poll(async () => Math.round((await lastComparison(page)).rainTotalMm ?? 0), patience)
    .toBe(381);
  const asked = () => page.locator('[data-path="weather.annualRain"] input').inputValue();
  await undo();
  await expect.poll(asked, patience).toBe("12..14 in");
  await typeAt(page, "weather.annualRain", "much");
  await expect.poll(() => page.locator(".stale-mark").count(), patience).toBeGreaterThan(0);
  await go("pit");
  expect(await axeFaults(page, rulesOnColours)).toEqual([]);
  await go("inputs");
  await openCard(page, "weather");
  expect(await page.locator('[data-path="weather.annualRain"]').innerText()).toMatch(/expected/i);
  await undo();
  await expect.poll(asked, patience).toBe("12..14 in");
  await settled(page);
  expect(differing(await lastComparison(page), expected)).toEqual([]);
});

test("what was dug stands in the field notes, with money and whether it can be water", async () => {
  await go("field");
  const said = () => page.locator("main").innerText();
  await expect.poll(said, patience).toContain("“pan loosened” is");
  await button("Money").click();
  await expect.poll(said, patience).toMatch(/not advice/);
  await button("Can it be water?").click();
  await expect.poll(said, patience).toMatch(/can be water/);
});

test("teaching hides the truth until it is guessed", async () => {
  await go("teach");
  await settled(page);
  expect(await page.locator(".answer-sentence, .guess-axis").count()).toBe(0);
  await button(/Show the truth/).click();
  await page.waitForSelector(".guess-axis", patience);
});

test("a season opens on the pit wall", async () => {
  await go("seasons");
  await page.locator(".strip-years").click({ position: { x: 100, y: 60 } });
  expect(await page.locator(".season-card").innerText()).toMatch(/Generated year \d+[^]*rain \d/);
  await page.getByRole("link", { name: "Open on the pit wall" }).click();
  await page.waitForSelector("main.view-pit", patience);
  expect(await page.locator("main").innerText()).toMatch(/Run \d+ of 16/);
});

test("what is kept: the answer, the ledger, the scenario, and a report of two sides", async () => {
  await go("keep");
  const json = JSON.parse(await saved("Answer (JSON)")) as Comparison;
  expect(json.differences.map(({ to }) => to)).toEqual(expected.differences.map(({ to }) => to));
  expect((await saved("Ledger of the run shown (CSV)")).split("\n").length).toBeGreaterThan(300);
  const { cases } = JSON.parse(await saved("Save the scenario file")) as { cases: unknown };
  expect(cases).toEqual(demo["cases"]);
  await page.evaluate(() => {
    globalThis.print = () => Object.assign(globalThis, { asked: "print" });
  });
  await button("Print the report").click();
  await page.waitForFunction(() => (globalThis as { asked?: string }).asked === "print", null, patience);
  const sides = (await page.pdf({ format: "Letter" })).toString("latin1").match(/\/Type\s*\/Page\b/g)?.length;
  expect(sides).toBeLessThanOrEqual(2);
});

test("a bad link says what is wrong, and leaves what is here", async () => {
  const name = await page.locator(".head-name").textContent();
  await page.evaluate(() => (location.hash = "#s=AAAA"));
  await expect.poll(() => page.locator("body").innerText(), patience).toMatch(/link/i);
  expect(await page.locator(".head-name").textContent()).toBe(name);
});

test("nothing was asked of another host, and nothing complained", () => expect(wrong).toEqual([]));
