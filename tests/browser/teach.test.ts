import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { readJson } from "../../src/scenario/read/readJson.ts";
import type { FromEngine, ResolvedScenario } from "../../web/worker/protocol.ts";
import {
  cutOff,
  faultsSeen,
  lastComparison,
  linkTo,
  lookAt,
  pageOf,
  patience,
  settled,
  typeAt,
  type ContextOptions,
} from "./harness.ts";

const folder = new URL("../../shared/scenarios/", import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), "utf8");
const demo = readJson(textOf("sorghum-over-plough-pan.json"), "demo") as Record<string, unknown>;
const small = { ...demo, ensemble: { years: 20, seed: 1 } };

const open = pageOf("teach");
async function openLesson(
  options: ContextOptions = {},
  scenario: unknown = small,
  files: Readonly<Record<string, string>> = {},
  query = "",
) {
  const tab = await open({
    query,
    scenario,
    attachments: files,
    options,
    before: (opened) =>
      opened.addInitScript(() => {
        globalThis.print = () => {
          document.documentElement.dataset["printed"] = "yes";
        };
      }),
  });
  await tab.page.waitForSelector(".root-panel");
  return tab;
}

const slider = (page: Page, label: RegExp) => page.getByLabel(label);
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });

/** Puts a slider at a value and lets it go, as a hand does at the end of a move. */
async function slide(page: Page, label: RegExp, ...values: readonly number[]): Promise<void> {
  await slider(page, label).evaluate((element, all) => {
    const input = element as HTMLInputElement;
    for (const value of all) {
      input.valueAsNumber = value;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    }
    input.dispatchEvent(new Event("change", { bubbles: true }));
  }, values);
  await settled(page);
}

async function showTruth(page: Page): Promise<void> {
  await button(page, "Show the truth").click();
  await page.waitForSelector(".guess-axis");
}

/** What the engine was last asked: its layers by name and its rain, mm. */
async function asked(
  page: Page,
  wanted: (scenario: ResolvedScenario) => unknown,
  value: unknown,
): Promise<void> {
  const last = () =>
    page.evaluate(() => {
      const { heardFromEngine: heard } = globalThis as unknown as { heardFromEngine: FromEngine[] };
      const found = heard.findLast((one) => one.kind === "resolved");
      return found?.kind === "resolved" ? found.resolved : null;
    });
  await expect.poll(async () => wanted((await last())!), patience).toEqual(value);
}

/** How many of them are to be seen. */
const seenOf = (all: readonly Element[]) => all.filter((one) => one.getClientRects().length > 0).length;

const densities =
  (c = 0) =>
  ({ cases }: ResolvedScenario) =>
    cases[c]!.layers.map(({ bulkDensityKgPerM3 }) => Math.round(bulkDensityKgPerM3) / 1000);
const rainIn = ({ weather }: ResolvedScenario) =>
  weather.rainTotalsMm.map((mm) => Number((mm / 25.4).toFixed(2)));

/** What the page keeps as the user's own. */
function own(page: Page): Promise<string> {
  return page.evaluate(() => {
    const tab = sessionStorage.getItem("rootfront.tab");
    return JSON.stringify(
      (JSON.parse(localStorage.getItem(`rootfront.work.${tab}`)!) as { scenario: unknown }).scenario,
    );
  });
}

/** Both panels as drawn: what the front says, and how far down the roots reach on the screen. */
function panels(page: Page) {
  return page.locator(".lesson .root-panel").evaluateAll((all) =>
    all.map((panel) => {
      const grown = panel.querySelector<SVGGElement>(".roots-grown")!;
      const paths = [...grown.querySelectorAll("path")];
      const drawn = paths.filter((path) => (path.getAttribute("d") ?? "") !== "");
      return {
        frontMm: Number(panel.querySelector(".roots-front")?.getAttribute("data-front-mm") ?? Number.NaN),
        strokes: paths.reduce((sum, path) => sum + (path.getAttribute("d") ?? "").length, 0),
        bottomPx: Math.max(0, ...drawn.map((path) => path.getBBox().y + path.getBBox().height)),
      };
    }),
  );
}

