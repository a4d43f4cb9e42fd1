import { readFileSync } from "node:fs";
import { request } from "node:http";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import { readJson } from "../../src/scenario/read/readJson.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import {
  axeFaults,
  cutOff,
  goTo,
  lastComparison,
  leftWith,
  linkTo,
  listenToEngine,
  lookAt,
  rulesOnColours,
  openHarness,
  openCard,
  openPage,
  openTab,
  patience,
  settled,
  sharedHarness,
  typeAt,
  unfoldAll,
} from "./harness.ts";
import { differing } from "./differing.ts";

const harness = await sharedHarness();

const folder = new URL("../../shared/scenarios/", import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), "utf8");
const demo = readJson(textOf("sorghum-over-plough-pan.json"), "demo") as Record<string, unknown>;
const small = { ...demo, ensemble: { years: 12, seed: 1 } };
const demos = ["sorghum-over-plough-pan.json", "wheat-after-fallow.json", "sunflower-over-dry-clay.json"];
/** With much of them folded: on a phone they are looked at unfolded. */
const longViews = ["inputs", "answer"];
const views = ["pit", "answer", "inputs", "field", "teach", "seasons", "keep"];

/** A tab with a small ensemble in it. */
const smallTab = (route: string, shared = route.startsWith("#/")) =>
  openTab(harness, { route, scenario: small, shared });

/** A fresh profile with a small ensemble in it. */
async function smallContext(from = harness) {
  const context = await from.newContext();
  await leftWith(context, small);
  return context;
}

/** What the command line's `compare` gives for a scenario file. */
async function commandLine(name: string): Promise<Comparison> {
  const scenario = await resolveScenario(readJson(textOf(name), name), { fileName: name, readText: textOf });
  return comparisonOf(runEnsemble(scenario), "us");
}

describe("the answer", () => {
  test("of every demo is the command line's, number for number", async () => {
    const { page, wrong, close } = await openTab(harness, { route: "#/keep" });
    await settled(page);
    for (const name of demos) {
      const expected = await commandLine(name);
      const { scenario } = expected;
      await goTo(page, "keep");
      await page.getByRole("button", { name: scenario }).click();
      await expect.poll(() => page.locator(".head-name").textContent()).toBe(scenario);
      await settled(page);
      const comparison = await lastComparison(page);
      expect(comparison.scenario).toBe(scenario);
      expect(differing(comparison, expected), name).toEqual([]);
      expect(comparison.method.rain.includes("record")).toBe(textOf(name).includes('"record"'));
    }
    expect(wrong).toEqual([]);
    await close();
  }, 120_000);

  test("in metric units is told at once, and the address keeps the choice", async () => {
    const { page, close } = await smallTab("#/answer");
    await settled(page);
    expect(await page.locator(".answer-sentence").textContent()).toMatch(/^At 13 in of rain/);
    await page.getByRole("radio", { name: "mm · kg" }).check();
    await expect
      .poll(() => page.locator(".answer-sentence").textContent())
      .toMatch(/^At 330 mm of rain.*kg\/ha/);
    expect(page.url()).toContain("#/answer?units=metric");
    await page.reload();
    await expect.poll(() => page.locator(".answer-sentence").textContent()).toMatch(/^At 330 mm of rain/);
    await close();
  });
});

describe("every view", () => {
  // At 1280 px the views' own tests have axe look, at all that can be unfolded, and in both lights.
  test("on a phone axe finds nothing serious; nothing is cut off in any look, and nothing goes wrong", async () => {
    const { page, wrong, close } = await smallTab("#/pit");
    await settled(page);
    // 320 px is what 1280 px are at 400 % zoom.
    for (const look of [
      ["light", 1280],
      ["dark", 1280],
      ["light", 390],
      ["dark", 390],
      ["light", 320],
    ] as const) {
      await lookAt(page, look);
      for (const view of views) {
        await goTo(page, view);
        const [theme, width] = look;
        const isPhone = theme === "light" && width === 390;
        if (isPhone && longViews.includes(view)) await unfoldAll(page);
        const found = isPhone ? await axeFaults(page) : [];
        expect([...found, ...(await cutOff(page))], `${view}, ${look.join()}`).toEqual([]);
      }
    }
    expect(wrong).toEqual([]);
    await close();
  }, 120_000);

  test("of the field, each leaf: on a phone axe finds nothing serious, nor on its colors in the dark", async () => {
    const { page, wrong, close } = await smallTab("#/field");
    await settled(page);
    const leaves = await page.locator(".field-leaves button").allTextContents();
    expect(leaves.length).toBeGreaterThan(5);
    for (const theme of ["light", "dark"] as const) {
      await lookAt(page, [theme, 390]);
      for (const leaf of leaves) {
        await page.locator(".field-leaves button", { hasText: leaf }).first().click();
        const found = await axeFaults(page, theme === "dark" ? rulesOnColours : undefined);
        expect([...found, ...(await cutOff(page))], `${leaf}, ${theme}`).toEqual([]);
      }
    }
    expect(wrong).toEqual([]);
    await close();
  }, 120_000);

  test("is a step back in the browser, and is reached by keyboard past the skip link", async () => {
    const { page, close } = await smallTab("#/answer", false);
    await settled(page);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Skip to/);
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("main");
    await page.getByRole("link", { name: "Inputs" }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => page.title()).toMatch(/^Inputs/);
    await page.goBack();
    await expect.poll(() => page.title()).toMatch(/^Answer/);
    await close();
  });
});

