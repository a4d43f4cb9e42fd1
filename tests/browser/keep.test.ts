import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import type { Download, Locator, Page } from "playwright-core";
import { afterAll, describe, expect, test } from "vitest";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { embeddedText } from "../../src/report/page/embedded.ts";
import { call } from "../cli/callCli.ts";
import { axeFaults, faultsSeen, lookAt, pageOf, patience, settled, sharedHarness } from "./harness.ts";

const harness = await sharedHarness();

const folder = mkdtempSync(join(tmpdir(), "rootfront-keep-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const scenarios = new URL("../../shared/scenarios/", import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, scenarios), "utf8");
const demo = JSON.parse(textOf("sorghum-over-plough-pan.json")) as Record<string, unknown>;
const small = { ...demo, ensemble: { years: 12, seed: 3 } };
const wheat = {
  ...(JSON.parse(textOf("wheat-after-fallow.json")) as Record<string, unknown>),
  ensemble: { years: 6, seed: 2 },
};
const record = textOf("invented-station.csv");

async function openKeep(
  scenario: unknown,
  {
    files,
    view = "keep",
    query,
    clipboard = true,
  }: { files?: Record<string, string>; view?: string; query?: string; clipboard?: boolean } = {},
) {
  const options = { permissions: clipboard ? ["clipboard-read", "clipboard-write"] : [] };
  const shared = clipboard && (scenario === small || scenario === wheat);
  return pageOf(view)({ scenario, attachments: files, query, options, shared });
}

/** What a button saves, put into the folder under its own name; its path. */
async function saved(page: Page, button: string | Locator): Promise<string> {
  const target =
    typeof button === "string" ? page.getByRole("button", { name: button, exact: true }) : button;
  const [download] = await Promise.all([page.waitForEvent("download") as Promise<Download>, target.click()]);
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  return path;
}

function give(page: Page, ...files: readonly (readonly [name: string, text: string])[]): Promise<void> {
  return page
    .locator(".keep input[type=file]")
    .setInputFiles(
      files.map(([name, text]) => ({ name, mimeType: "text/plain", buffer: Buffer.from(text) })),
    );
}

const said = (page: Page) => page.locator(".keep-sheet").first().locator("[role=status]");

async function headName(page: Page): Promise<string> {
  return (await page.locator(".head-name").textContent())?.trim() ?? "";
}

/** Where two JSON values differ by more than the last digit of a number. */
function differing(found: unknown, expected: unknown, path = "answer"): string[] {
  if (typeof expected === "number" && typeof found === "number") {
    const isSame = Math.abs(found - expected) <= 1e-9 * Math.abs(expected) + 1e-9;
    return isSame ? [] : [`${path}: ${found}, not ${expected}`];
  }
  if (typeof expected !== "object" || expected === null || typeof found !== "object" || found === null)
    return Object.is(found, expected) ? [] : [`${path}: ${String(found)}, not ${String(expected)}`];
  const keys = new Set([...Object.keys(found), ...Object.keys(expected)]);
  return [...keys].flatMap((key) =>
    differing(
      (found as Record<string, unknown>)[key],
      (expected as Record<string, unknown>)[key],
      `${path}.${key}`,
    ),
  );
}

/** Sides of a PDF. */
function sidesOf(pdf: Buffer): number {
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

describe("what is saved", () => {
  test("a scenario with its record is what the command line reads, and gives its answers", async () => {
    const { page, wrong, close } = await openKeep(wheat, {
      files: { "records/invented-station.csv": record },
    });
    await expect.poll(() => page.getByText("put both into one folder").count(), patience).toBe(1);
    const file = await saved(page, "Save the scenario file");
    const csv = await saved(page, "Save invented-station.csv");
    expect(JSON.parse(readFileSync(file, "utf8"))).toEqual(wheat);
    expect(readFileSync(csv, "utf8")).toBe(record);

    const json = JSON.parse(readFileSync(await saved(page, "Answer (JSON)"), "utf8")) as Comparison;
    const { code, out } = await call(folder, "compare", basename(file), "--json");
    expect(code).toBe(0);
    expect(differing(json, JSON.parse(out))).toEqual([]);

    const ledger = readFileSync(await saved(page, "Ledger of the run shown (CSV)"), "utf8")
      .trim()
      .split("\n");
    const which = await page
      .locator(".keep-sheet", { hasText: "Results as files" })
      .locator("[role=status]")
      .textContent();
    const [, run, year] = /run (\d+): sown in (.+), rain as it came/.exec(which ?? "") ?? [];
    const command = await call(folder, "ledger", basename(file), "--run", run!);
    expect(command.err).toContain(`sown in ${year}`);
    const rows = command.out.trim().split("\n");
    expect(ledger).toHaveLength(rows.length);
    expect(ledger[0]).toBe(rows[0]);
    ledger.slice(1).forEach((line, i) => {
      const cells = rows[i + 1]!.split(",");
      line.split(",").forEach((cell, c) => {
        const expected = cells[c]!;
        if (cell === expected) return;
        // The residual is rounding; the others may fall to either side in the sixth digit.
        expect(
          Math.abs(Number(cell) - Number(expected)),
          `${rows[0]!.split(",")[c]}, row ${i}`,
        ).toBeLessThanOrEqual(1.1e-5 * Math.abs(Number(expected)) + 1e-9);
      });
    });

    const words = readFileSync(await saved(page, "The scenario in words"), "utf8");
    expect(words).toContain("Winter wheat after fallow");
    const text = readFileSync(await saved(page, "Answer (text)"), "utf8");
    expect(text).toBe((await call(folder, "compare", basename(file))).out);
    expect(wrong).toEqual([]);
    await close();
  });

  test("a record named with its folder is named without it, for both land in one", async () => {
    const inFolder = { ...wheat, weather: { record: "records/invented-station.csv" } };
    const { page, close } = await openKeep(inFolder, { files: { "records/invented-station.csv": record } });
    const file = await saved(page, "Save the scenario file");
    await saved(page, "Save invented-station.csv");
    expect(JSON.parse(readFileSync(file, "utf8"))).toEqual(wheat);
    expect((await call(folder, "compare", basename(file), "--json")).code).toBe(0);
    await close();
  });
});

describe("what is opened", () => {
  test("a scenario and its record together; undo brings back what was here", async () => {
    const { page, wrong, close } = await openKeep(small);
    const before = await headName(page);
    await give(page, ["wheat.json", JSON.stringify(wheat)], ["invented-station.csv", record]);
    await expect.poll(() => headName(page), patience).toBe(wheat["name" as keyof typeof wheat]);
    expect(await said(page).textContent()).toContain("wheat.json is open. Undo brings back");
    await settled(page);
    expect(await page.locator(".banner-wrong").count()).toBe(0);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(() => headName(page), patience).toBe(before);
    expect(wrong).toEqual([]);
    await close();
  });

  test("a scenario without its record says what is missing, and takes it afterwards", async () => {
    const { page, close } = await openKeep(small);
    await give(page, ["wheat.json", JSON.stringify(wheat)]);
    await expect.poll(() => said(page).textContent(), patience).toContain("It names invented-station.csv");
    await give(page, ["invented-station.csv", record]);
    await expect.poll(() => said(page).textContent(), patience).toContain("invented-station.csv is taken up");
    await settled(page);
    expect(await page.locator(".banner-wrong").count()).toBe(0);
    await close();
  });

  test("dropped anywhere on the view", async () => {
    const { page, close } = await openKeep(small);
    const other = { ...small, name: "dropped here" };
    await page.evaluate((text) => {
      const files = new DataTransfer();
      files.items.add(new File([text], "other.json", { type: "application/json" }));
      const target = document.querySelector(".keep h1")!;
      for (const kind of ["dragenter", "dragover", "drop"])
        target.dispatchEvent(new DragEvent(kind, { dataTransfer: files, bubbles: true, cancelable: true }));
    }, JSON.stringify(other));
    await expect.poll(() => headName(page), patience).toBe("dropped here");
    expect(await page.locator("html[data-drop]").count()).toBe(0);
    await close();
  });

  test("what is no scenario is refused in one line, and what was here stays", async () => {
    const { page, wrong, close } = await openKeep(small);
    const before = await headName(page);
    const bad: readonly (readonly [name: string, text: string, says: RegExp])[] = [
      ["broken.json", '{ "format": "rootfront-scenario/1", ', /broken\.json.*line 1/],
      [
        "answer.json",
        '{ "format": "rootfront-comparison/1" }',
        /answer\.json: expected a scenario.*comparison/,
      ],
      ["list.json", "[1, 2]", /list\.json: expected a scenario/],
      ["page.html", "<!doctype html><p>hello", /page\.html: expected a report/],
      ["other.csv", "date,rain\n", /other\.csv: expected a scenario, a report, or a weather record/],
      [
        "cut.html",
        '<!doctype html><script type="application/json" id="rootfront-scenario">{"scenario":</script>',
        /cut\.html/,
      ],
    ];
    for (const [name, text, says] of bad) {
      await give(page, [name, text]);
      await expect.poll(() => said(page).textContent(), patience).toMatch(says);
      expect(await said(page).textContent()).toContain("What was here is still here.");
      expect((await said(page).textContent())!.length).toBeLessThan(320);
    }
    await give(page, ["a.json", JSON.stringify(small)], ["b.json", JSON.stringify(small)]);
    await expect.poll(() => said(page).textContent(), patience).toContain("one scenario at a time");
    await page
      .locator(".keep input[type=file]")
      .setInputFiles([{ name: "bytes.json", mimeType: "", buffer: Buffer.from([0xff, 0xfe, 0x00]) }]);
    await expect.poll(() => said(page).textContent(), patience).toContain("UTF-8");
    expect(await headName(page)).toBe(before);
    expect(await page.getByRole("button", { name: /^Undo/ }).isDisabled()).toBe(true);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("the link", () => {
  test("carries the whole scenario; the field holds it where nothing can be copied", async () => {
    const { page, close } = await openKeep(small, { clipboard: false });
    const field = page.getByLabel(/^The link, for this machine only, [\d,]+ characters/);
    await field.waitFor();
    const link = await field.inputValue();
    expect(
      await page
        .getByText(`The link, for this machine only, ${link.length.toLocaleString("en")} characters`)
        .count(),
    ).toBe(1);
    await page.evaluate(() => {
      navigator.clipboard.writeText = () => Promise.reject(new Error("not allowed"));
    });
    await page.getByRole("button", { name: "Copy a link" }).click();
    await expect
      .poll(
        () => page.locator(".keep-sheet", { hasText: "A link" }).locator("[role=status]").textContent(),
        patience,
      )
      .toContain("select the link below");
    await field.focus();
    expect(
      await field.evaluate((input: HTMLInputElement) => input.selectionEnd! - input.selectionStart!),
    ).toBe(link.length);

    const context = await harness.newContext();
    const there = await context.newPage();
    await there.goto(link);
    await settled(there);
    await there
      .locator(".banner", { hasText: "Opened from a link" })
      .getByRole("button", { name: "Close" })
      .click();
    expect(await there.locator(".banner").count()).toBe(0);
    await there.goto(`${harness.address}#/keep`);
    const path = await saved(there, "Save the scenario file");
    expect(JSON.parse(readFileSync(path, "utf8"))).toEqual(small);
    await context.close();
    await close();
  });

  test("says what it leaves out, and when a scenario is too long for one", async () => {
    const { page, close } = await openKeep(wheat, { files: { "invented-station.csv": record } });
    await expect
      .poll(() => page.locator(".keep-left-out").textContent(), patience)
      .toContain("Without invented-station.csv");
    // Text that does not pack.
    const noise = Array.from({ length: 40_000 }, (_, i) => ((i * 2654435761) % 4294967296).toString(36)).join(
      "",
    );
    await give(page, ["long.json", JSON.stringify({ ...small, notes: [noise] })]);
    await expect
      .poll(() => page.locator(".keep-sheet", { hasText: "A link" }).textContent(), patience)
      .toContain("too long for a link: save it as a file instead");
    await close();
  });
});

describe("the report", () => {
  test("is the command line's, opens again, and holds the record", async () => {
    const { page, wrong, close } = await openKeep(wheat, {
      files: { "invented-station.csv": record, "old.csv": "x" },
    });
    const path = await saved(page, "Save the report (one HTML page)");
    const html = readFileSync(path, "utf8");
    expect(JSON.parse(embeddedText(html)!)).toEqual({
      scenario: wheat,
      attachments: { "invented-station.csv": record },
    });
    writeFileSync(join(folder, "wheat.json"), JSON.stringify(wheat));
    writeFileSync(join(folder, "invented-station.csv"), record);
    const { out } = await call(folder, "report", "wheat.json");
    // Drawn and said alike; a last digit may differ between two runtimes.
    const skeleton = (text: string) => text.replace(/\d+(?:\.\d+)?/g, "0");
    expect(skeleton(html)).toBe(skeleton(out));

    await page.getByRole("button", { name: String(demo["name"]) }).click();
    await expect.poll(() => headName(page), patience).toBe(demo["name"]);
    await page.locator(".keep input[type=file]").setInputFiles(path);
    await expect.poll(() => headName(page), patience).toBe(wheat["name" as keyof typeof wheat]);
    await settled(page);
    expect(await page.locator(".banner-wrong").count()).toBe(0);
    expect(wrong).toEqual([]);
    await close();
  });

  test("of the demo takes two sides at most, from the page and as a file, and the page is back afterwards", async () => {
    const { page, wrong, close } = await openKeep(demo);
    for (const format of ["Letter", "A4"] as const) {
      await page.evaluate(() => {
        globalThis.print = () => Object.assign(globalThis, { asked: "print" });
      });
      await page.getByRole("button", { name: "Print the report" }).click();
      await page.waitForFunction(() => (globalThis as { asked?: string }).asked === "print");
      await page.emulateMedia({ media: "print" });
      expect(await page.locator("#page").isVisible()).toBe(false);
      expect(await page.locator(".report-print h1").textContent()).toBe(demo["name"]);
      await page.emulateMedia({ media: null });
      expect(await page.locator("#page").isVisible()).toBe(true);
      expect(await page.locator(".report-print h1").isVisible()).toBe(false);
      const sides = sidesOf(await page.pdf({ format }));
      expect(sides, format).toBeGreaterThanOrEqual(1);
      expect(sides, format).toBeLessThanOrEqual(2);
      // The paper is out.
      await expect.poll(() => page.locator(".report-print").count(), patience).toBe(0);
      await page.evaluate(() => Object.assign(globalThis, { asked: "" }));
    }
    const path = await saved(page, "Save the report (one HTML page)");
    const alone = await (await harness.newContext()).newPage();
    const said: string[] = [];
    alone.on("console", (message) => said.push(message.text()));
    alone.on("request", (request) => {
      if (!/^(?:file|data):/.test(request.url())) said.push(request.url());
    });
    await alone.goto(`file://${path}`);
    for (const format of ["Letter", "A4"] as const)
      expect(sidesOf(await alone.pdf({ format })), format).toBeLessThanOrEqual(2);
    expect(said).toEqual([]);
    await alone.context().close();
    expect(wrong).toEqual([]);
    await close();
  });

  test("is readable by all, on a phone too", async () => {
    writeFileSync(join(folder, "small.json"), JSON.stringify(small));
    const { out } = await call(folder, "report", "small.json");
    // Served from the page's own address, without the report's policy, so that the checker may be put in.
    const context = await harness.newContext({ viewport: { width: 390, height: 800 } });
    const page = await context.newPage();
    await page.route("**/report-under-test", (route) =>
      route.fulfill({ contentType: "text/html", body: out.replace(/<meta http-equiv[^>]*>/, "") }),
    );
    await page.goto(`${harness.address}report-under-test`);
    expect(await axeFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    await context.close();
  });
});

describe("every picture", () => {
  test.each(["pit", "answer", "seasons"])(
    "of %s is saved as PNG and as SVG that stand alone",
    async (view) => {
      const { page, wrong, close } = await openKeep(small, { view, query: "?theme=dark" });
      await page.waitForFunction(() => document.querySelector(".plot:not([data-drawn])") === null);
      const pictures = page.locator("main .picture");
      const count = await pictures.count();
      expect(count).toBeGreaterThanOrEqual(1);
      for (let i = 0; i < count; i++) {
        const tools = pictures.nth(i).locator(".picture-tools");
        const png = readFileSync(await saved(page, tools.getByRole("button", { name: /^PNG of / })));
        expect(png.subarray(0, 8).toString("latin1")).toBe("\x89PNG\r\n\x1a\n");
        expect(png.readUInt32BE(16)).toBeGreaterThan(300);
        const svg = readFileSync(await saved(page, tools.getByRole("button", { name: /^SVG of / })), "utf8");
        const parsed = await page.evaluate((text) => {
          const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
          return {
            tag: root.tagName,
            faults: root.querySelectorAll("parsererror").length,
            width: Number(root.getAttribute("width")),
            words: root.textContent ?? "",
            refers: [...root.querySelectorAll("[href], image")].map((one) => one.getAttribute("href") ?? ""),
          };
        }, svg);
        expect(parsed).toMatchObject({ tag: "svg", faults: 0 });
        expect(parsed.width).toBeGreaterThan(150);
        expect(parsed.words).toContain("(invented data)");
        expect(parsed.refers.filter((href) => !/^(?:#|data:)/.test(href))).toEqual([]);
        // Its own paper under it, its own font: it looks alike on any page.
        expect(svg).toMatch(/<rect[^>]*(?:fill="#211d19"|fill: rgb\(33, 29, 25\))/);
        expect(svg).toContain("sans-serif");
      }
      expect(wrong).toEqual([]);
      await close();
    },
  );
});

describe("the view", () => {
  test("opens the demos, each with a word on it, marked invented", async () => {
    const { page, close } = await openKeep(small);
    const items = page.locator(".keep-demos li");
    const count = await items.count();
    expect(count).toBeGreaterThanOrEqual(3);
    for (let i = 0; i < count; i++) {
      expect(await items.nth(i).locator(".keep-mark").textContent()).toBe("invented");
      expect((await items.nth(i).locator("p").textContent())!.length).toBeGreaterThan(30);
    }
    const last = items.nth(count - 1).getByRole("button");
    const name = await last.textContent();
    await last.click();
    await expect.poll(() => headName(page), patience).toBe(name);
    await close();
  });

  test("has no fault that shuts anyone out, and fits a phone", async () => {
    const { page, close } = await openKeep(wheat, { files: { "invented-station.csv": record } });
    for (const look of [
      ["light", 1280],
      ["dark", 1280],
      ["light", 390],
    ] as const) {
      await lookAt(page, look);
      expect(await faultsSeen(page, look), look.join()).toEqual([]);
    }
    await close();
  });
});
