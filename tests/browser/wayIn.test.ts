/** The way in, as someone meets it who has never seen the page: on a phone, from the example to an answer of one's own. */
import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  faultsSeen,
  goTo,
  lastComparison,
  lookAt,
  openTab,
  patience,
  settled,
  sharedHarness,
  typeAt,
  type Tab,
} from "./harness.ts";

const phone = { width: 390, height: 844 };
const record = readFileSync("shared/scenarios/invented-station.csv", "utf8");

let tab: Tab;
let page: Page;
beforeAll(async () => {
  tab = await openTab(await sharedHarness(), { options: { viewport: phone } });
  ({ page } = tab);
  await settled(page);
});
afterAll(() => tab.close());

const sentence = () => page.locator(".answer-sentence");
const banner = (text: RegExp) => page.locator(".banner").filter({ hasText: text });
const undo = () => page.getByRole("button", { name: /Undo/ }).click();
const asked = (label: RegExp | string) => page.locator(".way-in").getByLabel(label);
const kept = (path: string) =>
  page.evaluate(async (at) => {
    await new Promise((resolve) => setTimeout(resolve, 350));
    const key = `rootfront.work.${sessionStorage.getItem("rootfront.tab")}`;
    const { scenario } = JSON.parse(localStorage.getItem(key) ?? "{}") as { scenario: unknown };
    return at.split(".").reduce<unknown>((here, step) => (here as Record<string, unknown>)?.[step], scenario);
  }, path);

/** What a person does with a thumb, counted. */
const done = { taps: 0, fields: 0, scrolledPx: 0 };
async function inSight(place: Locator): Promise<void> {
  const before = await page.evaluate(() => scrollY);
  await place.scrollIntoViewIfNeeded();
  done.scrolledPx += Math.abs((await page.evaluate(() => scrollY)) - before);
}
async function choose(label: string, value: string): Promise<void> {
  await inSight(asked(label));
  await asked(label).selectOption(value);
  done.taps += 1;
  done.fields += 1;
}
async function type(label: string, text: string): Promise<void> {
  await inSight(asked(label));
  await asked(label).fill(text);
  done.taps += 1;
  done.fields += 1;
}

async function drop(at: string, name: string, text: string): Promise<void> {
  await page.evaluate(
    ([place, called, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content!], called!, { type: "text/plain" }));
      const event = (kind: string) => new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true });
      const target = document.querySelector(place!)!;
      const prevented = ["dragover", "drop"].map((kind) => {
        const one = event(kind);
        target.dispatchEvent(one);
        return one.defaultPrevented;
      });
      // What is not prevented takes a real browser away from the page.
      if (!prevented.every(Boolean)) throw new Error("the browser would leave the page for the file");
    },
    [at, name, text],
  );
}

describe("from the example to one's own answer", () => {
  test("the first screen says what it is, of an invented field, and the answer with its range, in six lines", async () => {
    const parts = [".answer-what", ".answer-sentence", ".answer-odds"];
    expect(await page.locator(parts[0]!).textContent()).toMatch(
      /Invented example: grain sorghum, silt loam, plow pan 6 to 10 in/,
    );
    expect(await sentence().textContent()).toMatch(
      /^At 13 in of rain .* in a typical year, worth about \d+ bu\/ac\.$/,
    );
    expect(await page.locator(parts[2]!).textContent()).toMatch(/^In 8 years of 10: .* in, .* bu\/ac\.$/);
    const lines = await page.evaluate(
      (selectors) =>
        selectors.map((selector) => {
          const range = document.createRange();
          range.selectNodeContents(document.querySelector(selector)!);
          // Parts of a line that differ in weight have boxes of their own.
          return new Set([...range.getClientRects()].map(({ bottom }) => Math.round(bottom / 6))).size;
        }),
      parts,
    );
    expect(lines.reduce((sum, count) => sum + count)).toBeLessThanOrEqual(6);
    const odds = await page.locator(parts[2]!).boundingBox();
    expect(odds!.y + odds!.height).toBeLessThan(phone.height / 2);
  });

  test("the five questions stand behind one line, in the first screen too", async () => {
    const fold = page.getByRole("button", { name: "Your own field in five answers" });
    const box = await fold.boundingBox();
    expect(box!.y + box!.height).toBeLessThan(phone.height);
    expect(await page.locator(".way-in-fields").count()).toBe(0);
    await fold.click();
    done.taps += 1;
    expect(await page.locator(".way-in-fields label").count()).toBeGreaterThanOrEqual(5);
  });

  test("one answer is enough for a result, and leaves nothing of the example behind", async () => {
    await choose("1. Soil texture", "silty clay loam");
    await expect.poll(() => page.locator(".way-in-fold").count(), patience).toBe(0);
    await settled(page);
    expect(await sentence().textContent()).toMatch(/^At a mean of 14 in of rain a year, the deeper roots/);
    for (const part of ["evidence", "money", "notes", "invented"]) expect(await kept(part)).toBeUndefined();
  });

  test("five answers in at most 8 taps, 5 fields and 2 screens of scrolling at 390 px", async () => {
    await choose("2. Dense layer", "tillage pan");
    await type("3. Rain in a year", "18");
    await choose("4. Crop or rotation", "corn");
    await type("5. Roots deeper by", "4");
    await settled(page);
    await expect
      .poll(() => sentence().textContent(), patience)
      .toMatch(/^At a mean of 18 in of rain a year, the deeper roots/);
    await inSight(sentence());
    expect(done.taps).toBeLessThanOrEqual(8);
    expect(done.fields).toBeLessThanOrEqual(5);
    expect(done.scrolledPx).toBeLessThanOrEqual(2 * phone.height);
    const [difference] = (await lastComparison(page)).differences;
    expect(difference!.extraDepthMm).toBeCloseTo(4 * 25.4, 0);
  });

  test("what was assumed is said, one thing open at a time, and is no longer assumed once it is typed", async () => {
    const known = page.locator(".known-item");
    expect(await known.first().locator("summary").textContent()).toMatch(/years before left.*assumed/);
    await known.nth(1).locator("summary").click();
    await known.first().locator("summary").click();
    await expect.poll(() => page.locator(".known-item[open]").count(), patience).toBe(1);
    await typeAt(page, "soil.startingWater.share", "60");
    await expect.poll(() => known.first().locator("summary").textContent(), patience).toMatch(/60 %\s*$/);
    // Another answer keeps it.
    await asked("4. Crop or rotation").selectOption("winter wheat");
    await settled(page);
    expect(await kept("soil.startingWater.share")).toBe("60 %");
    await undo();
    await expect.poll(() => asked("4. Crop or rotation").inputValue(), patience).toBe("corn");
  });

  test("no look of it is cut off, and axe finds nothing", async () => {
    await settled(page);
    for (const look of [
      ["light", 1280],
      ["dark", 390],
      ["light", 320],
    ] as const) {
      await lookAt(page, look);
      expect(await faultsSeen(page, look), look.join(" ")).toEqual([]);
    }
    await page.setViewportSize(phone);
  });
});