describe("what is typed", () => {
  test("counts in any unit; a wrong value is told beside its field and the last good answer stays, marked stale", async () => {
    const { page, wrong, close } = await smallTab("#/inputs");
    await settled(page);
    const before = await lastComparison(page);
    await typeAt(page, "soil.layers[1].bulkDensity", "1.62 in");
    const field = page.locator('[data-path="soil.layers[1].bulkDensity"]');
    await expect.poll(() => field.getByRole("alert").textContent()).toMatch(/^Expected .*found "1\.62 in"/);
    expect(await field.locator("input").getAttribute("aria-invalid")).toBe("true");
    await page.getByRole("link", { name: "Answer", exact: true }).click();
    expect(await page.locator(".stale-mark").count()).toBe(1);
    expect(await page.locator(".answer-sentence").count()).toBe(1);

    await page.locator(".banner").getByRole("link", { name: "Soil, plough pan: bulk density" }).click();
    await field.locator("input:focus").waitFor();
    await typeAt(page, "soil.layers[1].bulkDensity", "88.2 lb/ft^3");
    await expect.poll(() => field.getByRole("alert").count()).toBe(0);
    await settled(page);
    const after = await lastComparison(page);
    expect(after.cases[0]!.finalRootDepthMm).toBeGreaterThan(before.cases[0]!.finalRootDepthMm);
    expect(wrong).toEqual([]);
    await close();
  });

  test("is undone and redone by keyboard, from within a field too", async () => {
    const { page, close } = await smallTab("#/inputs");
    await settled(page);
    await openCard(page, "scenario");
    const name = page.locator('[data-path="name"] input');
    const before = await name.inputValue();
    await name.fill("Another name");
    await page.keyboard.press("Control+z");
    expect(await name.inputValue()).toBe(before);
    await page.keyboard.press("Control+y");
    expect(await name.inputValue()).toBe("Another name");
    await page.getByRole("button", { name: /Undo/ }).click();
    expect(await name.inputValue()).toBe(before);
    await close();
  });

  test("is there after a reload, right or wrong", async () => {
    const { page, close } = await smallTab("#/inputs");
    await settled(page);
    await typeAt(page, "name", "A name worth keeping");
    await typeAt(page, "soil.layers[0].bottom", "six inches or so");
    await page.reload();
    await expect
      .poll(() => page.locator('[data-path="name"] input').inputValue())
      .toBe("A name worth keeping");
    expect(await page.locator('[data-path="soil.layers[0].bottom"] input').inputValue()).toBe(
      "six inches or so",
    );
    await expect.poll(() => page.locator('[data-path="soil.layers[0].bottom"] [role=alert]').count()).toBe(1);
    await close();
  });

  test("that is wrong leaves the last good answer there after a reload, marked stale, an undo away", async () => {
    const { page, wrong, close } = await smallTab("#/inputs");
    await settled(page);
    await page.getByRole("link", { name: "Answer", exact: true }).click();
    const before = await page.locator(".answer-sentence").textContent();
    await page.getByRole("navigation", { name: "Views" }).getByRole("link", { name: "Inputs" }).click();
    await typeAt(page, "soil.layers[1].bulkDensity", "1.62 banana");
    const field = page.locator('[data-path="soil.layers[1].bulkDensity"]');
    await expect.poll(() => field.getByRole("alert").count(), patience).toBe(1);
    await page.waitForTimeout(500); // it is kept a moment after the last change
    for (const _ of ["once", "and once more"]) {
      await page.reload();
      await settled(page);
      await openCard(page, "soil");
      await expect.poll(() => field.getByRole("alert").count(), patience).toBe(1);
      expect(await field.locator("input").inputValue()).toBe("1.62 banana");
      await page.getByRole("link", { name: "Answer", exact: true }).click();
      await page.locator(".stale-mark").waitFor();
      expect(await page.locator(".answer-sentence").textContent()).toBe(before);
      await page.getByRole("navigation", { name: "Views" }).getByRole("link", { name: "Inputs" }).click();
    }
    await page.getByRole("button", { name: /Undo/ }).click();
    await settled(page);
    expect(await field.locator("input").inputValue()).not.toContain("banana");
    expect(await field.getByRole("alert").count()).toBe(0);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("a link", () => {
  test("opens its scenario, one step of undo away from what was there", async () => {
    const { page, wrong, close } = await smallTab(linkTo({ ...small, name: "From a link" }));
    await settled(page);
    expect(await page.locator(".head-name").textContent()).toBe("From a link");
    expect(page.url()).toContain("#/answer");
    await page.keyboard.press("Control+z");
    await expect.poll(() => page.locator(".head-name").textContent()).toBe(demo["name"]);
    expect(wrong).toEqual([]);
    await close();
  });

  test("cut off, with something else in it, or unpacking to too much is refused in words, and what was there stays", async () => {
    const { page, wrong, close } = await smallTab("#/answer", false);
    for (const fragment of [
      linkTo(demo).slice(0, 200),
      linkTo([1, 2, 3]),
      linkTo({ ...demo, notes: " ".repeat(5_000_000) }),
      linkTo({}),
    ]) {
      await page.goto(`${harness.address}sw.js`);
      await page.goto(harness.address + fragment);
      await settled(page);
      expect(await page.locator(".banner").textContent()).toMatch(/^This link .*still here/);
      expect(await page.locator(".head-name").textContent()).toBe(demo["name"]);
    }
    expect(wrong).toEqual([]);
    await close();
  });

  test("with a script in its name shows it as text", async () => {
    const name = '<img src=x onerror="document.title=1">';
    const { page, wrong, close } = await smallTab(linkTo({ ...small, name }));
    await settled(page);
    expect(await page.locator(".head-name").textContent()).toBe(name);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("two tabs", () => {
  test("each keep their own; the other's change is offered, not taken", async () => {
    const context = await smallContext();
    const { page: first } = await openPage(harness, "#/inputs", context);
    await settled(first);
    const { page: second } = await openPage(harness, "#/inputs", context);
    await settled(second);
    await typeAt(first, "name", "First tab");
    await expect.poll(() => second.locator(".banner").textContent()).toContain("First tab");
    await typeAt(second, "name", "Second tab");
    await expect.poll(() => first.locator(".banner").textContent()).toContain("Second tab");
    await first.reload();
    await expect.poll(() => first.locator('[data-path="name"] input').inputValue()).toBe("First tab");
    await second.getByRole("button", { name: "Take it over here" }).click();
    await expect.poll(() => second.locator('[data-path="name"] input').inputValue()).toBe("First tab");
    await second.keyboard.press("Control+z");
    await expect.poll(() => second.locator('[data-path="name"] input').inputValue()).toBe("Second tab");
    await context.close();
  });
});

describe("the server of npm start", () => {
  const ask = (path: string, method = "GET") =>
    new Promise<{ status: number; headers: Record<string, unknown>; body: string }>((resolve, reject) => {
      const { hostname, port } = new URL(harness.address);
      request({ hostname, port, path, method }, (response) => {
        let body = "";
        response.on("data", (chunk: Buffer) => (body += chunk.toString()));
        response.on("end", () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
        );
      })
        .on("error", reject)
        .end();
    });

  test("sends the page with its policy", async () => {
    const { status, headers, body } = await ask("/");
    expect(status).toBe(200);
    expect(headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(headers["content-security-policy"]).toMatch(/^default-src 'self'; .*frame-ancestors 'none'$/);
    expect(body).toContain('http-equiv="Content-Security-Policy"');
    expect(body).not.toMatch(/<script(?![^>]*\bsrc=)/);
  });
  test.each([
    "/../package.json",
    "/..%2f..%2fetc%2fpasswd",
    "/%2e%2e/%2e%2e/etc/passwd",
    "/assets",
    "/nothing.js",
    "/%00",
    "/%ff",
  ])("gives nothing for %s", async (path) => expect((await ask(path)).status).toBe(404));
  test("takes no other method", async () => expect((await ask("/", "POST")).status).toBe(405));
});

test("offline after the first load the page opens and answers", async () => {
  const own = await openHarness(); // its server is stopped
  const context = await smallContext(own);
  await listenToEngine(context);
  const { page } = await openPage(own, "#/inputs", context);
  await settled(page);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await own.stopServing();
  await page.reload();
  await settled(page);
  await typeAt(page, "weather.annualRain", "15 in");
  await expect
    .poll(() => lastComparison(page).then(({ rainTotalMm }) => Math.round(rainTotalMm ?? 0)), {
      timeout: 20_000,
    })
    .toBe(381);
  await page.getByRole("link", { name: "Answer", exact: true }).click();
  await page.waitForSelector(".plot .main-svg");
  await own.close();
});
