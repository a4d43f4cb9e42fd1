import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { isoDate } from "../../src/quantity/calendar.ts";
import type { FromEngine, SeasonShown } from "../../web/worker/protocol.ts";
import {
  axeFaults,
  lookAt,
  pageOf,
  patience,
  rulesOnColours,
  settled,
  typeAt,
  type ContextOptions,
} from "./harness.ts";
import { demoAsWritten } from "../support/demos.ts";

const demo = demoAsWritten("sorghum-over-plough-pan");
const { evidence: _, ...undug } = demo;
const small = { ...undug, ensemble: { years: 12, seed: 1 } };

const open = pageOf("pit", small);

/** With the fallow shown, which the wall does not open with: the tests count days from the season's first. */
async function openPit(
  options: ContextOptions = {},
  scenario: unknown = small,
  query = "",
  shared = true,
): Promise<{ page: Page; wrong: string[]; close: () => Promise<void> }> {
  const { page, wrong, close } = await open({ scenario, query, options, shared });
  await page.waitForSelector(".pit-wall[data-drawn]");
  // On a phone what is shown is chosen behind a fold.
  const fold = page.locator(".pit-more > summary");
  if ((await fold.count()) > 0) await fold.click();
  const withFallow = page.getByRole("radio", { name: "with fallow" });
  if ((await withFallow.count()) > 0) await withFallow.check();
  return { page, wrong, close };
}

/** What the drawing is made of, from the engine's own message. */
type Told = Pick<SeasonShown, "firstDay" | "days"> & {
  readonly day: number;
  readonly rainMm: number;
  readonly fronts: readonly (number | null)[];
  readonly shares: readonly number[];
  readonly sliceTopMm: readonly number[];
};

/** The first case's water on a day, and every front, as the engine last said it; day null = the last. */
function told(page: Page, wanted: number | null = null): Promise<Told> {
  return page.evaluate((asked) => {
    const { heardFromEngine: heard } = globalThis as unknown as { heardFromEngine: FromEngine[] };
    const last = heard.findLast((one) => one.kind === "season");
    if (last?.kind !== "season") throw new Error("no season yet");
    const { cases, firstDay, days, rainMm } = last.season;
    const day = asked ?? days - 1;
    const first = cases[0]!;
    const slices = first.sliceTopMm.length;
    return {
      firstDay,
      days,
      day,
      rainMm: rainMm[day]!,
      fronts: cases.map(({ startsAt, sowingDay, days: own, frontMm }) => {
        const at = day - startsAt;
        return at < sowingDay || at >= own ? null : frontMm[at]!;
      }),
      shares: Array.from(first.sliceTopMm, (_, slice) => {
        const mm = first.availableMm[(day - first.startsAt) * slices + slice]!;
        return Math.min(1, mm / first.capacityMm[slice]!);
      }),
      sliceTopMm: [...first.sliceTopMm],
    };
  }, wanted);
}

/** The readout as pairs of its terms and values. */
async function readout(page: Page): Promise<[string, string][]> {
  const pairs = page.locator(".readout > div");
  return Promise.all(
    (await pairs.all()).map(async (pair): Promise<[string, string]> => [
      (await pair.locator("dt").textContent())?.trim() ?? "",
      (await pair.locator("dd").textContent())?.trim() ?? "",
    ]),
  );
}

/** What the readout must say of a day at a depth, in inches, worked out here from the engine's arrays. */
function expectedReadout({ firstDay, day, rainMm, fronts, shares, sliceTopMm }: Told, depthMm: number) {
  const date = isoDate(firstDay + day);
  const slice = sliceTopMm.findLastIndex((top) => top <= depthMm);
  const short = new Date(`${date}T00:00Z`).toLocaleDateString("en-GB", {
    day: "numeric",
    month: "long",
    timeZone: "UTC",
  });
  // Generated years are counted from 2001, the first.
  const year = Number(date.slice(0, 4)) - 2000;
  return {
    date: `${short.replace(/ (\w{3})\w*$/, " $1")}, generated year ${year}`,
    rain: `${(rainMm / 25.4).toFixed(2)} in`,
    water: `${(100 * shares[slice]!).toFixed(0)} %`,
    fronts: fronts.map((mm) => (mm === null ? "–" : `${(mm / 25.4).toFixed(1)} in`)),
  };
}

async function expectReadout(page: Page, day: number | null, depthMm: number): Promise<void> {
  const wanted = expectedReadout(await told(page, day), depthMm);
  await expect.poll(async () => (await readout(page))[0]![1]).toBe(wanted.date);
  const [, rain, water, , ...fronts] = await readout(page);
  expect(rain![1]).toBe(wanted.rain);
  expect(water![1]).toBe(wanted.water);
  expect(fronts.map(([, value]) => value)).toEqual(wanted.fronts);
}