describe("a file dropped beside every place for files", () => {
  test("a weather record is taken, its years as they came, and the picture over rain follows it", async () => {
    await drop("footer", "my station.csv", record);
    await banner(/my station\.csv is the weather now: \d+ whole years .* as they came/).waitFor(patience);
    await settled(page);
    const comparison = await lastComparison(page);
    expect(comparison.rainTotalMm).toBeNull();
    expect(await kept("weather.annualRain")).toBeUndefined();
    expect(await sentence().textContent()).not.toMatch(/of rain/);
    const { p10, p90 } = comparison.annualRainMm!;
    const ticks = page.locator('svg[aria-label*="own rain"] text[text-anchor="middle"]');
    await expect
      .poll(async () => {
        const shown = (await ticks.allTextContents()).map(Number).filter(Number.isFinite);
        return Math.min(...shown) * 25.4 <= p10 + 51 && Math.max(...shown) * 25.4 >= p90 - 51;
      }, patience)
      .toBe(true);
  });

  test("it can be scaled to a total instead: to what was asked for before", async () => {
    await page.locator(".way-in .rain-of-record label", { hasText: "scaled to a total" }).click();
    await expect.poll(() => kept("weather.annualRain"), patience).toBe("18 in");
    await undo();
    await expect.poll(() => kept("weather.annualRain"), patience).toBeUndefined();
  });

  test("anything else is told of, and changes nothing", async () => {
    const before = await kept("weather");
    await goTo(page, "seasons");
    await drop("main", "notes.txt", "a few words about the field");
    await banner(/notes\.txt: expected a scenario, a report, or a weather record/).waitFor(patience);
    expect(await kept("weather")).toEqual(before);
  });
});

describe("an empty start, and what an example leaves behind", () => {
  test("New begins without an answer, and undo brings back what was here", async () => {
    const name = await page.locator(".head-name").textContent();
    await page.getByRole("button", { name: /^Menu/ }).click();
    await page.getByRole("button", { name: "New", exact: true }).click();
    await page.locator("main.view-answer").waitFor();
    expect(await sentence().count()).toBe(0);
    expect(await page.locator(".way-in select").first().inputValue()).toBe("");
    await undo();
    await expect.poll(() => page.locator(".head-name").textContent(), patience).toBe(name);
  });

  test("another crop in the example: its counts are not read anew, and one question takes out what is its own", async () => {
    await goTo(page, "keep");
    await page.locator(".keep-demos button").first().click();
    await goTo(page, "inputs");
    await typeAt(page, "crop.name", "corn");
    await banner(/You changed the crop of the invented example/).waitFor(patience);
    await expect
      .poll(() => page.locator(".banner-wrong").textContent(), patience)
      .toMatch(/counts of corn.*found "grain sorghum"/);
    await page.getByRole("button", { name: "Take them out" }).click();
    await settled(page);
    for (const part of ["evidence", "money", "fallow"]) expect(await kept(part)).toBeUndefined();
    expect(await page.locator(".banner").count()).toBe(0);
    await undo();
    await expect.poll(() => kept("money"), patience).toBeDefined();
  });

  test("nothing was asked of another host, and nothing complained", () => expect(tab.wrong).toEqual([]));
});