/** Fronts of the first two cases, as the engine last said them, on the day that the picture shows. */
function toldFronts(page: Page): Promise<number[]> {
  return page.evaluate(() => {
    const { heardFromEngine: heard } = globalThis as unknown as { heardFromEngine: FromEngine[] };
    const last = heard.findLast((one) => one.kind === "season");
    if (last?.kind !== "season") throw new Error("no season yet");
    const day = Number(document.querySelector<HTMLInputElement>(".teach-play .play-day")!.value);
    return last.season.cases
      .slice(0, 2)
      .map(({ frontMm, startsAt, days }) => frontMm[Math.min(day - startsAt, days - 1)]!);
  });
}

/** Fronts of the first two cases on the last day of the season on show. */
function toldEnds(page: Page): Promise<{ readonly finalMm: number }[]> {
  return page.evaluate(() => {
    const { heardFromEngine: heard } = globalThis as unknown as { heardFromEngine: FromEngine[] };
    const last = heard.findLast((one) => one.kind === "season");
    if (last?.kind !== "season") throw new Error("no season yet");
    return last.season.cases.slice(0, 2).map(({ frontMm }) => ({ finalMm: frontMm.at(-1)! }));
  });
}

const day = (page: Page) =>
  slider(page, /^Day$/).evaluate((input) => (input as HTMLInputElement).valueAsNumber);