const bottomOf = (page: Page, name: string) => page.getByRole("slider", { name: `Bottom of ${name}` });
const glass = (page: Page) => page.getByRole("slider", { name: "Day, and depth to read at" });

/** What the page keeps of the scenario. */
function kept(page: Page): Promise<{ soil: { layers: { bottom: string }[] } }> {
  return page.evaluate(() => {
    const tab = sessionStorage.getItem("rootfront.tab");
    const text = localStorage.getItem(`rootfront.work.${tab}`) ?? "{}";
    return (JSON.parse(text) as { scenario: { soil: { layers: { bottom: string }[] } } }).scenario;
  });
}

describe("the readout", () => {
  test("tells the last day at a foot when nothing is pointed at, and the day and depth under the mouse", async () => {
    const { page, wrong, close } = await openPit();
    await expectReadout(page, null, 304.8);

    const { days } = await told(page);
    const box = (await glass(page).boundingBox())!;
    await page.mouse.move(box.x + box.width * 0.83, box.y + box.height * 0.41);
    // Chromium gives whole client pixels to pointer events of the mouse.
    const x = box.x + box.width * 0.83 - box.x;
    const day = Math.floor((x / box.width) * days);
    const depthIn = Number(/at ([\d.]+) in/.exec((await readout(page))[2]![0])?.[1]);
    const bottomIn = 96; // of the demo, whose roots go deep enough for all of its soil to be shown
    expect(Math.abs(depthIn - 0.41 * bottomIn)).toBeLessThan(0.2);
    await expectReadout(page, day, depthIn * 25.4);

    await page.mouse.move(5, 5);
    await expectReadout(page, null, 304.8);
    expect(wrong).toEqual([]);
    await close();
  });

  test("is in the other units at once", async () => {
    const { page, close } = await openPit({}, small, "?units=metric");
    const { fronts } = await told(page);
    const said = await readout(page);
    expect(said[2]![0]).toContain("at 305 mm");
    expect(said.at(-1)![1]).toBe(`${fronts.at(-1)!.toFixed(0)} mm`);
    expect(await bottomOf(page, "plough pan").getAttribute("aria-valuetext")).toBe("254 mm");
    await close();
  });

  test("by touch stays where the finger was", async () => {
    const { page, wrong, close } = await openPit({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await glass(page).scrollIntoViewIfNeeded();
    const box = (await glass(page).boundingBox())!;
    await page.touchscreen.tap(box.x + box.width * 0.9, box.y + box.height * 0.1);
    const { days } = await told(page);
    const now = Number(await glass(page).getAttribute("aria-valuenow"));
    expect(Math.abs(now - 0.9 * days)).toBeLessThan(4);
    await expectReadout(page, now, 0.1 * 96 * 25.4);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("the season", () => {
  test("opens on the crop alone, with the play bar in sight above the drawing; its fallow is a press away", async () => {
    const { page, wrong, close } = await open({ options: { viewport: { width: 1280, height: 720 } } });
    await page.waitForSelector(".pit-wall[data-drawn]");
    const { days } = await told(page);
    const from = Number(await glass(page).getAttribute("aria-valuemin"));
    expect(from).toBeGreaterThan(300);
    expect(days - from).toBeLessThan(200);
    const play = (await page.getByRole("button", { name: "Play" }).boundingBox())!;
    const wall = (await page.locator(".pit-wall").boundingBox())!;
    expect(play.y + play.height).toBeLessThan(wall.y);
    expect(play.y + play.height).toBeLessThan(720);
    for (const word of ["sown", "flowers", "mature"])
      expect(await page.locator(".pit-wall text", { hasText: new RegExp(`^${word} \\d`) }).count()).toBe(1);
    await page.getByRole("radio", { name: "with fallow" }).check();
    await expect.poll(() => glass(page).getAttribute("aria-valuemin")).toBe("0");
    expect(wrong).toEqual([]);
    await close();
  });

  test("is stepped through by keys: a day, a week, to the ends, and in depth", async () => {
    const { page, wrong, close } = await openPit();
    const { days } = await told(page);
    await glass(page).focus();
    const keys: readonly (readonly [string, number])[] = [
      ["ArrowLeft", days - 2],
      ["Shift+ArrowLeft", days - 9],
      ["ArrowRight", days - 8],
      ["Home", 0],
      ["ArrowLeft", 0],
      ["Shift+ArrowRight", 7],
      ["End", days - 1],
    ];
    for (const [key, day] of keys) {
      await page.keyboard.press(key);
      await expectReadout(page, day, 304.8);
    }
    await page.keyboard.press("ArrowDown");
    await expectReadout(page, days - 1, 13 * 25.4);
    await page.keyboard.press("Shift+ArrowLeft");
    await page.getByRole("slider", { name: "Day", exact: true }).focus();
    await page.keyboard.press("Shift+ArrowLeft");
    await expectReadout(page, days - 15, 13 * 25.4);
    await expect.poll(() => page.url()).toContain(`day=${days - 15}`);
    await page.reload();
    await page.waitForSelector(".pit-wall[data-drawn]");
    expect(await glass(page).getAttribute("aria-valuenow")).toBe(String(days - 15));
    expect(wrong).toEqual([]);
    await close();
  });

  test("is told to the ear when it rests, not while it plays", async () => {
    const { page, wrong, close } = await openPit({}, small, "", false);
    const heard = page.locator("main [aria-live=polite].only-heard");
    await page.getByRole("button", { name: "Play" }).click();
    await page.waitForFunction(
      () => Number(document.querySelector(".glass")?.getAttribute("aria-valuenow")) > 20,
    );
    await page.waitForTimeout(300);
    const during = await heard.textContent();
    expect(during).not.toMatch(/fallow/);
    await page.getByRole("button", { name: "Pause" }).click();
    const now = Number(await glass(page).getAttribute("aria-valuenow"));
    await page.waitForTimeout(300);
    expect(await glass(page).getAttribute("aria-valuenow")).toBe(String(now));
    // It is told 0.7 s after the last step; a poll that gives up after 1 s leaves little for a busy machine.
    await expect.poll(() => heard.textContent(), patience).toContain("No roots.");
    expect(wrong).toEqual([]);
    await close();
  });

  test("does not move by itself for those who want no motion: a week at a press", async () => {
    const { page, close } = await openPit({ reducedMotion: "reduce" });
    const { days } = await told(page);
    expect(await page.getByRole("button", { name: "Play" }).count()).toBe(0);
    const step = page.getByRole("button", { name: "A week on" });
    await step.click();
    await step.click();
    expect(await glass(page).getAttribute("aria-valuenow")).toBe("7");
    expect(days).toBeGreaterThan(300);
    await close();
  });

  test("is another one when another run or total is chosen", async () => {
    const { page, close } = await openPit();
    const before = await told(page);
    await page.getByRole("button", { name: "The next run" }).click();
    await expect.poll(async () => (await told(page)).firstDay).not.toBe(before.firstDay);
    await expectReadout(page, null, 304.8);
    await page.getByRole("radio", { name: "14", exact: true }).check();
    await expect.poll(() => page.url()).toContain("total=3");
    await expectReadout(page, null, 304.8);
    await close();
  });
});

describe("a layer's edge", () => {
  test("moves by arrow keys: the scenario changes, the roots with it, and one undo takes all of it back", async () => {
    const { page, wrong, close } = await openPit();
    const before = await told(page);
    await bottomOf(page, "plough pan").focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowDown");
    await expect.poll(() => bottomOf(page, "plough pan").getAttribute("aria-valuetext")).toBe("12.0 in");
    await settled(page);
    await expect.poll(async () => (await kept(page)).soil.layers[1]!.bottom).toBe("12 in");
    expect((await told(page)).fronts[0]!).toBeLessThan(before.fronts[0]!);
    await page.keyboard.press("Control+z");
    await settled(page);
    await expect.poll(async () => (await kept(page)).soil.layers[1]!.bottom).toBe("10 in");
    expect(await bottomOf(page, "plough pan").getAttribute("aria-valuetext")).toBe("10.0 in");
    expect((await told(page)).fronts).toEqual(before.fronts);
    expect(wrong).toEqual([]);
    await close();
  });

  test("is dragged, stops at its neighbours, and is put back by undo", async () => {
    const { page, wrong, close } = await openPit();
    const edge = bottomOf(page, "plough pan");
    const box = (await edge.boundingBox())!;
    const { x, y } = { x: box.x + 20, y: box.y + box.height / 2 };
    const water = (await glass(page).boundingBox())!;
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + (water.height * 3) / 96, { steps: 4 });
    await expect.poll(() => edge.getAttribute("aria-valuetext")).toBe("13.0 in");
    await page.mouse.move(x, y - 400, { steps: 3 });
    await page.mouse.up();
    await settled(page);
    await expect.poll(() => edge.getAttribute("aria-valuetext")).toBe("6.5 in");
    await expect.poll(async () => (await kept(page)).soil.layers[1]!.bottom).toBe("6.5 in");
    await page.getByRole("button", { name: /Undo/ }).click();
    await expect.poll(() => edge.getAttribute("aria-valuetext")).toBe("10.0 in");
    expect(await page.getByRole("button", { name: /Undo/ }).isDisabled()).toBe(true);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("the picture", () => {
  test("can be read as a table whose last row is the last day", async () => {
    const { page, close } = await openPit();
    await page.locator("summary", { hasText: "Read as a table" }).click();
    const head = await page.locator(".picture-table thead th").allTextContents();
    expect(head.slice(0, 3)).toEqual([
      "Month of a generated year, to its last day",
      "Rain and snow, in",
      "Root front, over the pan, in",
    ]);
    expect(head.at(-1)).toBe("Available water in deep loess, in");
    const last = await page.locator(".picture-table tbody tr:last-child > *").allTextContents();
    const { fronts } = await told(page);
    expect(last.slice(2, 5)).toEqual(fronts.map((mm) => (mm! / 25.4).toFixed(1)));
    await close();
  });

  test("is kept as PNG and as SVG, with the water in it", async () => {
    const { page, wrong, close } = await openPit();
    const [svg] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: /^SVG/ }).click(),
    ]);
    expect(svg.suggestedFilename()).toBe("pit-wall.svg");
    const text = readFileSync(await svg.path(), "utf8");
    expect(text).toMatch(/<image [^>]*href="data:image\/png;base64,/);
    expect(text).toContain("plough pan");
    const [png] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: /^PNG/ }).click(),
    ]);
    expect(readFileSync(await png.path()).length).toBeGreaterThan(20_000);
    expect(wrong).toEqual([]);
    await close();
  });

  test("of another case shows its soil and its water", async () => {
    const { page, close } = await openPit();
    const water = () => page.locator(".pit-wall image").getAttribute("href");
    const before = await water();
    await expect.poll(() => page.locator(".soil-profile text", { hasText: "roots slow" }).count()).toBe(1);
    await page.getByRole("radio", { name: "pan loosened" }).check();
    await expect.poll(water).not.toBe(before);
    expect(await page.locator(".soil-profile text", { hasText: "roots slow" }).count()).toBe(0);
    await close();
  });

  test("needs no charts code, and stays, marked stale, when the scenario goes wrong", async () => {
    const { page, wrong, close } = await openPit();
    expect(
      await page.evaluate(
        () => performance.getEntriesByType("resource").filter(({ name }) => /plotly/.test(name)).length,
      ),
    ).toBe(0);
    await page.getByRole("link", { name: "Inputs" }).click();
    await typeAt(page, "soil.layers[1].bulkDensity", "heavy");
    await page.locator('[data-path="soil.layers[1].bulkDensity"] [role=alert]').waitFor();
    await page.getByRole("link", { name: "Pit wall" }).click();
    expect(await page.locator(".stale-mark").count()).toBe(1);
    expect(await page.locator(".pit-wall image").count()).toBe(1);
    expect(wrong).toEqual([]);
    await close();
  });

  test("with a day chosen: axe finds nothing serious, light and dark", async () => {
    const { page, wrong, close } = await openPit({}, small, "?day=360");
    await page.locator("summary", { hasText: "Read as a table" }).click();
    for (const theme of ["light", "dark"] as const) {
      await lookAt(page, [theme, 1280]);
      await glass(page).focus();
      expect(await axeFaults(page, theme === "dark" ? rulesOnColours : undefined), theme).toEqual([]);
    }
    expect(
      await page
        .getByText(/have buried lines located/)
        .first()
        .isVisible(),
    ).toBe(true);
    expect(wrong).toEqual([]);
    await close();
  });

  test("goes to paper light and without its tools", async () => {
    const { page, close } = await openPit({}, small, "?theme=dark");
    const ink = () => page.locator(".pit-wall svg text[fill]").first().getAttribute("fill");
    const onScreen = await ink();
    expect(await page.locator(".cautions li").first().isVisible()).toBe(false);
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".cautions li").first().isVisible()).toBe(true);
    await expect.poll(ink).not.toBe(onScreen);
    expect(await page.evaluate(() => document.documentElement.dataset["theme"])).toBe("light");
    expect(await page.locator(".play-bar").isVisible()).toBe(false);
    expect(await page.locator(".pit-over").isVisible()).toBe(false);
    await close();
  });

  test("of a season is drawn within 50 ms", async () => {
    const { page, close } = await openPit();
    // Times from choosing another case, which draws the water and the soil anew, to the drawing being in the page.
    const times: number[] = await page.evaluate(async () => {
      const radios = [...document.querySelectorAll<HTMLInputElement>(".case-switch input")];
      const taken: number[] = [];
      for (let i = 1; i <= 15; i++) {
        const image = document.querySelector(".pit-wall image")!;
        const from = performance.now();
        const changed = new Promise<void>((resolve) => {
          new MutationObserver((_, watch) => {
            watch.disconnect();
            resolve();
          }).observe(image, { attributeFilter: ["href"] });
        });
        radios[i % radios.length]!.click();
        await changed;
        taken.push(performance.now() - from);
        await new Promise((resolve) => setTimeout(resolve, 60)); // it is painted before the next
      }
      return taken.sort((a, b) => a - b);
    });
    // The quickest: other work on the machine is not what is measured.
    expect(times[0]!).toBeLessThan(50);
    await close();
  });
});
