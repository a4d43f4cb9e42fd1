import { mkdtemp, readFile, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { deflateRawSync } from "node:zlib";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium, type Browser, type BrowserContext, type Page } from "playwright-core";
import { buildPage } from "../../scripts/buildPage.ts";
import { findChromium } from "../../scripts/ensure-chromium.mjs";
import { servePage, type PageServer } from "../../scripts/serve.ts";
import type { Comparison } from "../../src/answer/comparison.ts";
import type { FromEngine } from "../../web/worker/protocol.ts";

/** A built page, served, and a browser to open it in. */
export interface Harness {
  readonly address: string;
  readonly browser: Browser;
  /** A fresh profile: nothing stored, nothing cached. */
  readonly newContext: (options?: Parameters<Browser["newContext"]>[0]) => Promise<BrowserContext>;
  /** Stops the server, for what has to work without it. */
  readonly stopServing: () => Promise<void>;
  readonly close: () => Promise<void>;
}

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Where the tests' one build of the page lies; not set, each harness builds its own. */
export const builtPageVariable = "ROOTFRONT_BUILT_PAGE";

/** Serves the page, built, and opens a browser for it. */
export async function openHarness(): Promise<Harness> {
  const executablePath = findChromium();
  if (executablePath === null)
    throw new Error("no Chromium: run node scripts/ensure-chromium.mjs, or set CHROMIUM_PATH");
  const built = process.env[builtPageVariable];
  const folder = built ?? (await mkdtemp(join(tmpdir(), "rootfront-page-")));
  if (built === undefined) await buildPage(root, folder);
  const server: PageServer = await servePage(folder);
  const browser = await chromium.launch({
    executablePath,
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  return {
    address: server.address,
    browser,
    newContext: (options) => browser.newContext({ viewport: { width: 1280, height: 900 }, ...options }),
    stopServing: server.close,
    close: async () => {
      await browser.close();
      await server.close();
      if (built === undefined) await rm(folder, { recursive: true, force: true });
    },
  };
}

/** A page that writes down whatever went wrong in it: errors, warnings, and requests to another host. */
export interface Watched {
  readonly page: Page;
  readonly wrong: string[];
}

export async function openPage(harness: Harness, route = "", context?: BrowserContext): Promise<Watched> {
  const page = await (context ?? (await harness.newContext())).newPage();
  // tsx writes this name into functions that are sent to the page.
  await page.addInitScript("globalThis.__name = (named) => named");
  const wrong: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") wrong.push(message.text());
  });
  page.on("pageerror", (error) => wrong.push(String(error)));
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(harness.address) && !/^(?:data|blob):/.test(url)) wrong.push(`asked ${url}`);
  });
  await page.goto(harness.address + route);
  return { page, wrong };
}

/** Waits until the engine is through: the answer is whole and belongs to what is written. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('html[data-engine="idle"]', { timeout: 30_000 });
}

/** Writes into a field by its place in the scenario, as a person would. */
export async function typeAt(page: Page, path: string, text: string): Promise<void> {
  await page.locator(`[data-path="${path}"] input`).fill(text);
}

/** The fragment of a link to a scenario, made here and not by the page. */
export function linkTo(scenario: unknown, attachments: Readonly<Record<string, string>> = {}): string {
  return `#s=${deflateRawSync(JSON.stringify({ scenario, attachments })).toString("base64url")}`;
}

/** Writes down what the page's engine says, from before the page is loaded; nothing of the page is changed. */
export async function listenToEngine(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const heard: unknown[] = [];
    Object.assign(globalThis, { heardFromEngine: heard });
    const Plain = Worker;
    globalThis.Worker = class extends Plain {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        this.addEventListener("message", ({ data }: MessageEvent<unknown>) => heard.push(data));
      }
    };
  });
}

/** The last whole answer that the engine gave the page, as it was before any rounding. */
export function lastComparison(page: Page): Promise<Comparison> {
  return page.evaluate(() => {
    const { heardFromEngine: heard } = globalThis as unknown as { heardFromEngine: FromEngine[] };
    const last = heard.findLast((one) => one.kind === "answer" && one.answer.whole);
    if (last?.kind !== "answer") throw new Error("no answer yet");
    return last.answer.comparison;
  });
}

/** Faults that axe finds and calls serious or worse, one line each. */
export async function axeFaults(page: Page): Promise<string[]> {
  const source = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
  // Not as a script tag: the page's policy allows none from outside.
  await page.evaluate(source);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: typeof import("axe-core") };
    const { violations } = await axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    });
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(
        ({ id, nodes }) =>
          `${id}: ${nodes.map(({ target, failureSummary }) => `${target.join(" ")} (${failureSummary ?? ""})`).join("; ")}`,
      );
  });
}

/** The page begins with this scenario instead of the demo, as if it had been left so: small ensembles make quick tests. */
export async function leftWith(
  context: BrowserContext,
  scenario: unknown,
  attachments: Readonly<Record<string, string>> = {},
): Promise<void> {
  const kept = JSON.stringify({ scenario, attachments, editedAtMs: 1, files: "here" });
  await context.addInitScript((text) => {
    if (sessionStorage.getItem("rootfront.tab") !== null) return; // a reload: what the page has kept since stays
    sessionStorage.setItem("rootfront.tab", `test${performance.timeOrigin}`);
    localStorage.setItem(`rootfront.work.${sessionStorage.getItem("rootfront.tab")}`, text);
  }, kept);
}