describe("the sliders", () => {
  test("density, of the layer that slows roots most, is written where that case has it; one move is one step of undo", async () => {
    const { page, wrong, close } = await openLesson();
    const before = await lastComparison(page);
    expect(await slider(page, /density/i).inputValue()).toBe("1.62");
    await slide(page, /density/i, 1.55, 1.5, 1.45);
    await asked(page, densities(), [1.32, 1.45, 1.36, 1.38]);
    const after = await lastComparison(page);
    // A looser pan leaves less to gain by loosening it.
    expect(after.differences[0]!.extraWaterUsedMm.p50).toBeLessThan(
      before.differences[0]!.extraWaterUsedMm.p50,
    );
    await slide(page, /density/i, 1.2);
    // Now another layer is as slow; the hand's one stays.
    expect(await page.locator(".teach-sliders select").inputValue()).toBe("plough pan");
    await page.getByRole("button", { name: /^Undo/ }).click();
    await asked(page, densities(), [1.32, 1.45, 1.36, 1.38]);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await asked(page, densities(), [1.32, 1.62, 1.36, 1.38]);
    await settled(page);
    await expect.poll(() => slider(page, /density/i).inputValue(), patience).toBe("1.62");
    expect(wrong).toEqual([]);
    await close();
  });

  test("depth moves the whole layer and keeps its thickness; in millimetres too", async () => {
    const { page, close } = await openLesson();
    const bottoms = ({ cases }: ResolvedScenario) =>
      cases[0]!.layers.map(({ bottomMm }) => Number(bottomMm.toFixed(1)));
    const inches = (...all: readonly number[]) => all.map((one) => Number((one * 25.4).toFixed(1)));
    await slide(page, /depth/i, 8, 10, 14);
    await asked(page, bottoms, inches(14, 18, 40, 96));
    await page.getByRole("button", { name: /^Undo/ }).click();
    await asked(page, bottoms, inches(6, 10, 40, 96));
    await settled(page);
    await page.getByRole("radio", { name: "mm · kg" }).check();
    await settled(page);
    await slide(page, /depth/i, 300);
    await asked(page, bottoms, [300, 401.6, ...inches(40, 96)]);
    expect(await page.locator(".slider", { hasText: "Depth" }).locator("output").textContent()).toBe(
      "300 to 402 mm",
    );
    await close();
  });

  test("another layer may be named, and by the keys the slider moves it", async () => {
    const { page, close } = await openLesson();
    await page.locator(".teach-sliders select").selectOption("subsoil");
    await slider(page, /density/i).press("ArrowRight");
    await asked(page, densities(), [1.32, 1.62, 1.37, 1.38]);
    await close();
  });

  test("rain leaves one total of those asked for; a record as it came is scaled, and let go again", async () => {
    const { page, close } = await openLesson();
    await slide(page, /rain/i, 15, 16.5);
    await asked(page, rainIn, [16.5]);
    expect((await lastComparison(page)).rainTotalMm).toBeCloseTo(16.5 * 25.4, 6);
    await close();

    const wheat = readJson(textOf("wheat-after-fallow.json"), "wheat") as Record<string, unknown>;
    const record = (wheat["weather"] as { record: string }).record;
    const opened = await openLesson(
      {},
      { ...wheat, ensemble: { years: 12, seed: 1 } },
      { [record]: textOf(record) },
    );
    await expect
      .poll(
        () => opened.page.locator(".slider", { hasText: "Rain" }).locator("output").textContent(),
        patience,
      )
      .toMatch(/^[\d.]+ in, as it came$/);
    await slide(opened.page, /rain/i, 12);
    await asked(opened.page, rainIn, [12]);
    await button(opened.page, "As it came").click();
    await asked(opened.page, rainIn, []);
    // The dense layer of this one is in the third case alone.
    await opened.page.getByRole("radio", { name: "wheel track" }).check();
    await slide(opened.page, /density/i, 1.7);
    const tillage = ({ cases }: ResolvedScenario) =>
      [0, 1, 2].map((c) => cases[c]!.layers.find(({ name }) => name === "below tillage")!.bulkDensityKgPerM3);
    await asked(opened.page, (now) => tillage(now)[2], 1700);
    await asked(opened.page, (now) => new Set(tillage(now)).size, 2);
    await opened.close();
  });

  test.each([
    ["sorghum-over-plough-pan.json", "plough pan", "What does a dense layer cost?"],
    ["sunflower-over-dry-clay.json", "upper subsoil", "What is a difference in root depth worth?"],
    ["wheat-after-fallow.json", "below tillage", "What is cover on the ground worth?"],
  ])("of %s are three, of a layer between two others: %s; over them stands %s", async (file, name, title) => {
    const demoOf = readJson(textOf(file), file) as Record<string, unknown>;
    const { record } = demoOf["weather"] as { record?: string };
    const files = record === undefined ? {} : { [record]: textOf(record) };
    const { page, wrong, close } = await openLesson(
      {},
      { ...demoOf, ensemble: { years: 12, seed: 1 } },
      files,
    );
    for (const what of ["Density", "Depth"])
      expect(await slider(page, new RegExp(`^${what} of “${name}”`)).count(), what).toBe(1);
    expect(await page.locator(".teach-sliders input[type=range]").count()).toBe(3);
    expect(await page.locator(".teach-sliders").innerText()).not.toContain("has no room");
    expect(await page.locator("h1").innerText()).toBe(title);
    expect(wrong).toEqual([]);
    await close();
  });

  test("density over its whole range, in one held season: slowed roots never come deeper, the others stay; on a copy", async () => {
    const { page, wrong, close } = await openLesson({}, { ...small, evidence: undefined });
    await showTruth(page);
    const before = await own(page);
    const season = () => page.locator(".day-date").innerText();
    const [title, year] = [await page.locator("h1").innerText(), (await season()).slice(-4)];
    /** How deep in the end, mm, and what of its pace the least open slice leaves. */
    const last = () =>
      page.evaluate(() => {
        const { heardFromEngine: heard } = globalThis as unknown as { heardFromEngine: FromEngine[] };
        const found = heard.findLast((one) => one.kind === "season");
        if (found?.kind !== "season") throw new Error("no season yet");
        return found.season.cases.map(({ frontMm, passage }) => ({
          mm: frontMm.at(-1)!,
          passage: Math.min(...passage),
        }));
      });
    const other = (await last())[1]!.mm;
    const [open, slowed]: [number[], number[]] = [[], []];
    for (const density of [1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9]) {
      await slide(page, /density/i, density);
      const [here, beside] = await last();
      expect(beside!.mm, `beside ${density}`).toBe(other);
      (here!.passage < 1 ? slowed : open).push(here!.mm);
      expect(await page.locator("h1").innerText()).toBe(title);
      expect(await season()).toContain(year);
    }
    // A denser layer also holds other water; where it slows no root that is nothing beside what slowing does.
    expect(Math.max(...open) - Math.min(...open)).toBeLessThan((open.at(-1)! - slowed.at(-1)!) / 20);
    expect(slowed.length).toBeGreaterThan(4);
    // Nor, where it only begins to slow them, more than the last digit shown: a tenth of an inch.
    slowed.forEach((mm, i) => expect(mm).toBeLessThan(Math.min(...slowed.slice(0, i), open.at(-1)!) + 2.54));
    expect(slowed[0]! - slowed.at(-1)!).toBeGreaterThan(100);

    await page.getByText("This is a changed copy.").waitFor();
    await page.waitForTimeout(400); // changes are kept after 300 ms
    expect(await own(page)).toBe(before);
    await button(page, "Back to your field").click();
    await settled(page);
    await asked(page, densities(), [1.32, 1.62, 1.36, 1.38]);
    await slide(page, /density/i, 1.5);
    await page.getByRole("link", { name: "Answer", exact: true }).click();
    await settled(page);
    await asked(page, densities(), [1.32, 1.62, 1.36, 1.38]);

    // What the season is depends on nobody's sliding, but may be chosen.
    await page.getByRole("link", { name: "Teach" }).click();
    await page.waitForSelector(".root-panel");
    await button(page, "Another season").click();
    await expect.poll(season, patience).not.toContain(year);
    expect(wrong).toEqual([]);
    await close();
  });

  test("what cannot be read leaves the last good lesson, marked stale", async () => {
    const { page, close } = await openLesson();
    expect(await page.locator(".stale-mark").count()).toBe(0);
    await page.getByRole("link", { name: "Inputs" }).click();
    await typeAt(page, "site.latitude", "far north");
    await page.getByRole("link", { name: "Teach" }).click();
    await page.waitForSelector(".stale-mark");
    expect(await page.locator(".root-panel").count()).toBe(2);
    await close();
  });
});

