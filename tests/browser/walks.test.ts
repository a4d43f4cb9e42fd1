/**
 * From the empty page to what each of three people came for, as they would do it: an agronomist with a phone beside the pit to an
 * answer, a teacher to a lesson and its handout, a planner to the seasons of a record and a report. What it costs them is counted and
 * held.
 */
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { goTo, openTab, patience, settled, sharedHarness, type Tab } from "./harness.ts";

const record = readFileSync("shared/scenarios/invented-station.csv", "utf8");
/** A year of a walk takes its time on a busy machine. */
const walkMs = 180_000;

/** What a person does, counted. */
interface Cost {
  taps: number;
  fields: number;
  /** Scrolled, in heights of the screen. */
  screens: number;
}

interface Walk extends Tab {
  readonly cost: Cost;
  readonly tap: (place: Locator) => Promise<void>;
  readonly choose: (label: string, value: string) => Promise<void>;
  readonly type: (label: string, text: string) => Promise<void>;
  /** Brought into sight, as far as has to be scrolled. */
  readonly see: (place: Locator) => Promise<void>;
}

/** The page with nothing on it yet. */
async function emptyPage(width: number, height: number): Promise<Walk> {
  const tab = await openTab(await sharedHarness(), { options: { viewport: { width, height } } });
  const { page } = tab;
  const cost: Cost = { taps: 0, fields: 0, screens: 0 };
  const see = async (place: Locator) => {
    await place.waitFor(patience);
    const before = await page.evaluate(() => scrollY);
    await place.scrollIntoViewIfNeeded();
    cost.screens += Math.abs((await page.evaluate(() => scrollY)) - before) / height;
  };
  const tap = async (place: Locator) => {
    await see(place);
    await place.click();
    cost.taps += 1;
  };
  const field = async (label: string, fill: (place: Locator) => Promise<unknown>) => {
    const place = page.locator(".way-in").getByLabel(label);
    await see(place);
    await fill(place);
    cost.taps += 1;
    cost.fields += 1;
  };
  await page.locator(".way-in").waitFor(patience);
  // On a phone the tools of the head are behind one button.
  const menu = page.getByRole("button", { name: /^Menu/ });
  if (await menu.isVisible()) await tap(menu);
  await tap(page.getByRole("button", { name: "New", exact: true }));
  await expect.poll(() => page.locator(".answer-sentence").count(), patience).toBe(0);
  return {
    ...tab,
    cost,
    tap,
    see,
    choose: (label, value) => field(label, (place) => place.selectOption(value)),
    type: (label, text) => field(label, (place) => place.fill(text)),
  };
}

const sentence = (page: Page) => page.locator(".answer-sentence");

/** Prints nothing, and says that it was asked to. */
const watchPrinting = (page: Page) =>
  page.evaluate(() => {
    globalThis.print = () => Object.assign(globalThis, { asked: "print" });
  });
const printed = (page: Page) =>
  page.waitForFunction(() => (globalThis as { asked?: string }).asked === "print", null, patience);

test(
  "an agronomist with a phone beside the pit: an answer of one's own",
  async () => {
    const walk = await emptyPage(390, 844);
    const { page, cost } = walk;
    await walk.choose("1. Soil texture", "silt loam");
    await walk.choose("2. Dense layer", "tillage pan");
    await walk.type("3. Rain in a year", "13");
    await walk.choose("4. Crop or rotation", "grain sorghum");
    await walk.type("5. Roots deeper by", "2");
    await settled(page);
    await expect.poll(() => sentence(page).textContent(), patience).toMatch(/13 in of rain/);
    await walk.see(sentence(page));
    expect(cost.taps).toBeLessThanOrEqual(8);
    expect(cost.fields).toBeLessThanOrEqual(5);
    expect(cost.screens).toBeLessThanOrEqual(2);
    expect(walk.wrong).toEqual([]);
    await walk.close();
  },
  walkMs,
);

test(
  "a teacher: a guess, the truth, and a handout",
  async () => {
    const walk = await emptyPage(1280, 900);
    const { page, cost } = walk;
    await walk.choose("1. Soil texture", "silt loam");
    await walk.choose("2. Dense layer", "tillage pan");
    await settled(page);
    await walk.tap(page.getByRole("link", { name: "Teach", exact: true }));
    await settled(page);
    await watchPrinting(page);
    expect(await page.locator(".guess-axis").count()).toBe(0);
    await walk.tap(page.getByRole("button", { name: /Show the truth/ }));
    await page.waitForSelector(".guess-axis", patience);
    await walk.tap(page.getByRole("button", { name: /handout/i }).first());
    await printed(page);
    expect(cost.taps).toBeLessThanOrEqual(6);
    expect(cost.fields).toBeLessThanOrEqual(2);
    expect(cost.screens).toBeLessThanOrEqual(1);
    expect(walk.wrong).toEqual([]);
    await walk.close();
  },
  walkMs,
);

test(
  "a planner: a record's own years, one of them, and a report",
  async () => {
    const walk = await emptyPage(1280, 900);
    const { page, cost } = walk;
    await walk.choose("1. Soil texture", "silt loam");
    await page.evaluate(
      ([name, content]) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([content!], name!, { type: "text/plain" }));
        for (const kind of ["dragover", "drop"])
          document
            .querySelector("main")!
            .dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
      },
      ["station.csv", record],
    );
    cost.taps += 1;
    await expect
      .poll(() => sentence(page).textContent(), { timeout: 60_000 })
      .toMatch(/^With the rain as it came/);
    await settled(page);
    await walk.tap(page.getByRole("link", { name: "Seasons", exact: true }));
    const years = page.locator(".strip-years");
    await walk.see(years);
    const box = (await years.boundingBox())!;
    await years.click({ position: { x: box.width / 3, y: box.height / 2 } });
    cost.taps += 1;
    // Real years are named.
    expect(await page.locator(".season-card h2").textContent()).toMatch(/^(?:19|20)\d\d$/);
    expect(await page.locator(".season-card").innerText()).toMatch(/rain [\d.]+ in in the season/);
    await walk.tap(page.getByRole("link", { name: "Keep & share", exact: true }));
    await watchPrinting(page);
    await walk.tap(page.getByRole("button", { name: "Print the report", exact: true }));
    await printed(page);
    expect(cost.taps).toBeLessThanOrEqual(7);
    expect(cost.fields).toBeLessThanOrEqual(1);
    expect(cost.screens).toBeLessThanOrEqual(1.5);
    expect(walk.wrong).toEqual([]);
    await goTo(page, "answer");
    await walk.close();
  },
  walkMs,
);