describe("both root systems", () => {
  test("are drawn as deep as the engine says, the deeper one deeper, and grow as the season is stepped through", async () => {
    const { page, wrong, close } = await openLesson();
    await showTruth(page);
    await button(page, "Pause").click();
    await button(page, "To the end").click();
    const told = await toldFronts(page);
    const ripe = await panels(page);
    expect(ripe).toHaveLength(2);
    ripe.forEach(({ frontMm }, c) => expect(frontMm).toBeCloseTo(told[c]!, 1));
    expect(told[1]! - told[0]!).toBeGreaterThan(25);
    expect(ripe[1]!.bottomPx).toBeGreaterThan(ripe[0]!.bottomPx + 4);
    // One scale for both: px of the drawing by mm.
    const scale = ripe.map(({ bottomPx, frontMm }) => bottomPx / frontMm);
    expect(scale[0]! / scale[1]!).toBeCloseTo(1, 1);

    await slider(page, /^Day$/).press("Home");
    const sown = await panels(page);
    expect(sown.map(({ strokes }) => strokes)).toEqual([0, 0]);
    let before = sown;
    for (let week = 0; week < 3; week++) {
      for (let n = 0; n < 2; n++) await button(page, "+7 days").click();
      const now = await panels(page);
      now.forEach(({ strokes, bottomPx }, c) => {
        expect(strokes).toBeGreaterThan(before[c]!.strokes);
        expect(bottomPx).toBeGreaterThan(before[c]!.bottomPx);
      });
      expect(now.map(({ frontMm }) => frontMm)).toEqual(
        (await toldFronts(page)).map((mm) => Number(mm.toFixed(2))),
      );
      before = now;
    }
    const stepped = await day(page);
    await button(page, "−7 days").click();
    expect(await day(page)).toBe(stepped - 7);
    expect(wrong).toEqual([]);
    await close();
  });

  test("grow by themselves when played, until paused; the date and the sky go along", async () => {
    const { page, close } = await openLesson();
    await button(page, "Play").click(); // from the end it begins anew
    await expect.poll(async () => (await panels(page))[0]!.frontMm, patience).toBeGreaterThan(60);
    await button(page, "Pause").click();
    const [at, date] = [await day(page), await page.locator(".day-date").textContent()];
    const grown = await panels(page);
    await page.waitForTimeout(250);
    expect(await day(page)).toBe(at);
    expect(await panels(page)).toEqual(grown);
    await button(page, "Play").click();
    await expect.poll(() => day(page), patience).toBeGreaterThan(at + 3);
    expect(await page.locator(".day-date").textContent()).not.toBe(date);
    await close();
  });

  test("have names that no front line and no rain strikes through", async () => {
    const { page, close } = await openLesson();
    const clashes = () =>
      page.locator(".lesson .root-panel").evaluateAll((all) =>
        all.map((panel) => {
          const slips = panel.querySelector(".layer-slips")!;
          const lines = panel.querySelector(".roots-front");
          const name = panel.querySelector(".root-name")!.getBoundingClientRect();
          const rain = panel.querySelector(".roots-rain")?.getBoundingClientRect();
          return {
            isUnder:
              lines === null ||
              (lines.compareDocumentPosition(slips) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0,
            isWet: rain !== undefined,
            isClear: rain === undefined || rain.top >= name.bottom - 4,
          };
        }),
      );
    await slider(page, /^Day$/).press("Home");
    let wetDays = 0;
    for (let n = 0; n < 45; n++) {
      await slider(page, /^Day$/).press("ArrowRight");
      for (const { isUnder, isWet, isClear } of await clashes()) {
        expect([isUnder, isClear]).toEqual([true, true]);
        if (isWet) wetDays++;
      }
    }
    expect(wetDays).toBeGreaterThan(0);
    await close();
  });

  test("are read as a table", async () => {
    const { page, close } = await openLesson();
    await showTruth(page);
    await page.getByText("Read as a table").click();
    const last = await page.locator(".picture tbody tr").last().locator("td").allTextContents();
    const comparison = await lastComparison(page);
    expect(last).toHaveLength(2);
    last.forEach((text, c) =>
      // The season near the middle is not the median itself.
      expect(Math.abs(Number(text) - comparison.cases[c]!.finalRootDepthMm / 25.4)).toBeLessThan(12),
    );
    await close();
  });

  test("keep still for who wants no motion: steps, and the end at once", async () => {
    const { page, close } = await openLesson({ reducedMotion: "reduce" });
    expect(await page.getByRole("button", { name: "Play" }).count()).toBe(0);
    await slider(page, /^Day$/).press("Home");
    const start = await day(page);
    await button(page, "+7 days").click();
    expect(await day(page)).toBe(start + 7);
    await showTruth(page);
    const last = Number(await slider(page, /^Day$/).getAttribute("max"));
    expect(await day(page)).toBe(last);
    await page.waitForTimeout(200);
    expect(await day(page)).toBe(last);
    await close();
  });
});

describe("guess first", () => {
  test("hides the answer and the season's end; then shows the truth, which is the comparison's", async () => {
    const { page, wrong, close } = await openLesson();
    const { differences, method } = await lastComparison(page);
    const { extraWaterUsedMm, ruleOfThumbMm } = differences[0]!;
    const inches = (mm: number, digits: number) => (mm / 25.4).toFixed(digits);
    const text = () => page.locator("main").innerText();

    expect(method.runs).toBe(20);
    expect(await page.locator(".answer-sentence, .three-told, .guess-axis, .handout").count()).toBe(0);
    expect(await text()).not.toMatch(/rule of thumb|bu\/ac|typical year/i);
    // How it is worked out tells no answer: one click away all the while.
    await page.getByText("Method and sources").click();
    await page.getByText("One column of soil, one day a step").waitFor();
    await page.getByText("Method and sources").click();
    const covered = Number(await slider(page, /^Day$/).getAttribute("max"));
    await button(page, "Play").click();
    await page.getByText("The rest is hidden").waitFor();
    await slide(page, /class guesses/i, 0.9);

    await showTruth(page);
    const truth = Number((await page.locator(".truth strong").innerText()).split(" ")[0]);
    const digits = Math.max(...Object.values(extraWaterUsedMm).map(Math.abs)) < 12.7 ? 2 : 1;
    expect(truth).toBe(Number(inches(extraWaterUsedMm.p50, digits)));
    const axis = (await page.locator(".guess-axis").getAttribute("aria-label"))!;
    for (const mm of [extraWaterUsedMm.p10, extraWaterUsedMm.p50, extraWaterUsedMm.p90, ruleOfThumbMm])
      expect(axis).toContain(inches(mm, digits));
    expect(axis).toContain(`guess ${(0.9).toFixed(digits)}`);
    await expect
      .poll(() => page.locator(".guess [aria-live]").textContent())
      .toContain(`The truth: ${inches(extraWaterUsedMm.p50, digits)} in more`);
    expect(await page.locator(".guess-close").first().innerText()).toMatch(/^The guess/);
    expect(await page.locator(".three-told dt").allInnerTexts()).toHaveLength(3);
    expect(Number(await slider(page, /^Day$/).getAttribute("max"))).toBeGreaterThan(covered + 30);

    await slide(page, /density/i, 1.5);
    await page.getByText("Something was changed after that guess.").waitFor();
    await button(page, "Guess again").click();
    expect(await page.locator(".answer-sentence, .three-told, .guess-axis").count()).toBe(0);
    expect(Number(await slider(page, /^Day$/).getAttribute("max"))).toBeLessThan(covered + 5);
    expect(await slider(page, /class guesses/i).inputValue()).toBe("0");

    // Another pair is another guess, and so is another scenario.
    await slide(page, /class guesses/i, 0.9);
    await showTruth(page);
    const isHidden = async () => {
      await button(page, "Show the truth").waitFor();
      expect(await page.locator(".answer-sentence, .three-told, .guess-axis").count()).toBe(0);
      expect(await slider(page, /class guesses/i).inputValue()).toBe("0");
    };
    await page.getByRole("radio", { name: "two inches deeper" }).check();
    await isHidden();
    await showTruth(page);
    await page.evaluate((fragment) => (location.hash = fragment), linkTo({ ...small, name: "another" }));
    await page.waitForSelector("main.view-answer");
    await settled(page);
    await page.getByRole("link", { name: "Teach" }).click();
    await isHidden();
    expect(wrong).toEqual([]);
    await close();
  });

  test("is in the units chosen", async () => {
    const { page, close } = await openLesson({}, small, {}, "?units=metric");
    await slide(page, /class guesses/i, 12);
    await page.locator(".guess output", { hasText: "12 mm more" }).waitFor();
    await showTruth(page);
    const { p50 } = (await lastComparison(page)).differences[0]!.extraWaterUsedMm;
    const truth = await page.locator(".truth strong").innerText();
    expect(truth).toMatch(/^[\d.]+ mm more$/);
    expect(Math.abs(Number.parseFloat(truth) - p50)).toBeLessThan(0.5001);
    await close();
  });

  test("has nothing to ask where there is one case alone", async () => {
    const { page, wrong, close } = await openLesson(
      {},
      { ...small, evidence: undefined, cases: [{ name: "as it is" }] },
    );
    expect(await page.locator(".root-panel").count()).toBe(1);
    expect(await page.locator(".guess").count()).toBe(0);
    expect(await page.locator(".answer-sentence").innerText()).toContain("only one case");
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("the handout", () => {
  test.each(["sunflower-over-dry-clay.json", "wheat-after-fallow.json"])(
    "of %s is one page in both units, and asks nothing of soil below the last layer",
    async (file) => {
      const scenario = readJson(textOf(file), file) as Record<string, unknown>;
      const { record } = scenario["weather"] as { record?: string };
      const files = record === undefined ? {} : { [record]: textOf(record) };
      const { page, close } = await openLesson({}, { ...scenario, ensemble: { years: 12, seed: 1 } }, files);
      for (const name of ["mm · kg", "in · lb"]) {
        await page.getByRole("radio", { name }).check();
        await settled(page);
        for (const format of ["Letter", "A4"]) {
          await page.evaluate(() => delete document.documentElement.dataset["printed"]);
          await button(page, "Print the handout").click();
          await page.waitForSelector("html[data-printed]");
          expect(await page.locator(".handout").innerText()).not.toMatch(/dense layer|soil below “/);
          // Cautions are printed no smaller than can be read: 8 pt, and little less.
          const zoom = await page.locator(".handout").evaluate((sheet) => Number(sheet.style.zoom));
          expect(zoom).toBeGreaterThan(0.9);
          const pdf = (await page.pdf({ format })).toString("latin1");
          expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
          await expect.poll(() => page.locator(".handout").count(), patience).toBe(0);
        }
      }
      await close();
    },
  );

  const many = Array.from({ length: 2 }, (_, i) => ({
    name: `roots let down by a long-winded treatment of the pan, no ${i + 1}`,
    rootingDepth: `+${i + 2} in`,
  }));

  test.each([
    ["the demo", small],
    [
      "long names and few runs",
      {
        ...small,
        evidence: undefined,
        cases: [{ name: "as the field has been for many years now" }, ...many],
        ensemble: { years: 6, seed: 1 },
      },
    ],
  ])("of %s goes on one page of Letter and of A4, with its numbers and cautions", async (_, scenario) => {
    const { page, wrong, close } = await openLesson({}, scenario);
    for (const format of ["Letter", "A4"]) {
      await page.evaluate(() => delete document.documentElement.dataset["printed"]);
      await button(page, "Print the handout").click();
      await page.waitForSelector("html[data-printed]");
      const text = await page.locator(".handout").innerText();
      const comparison = await lastComparison(page);
      const [told] = comparison.differences;
      for (const mm of [told!.ruleOfThumbMm, told!.storedInExtraDepthMm, told!.extraWaterUsedMm.p50])
        expect([1, 2].some((digits) => text.includes(`${(mm / 25.4).toFixed(digits)} in`))).toBe(true);
      expect(await page.locator(".handout-cautions li").count()).toBe(3);
      const aboveFold = text.slice(0, text.indexOf("fold back"));
      expect(aboveFold).not.toMatch(/when the crop is ripe|in more|bu\/ac|rule of thumb/i);
      for (const { finalMm } of await toldEnds(page))
        expect(aboveFold).not.toContain(`${(finalMm / 25.4).toFixed(1)} in`);
      expect(text).toContain("invented");
      expect(text).toContain("My guess:");
      expect(text.match(/\?/g)!.length).toBeGreaterThanOrEqual(4);
      expect(await page.locator(".handout .root-panel").count()).toBe(2);
      await page.emulateMedia({ media: "print" });
      expect(await page.locator("header.head, .lesson, footer.foot").evaluateAll(seenOf)).toBe(0);
      await page.emulateMedia({ media: null });
      const pdf = (await page.pdf({ format })).toString("latin1");
      expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
      // Printing is over: the page is as it was.
      await expect.poll(() => page.locator(".handout").count(), patience).toBe(0);
    }
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("the lesson for all", () => {
  test("has nothing serious for axe to find, light and dark, and fits a projector", async () => {
    const { page, close } = await openLesson({ viewport: { width: 1280, height: 800 } });
    const bothThemes = async () => {
      for (const theme of ["light", "dark"] as const) {
        await lookAt(page, [theme, 1280]);
        expect(await faultsSeen(page, [theme, 1280]), theme).toEqual([]);
      }
      await page.setViewportSize({ width: 1280, height: 800 });
    };
    // What the class needs is on the projector without scrolling.
    for (const name of ["Show the truth", "Play"]) {
      const box = (await button(page, name).boundingBox())!;
      expect(box.y + box.height).toBeLessThanOrEqual(800);
    }
    const drawing = (await page.locator(".lesson .svg-picture").boundingBox())!;
    expect(drawing.y + drawing.height).toBeLessThanOrEqual(800);
    await bothThemes();
    await showTruth(page);
    await button(page, "Pause").click();
    await bothThemes();
    await close();
  });

  test.each([-2, 1, 5])("has its guess of %d in and the truth within their drawing", async (inches) => {
    const { page, close } = await openLesson();
    await slide(page, /class guesses/i, inches);
    await showTruth(page);
    for (const width of [1920, 1280, 390, 320]) {
      await lookAt(page, ["light", width]);
      expect(await cutOff(page), `${width} px`).toEqual([]);
    }
    await close();
  });

  test("fits a phone, in inches and in millimetres", async () => {
    const { page, close } = await openLesson({ viewport: { width: 390, height: 844 } });
    const over = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    const menu = page.getByRole("button", { name: /^Menu/ });
    const inBothUnits = async () => {
      if (!(await page.getByRole("radio", { name: "mm · kg" }).isVisible())) await menu.click();
      for (const name of ["mm · kg", "in · lb"]) {
        await page.getByRole("radio", { name }).check();
        await settled(page);
        expect(await over(), name).toBeLessThanOrEqual(0);
      }
    };
    // The roots are on the first screen, before what moves them.
    const top = async (of: string) => (await page.locator(of).boundingBox())!.y;
    expect(await top(".lesson .root-panel >> nth=0")).toBeLessThan(844 * 0.65);
    expect(await top(".teach-roots")).toBeLessThan(await top(".teach-sliders"));
    const order = await page
      .locator(".lesson > section")
      .evaluateAll((all) => all.map(({ classList }) => classList[0]));
    expect(order).toEqual(["teach-roots", "teach-sliders", "guess"]);
    await inBothUnits();
    await showTruth(page);
    await inBothUnits();
    await close();
  });

  test("fills a projector's screen: letters of 3.5 % of its height, names beside the soil, the answer under it", async () => {
    const { page, close } = await openLesson({ viewport: { width: 1920, height: 1080 } });
    await button(page, "Full screen").click();
    await page.waitForSelector("html.is-projected");
    expect(await page.locator("header.head, footer.foot").evaluateAll(seenOf)).toBe(0);
    const misplaced = () =>
      page.locator("main").evaluate((main) =>
        [...main.querySelectorAll("*")].flatMap((one) => {
          const isWritten = [...one.childNodes].some(
            (node) => node.nodeType === 3 && node.textContent!.trim(),
          );
          if (!isWritten || !one.checkVisibility() || one.closest(".only-heard") !== null) return [];
          const px = Number.parseFloat(getComputedStyle(one).fontSize);
          const { left, right, top, bottom } = one.getBoundingClientRect();
          const isIn = left >= 0 && right <= innerWidth && top >= 0 && bottom <= innerHeight;
          return px >= 0.035 * innerHeight && isIn ? [] : [`${px} px: ${one.textContent}`];
        }),
      );
    const onSoil = () =>
      page.locator(".root-panel").evaluateAll((panels) => {
        const soils = panels.map((panel) => panel.querySelector(".roots-water")!.getBoundingClientRect());
        return [...document.querySelectorAll(".layer-slips text")].flatMap((name) => {
          const { left, right } = name.getBoundingClientRect();
          return soils.some((soil) => left < soil.right - 1 && right > soil.left + 1)
            ? [name.textContent]
            : [];
        });
      });
    expect(await misplaced()).toEqual([]);
    expect(await page.locator(".strip-said").innerHTML()).toContain("deeper");
    expect(await page.locator(".strip-said").innerHTML()).not.toContain("water");
    await showTruth(page);
    await button(page, "Pause").click();
    await button(page, "To the end").click();
    for (const [width, height] of [
      [1920, 1080],
      [1280, 720],
      [1024, 768],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.waitForTimeout(100);
      expect(await misplaced(), `${width} px`).toEqual([]);
      expect(await onSoil(), `${width} px`).toEqual([]);
    }
    await page.setViewportSize({ width: 1920, height: 1080 });
    const strip = page.locator(".roots-strip");
    const fronts = await toldEnds(page);
    expect(Number(await strip.getAttribute("data-strip-mm"))).toBeCloseTo(
      fronts[1]!.finalMm - fronts[0]!.finalMm,
      1,
    );
    expect((await page.locator(".strip-said text").allTextContents()).join(" ")).toMatch(
      /in deeper .* water this season/,
    );
    const answer = (await page.locator(".projected-answer").boundingBox())!;
    const drawing = (await page.locator(".lesson .svg-picture").boundingBox())!;
    expect(answer.y).toBeGreaterThanOrEqual(drawing.y + drawing.height - 2);
    expect(await page.locator(".projected-answer").innerText()).toMatch(/^A typical year: .*bu\/ac/);
    await page.keyboard.press("Escape");
    await expect.poll(() => page.locator("header.head").evaluateAll(seenOf), patience).toBe(1);
    await close();
  });
});
