import { readFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { deflateRawSync } from "node:zlib";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import {
  chromium,
  type Browser,
  type BrowserContext,
  type ConsoleMessage,
  type Locator,
  type Page,
} from "playwright-core";
import { buildPage } from "../../scripts/buildPage.ts";
import { findChromium } from "../../scripts/ensure-chromium.mjs";
import { servePage, type PageServer } from "../../scripts/serve.ts";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import type { FromEngine } from "../../web/worker/protocol.ts";

export type ContextOptions = NonNullable<Parameters<Browser["newContext"]>[0]>;

/** A built page, served, and a browser to open it in. */
export interface Harness {
  readonly address: string;
  readonly browser: Browser;
  /** Tabs that are done with, by the options of their profiles. */
  readonly idleTabs: Map<string, IdleTab[]>;
  /** A fresh profile: nothing stored, nothing cached. */
  readonly newContext: (options?: ContextOptions) => Promise<BrowserContext>;
  /** Stops the server, for what has to work without it. */
  readonly stopServing: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** How long a check is tried again: the machine may be busy with other tests. */
export const patience = { timeout: 20_000 };

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
  const newContext = (options?: ContextOptions) =>
    browser.newContext({ viewport: usualViewport, ...options });
  return {
    address: server.address,
    browser,
    newContext,
    idleTabs: new Map(),
    stopServing: server.close,
    close: async () => {
      await browser.close();
      await server.close();
      if (built === undefined) await rm(folder, { recursive: true, force: true });
    },
  };
}

let ofThisWorker: Promise<Harness> | undefined;

/** The harness that all files of a worker share; it ends with the worker. */
export const sharedHarness = (): Promise<Harness> => (ofThisWorker ??= openHarness());

/** A page that writes down whatever went wrong in it: errors, warnings, and requests to another host. */
export interface Watched {
  readonly page: Page;
  readonly wrong: string[];
}

export async function openPage(harness: Harness, route = "", context?: BrowserContext): Promise<Watched> {
  return watched(harness, await newPage(context ?? (await harness.newContext())), route);
}

async function newPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  // tsx writes this name into functions that are sent to the page.
  await page.addInitScript("globalThis.__name = (named) => named");
  return page;
}

const usualHeight = 900;
const wide = 1280;
const usualViewport = { width: wide, height: usualHeight };
/** A file of the page's address that takes no time to open. */
const lightPage = "sw.js";

/** The light page has no icon, and a shared profile no service worker. */
const notOfThePage = (message: ConsoleMessage) =>
  message.location().url.endsWith("/favicon.ico") || /blocked by Playwright/.test(message.text());

/** A script that runs before the page's own. */
type Script = Awaited<ReturnType<Page["addInitScript"]>>;

/** What a tab of its own begins with. */
export interface TabPlan {
  readonly route?: string;
  /** Left there before, instead of the demo; see `leftWith`. */
  readonly scenario?: unknown;
  readonly attachments?: Readonly<Record<string, string>> | undefined;
  readonly options?: ContextOptions | undefined;
  /** Done with the page before it is loaded. */
  readonly before?: (page: Page) => Promise<Script>;
  /**
   * Tests with one scenario follow each other in one tab, which is not loaded again: all edits are undone, and the view is made
   * anew. What the page remembers beside the scenario and the address, such as the order of the seasons, stays: a test that asks
   * for the first of such a choice chooses it, or is not shared.
   */
  readonly shared?: boolean;
}

export interface Tab extends Watched {
  readonly close: () => Promise<void>;
}

/** In a profile that has shown the page, it opens in a third of the time. Each tab has its own, as tabs of one hear of each other's edits. */
export interface IdleTab {
  readonly page: Page;
  /** What was left with it; null where the next test has to load it. */
  readonly sharedAs: string | null;
  readonly scripts: readonly (Script | undefined)[];
}

/** So many shared tabs stay open, of each set of options. */
const mostIdle = 3;

function takeIdle(idle: IdleTab[], sharedAs: string | null): IdleTab | undefined {
  const places = [
    sharedAs === null ? -1 : idle.findIndex((one) => one.sharedAs === sharedAs),
    idle.findIndex((one) => one.sharedAs === null),
    idle.length >= mostIdle ? 0 : -1,
  ];
  const at = places.find((place) => place >= 0);
  return at === undefined ? undefined : idle.splice(at, 1)[0];
}

/** A tab in which nothing is stored but what is left with it, of a profile that has loaded the page before. */
export async function openTab(harness: Harness, plan: TabPlan): Promise<Tab> {
  const { route = "", scenario, attachments, options, before, shared = false } = plan;
  const { viewport = usualViewport, ...profile } = options ?? {};
  const profileKey = JSON.stringify(profile);
  const idle = harness.idleTabs.get(profileKey) ?? [];
  harness.idleTabs.set(profileKey, idle);
  const sharedAs = shared ? JSON.stringify([scenario, attachments]) : null;
  const taken = takeIdle(idle, sharedAs);
  const page =
    taken?.page ?? (await newPage(await harness.newContext({ serviceWorkers: "block", ...profile })));
  await page.setViewportSize(viewport ?? usualViewport);
  let scripts = taken?.scripts ?? [];
  const isLoaded = taken !== undefined && sharedAs !== null && taken.sharedAs === sharedAs;
  let wrong: string[];
  if (isLoaded) {
    wrong = watch(harness, page, notOfThePage);
    await beginAgain(page, route);
  } else {
    for (const script of scripts) await script?.dispose();
    await page.goto(`${harness.address}${lightPage}`);
    await page.evaluate(() => {
      sessionStorage.clear();
      localStorage.clear();
    });
    scripts = [
      ...(scenario === undefined ? [] : [await leftWith(page, scenario, attachments)]),
      await listenToEngine(page),
      await before?.(page),
    ];
    wrong = watch(harness, page, notOfThePage);
    await page.goto(harness.address + route);
    if (shared) await page.evaluate(() => Object.assign(globalThis, { isSharedTab: true }));
  }
  return {
    page,
    wrong,
    close: async () => {
      page.removeAllListeners("console");
      page.removeAllListeners("pageerror");
      page.removeAllListeners("request");
      await page.emulateMedia({ media: null, colorScheme: null });
      await page.mouse.move(0, 0);
      // A page that was loaded again has forgotten its steps of undo.
      const isStill = shared && (await page.evaluate(() => "isSharedTab" in globalThis));
      idle.push({ page, sharedAs: isStill ? sharedAs : null, scripts });
    },
  };
}

/** All edits of a page undone, and its view made anew. */
async function beginAgain(page: Page, route: string): Promise<void> {
  const undo = page.getByRole("button", { name: /^Undo/ });
  while (await undo.isEnabled()) await undo.click();
  const [view, query] = route.replace("#/", "").split("?");
  await goTo(page, view === "keep" ? "inputs" : "keep");
  // Units and light stay as they were where an address does not say.
  const usual = new URLSearchParams({ units: "us", theme: "auto" });
  for (const [key, value] of new URLSearchParams(query)) usual.set(key, value);
  await page.evaluate((to) => (location.hash = to), `#/${view}?${usual}`);
  await page.waitForSelector(`main.view-${view} h1`);
  await settled(page);
  await page.waitForFunction((units) => {
    const { heardFromEngine: heard } = globalThis as unknown as { heardFromEngine: FromEngine[] };
    const last = heard.findLast((one) => one.kind === "answer");
    return last?.kind === "answer" && last.answer.units === units;
  }, usual.get("units"));
  await page.evaluate(() => scrollTo(0, 0));
}

/** What a view is opened with; a width instead of `options.viewport`. */
export interface ViewPlan extends Omit<TabPlan, "route"> {
  readonly query?: string | undefined;
  readonly width?: number;
}

/**
 * How a file of tests opens its view: in a tab of its own, the answer whole.
 *
 * @param usual the scenario where the plan has none
 */
export function pageOf(view: string, usual?: unknown): (plan?: ViewPlan) => Promise<Tab> {
  return async ({ query = "", width, scenario = usual, options, ...plan } = {}) => {
    const viewport = width === undefined ? options?.viewport : { width, height: usualHeight };
    const tab = await openTab(await sharedHarness(), {
      ...plan,
      route: `#/${view}${query}`,
      scenario,
      options: { ...options, ...(viewport === undefined ? {} : { viewport }) },
    });
    await settled(tab.page);
    return tab;
  };
}

const openField = pageOf("field");

/** The field notes, opened at a leaf, in a shared tab. */
export async function openLeaf(scenario: unknown, leaf: string, query = ""): Promise<Tab> {
  const tab = await openField({ scenario, query, shared: true });
  await turnToLeaf(tab.page, leaf);
  return tab;
}

/** To another leaf of the field notes. */
export async function turnToLeaf(page: Page, leaf: string): Promise<void> {
  await page.getByRole("button", { name: leaf, exact: true }).click();
}

async function watched(harness: Harness, page: Page, route: string): Promise<Watched> {
  const wrong = watch(harness, page);
  await page.goto(harness.address + route);
  return { page, wrong };
}

/** Whatever goes wrong from now on. */
function watch(
  harness: Harness,
  page: Page,
  ignored: (message: ConsoleMessage) => boolean = () => false,
): string[] {
  const wrong: string[] = [];
  page.on("console", (message) => {
    if (/^(?:error|warning)$/.test(message.type()) && !ignored(message)) wrong.push(message.text());
  });
  page.on("pageerror", (error) => wrong.push(String(error)));
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(harness.address) && !/^(?:data|blob):/.test(url)) wrong.push(`asked ${url}`);
  });
  return wrong;
}

/** Waits until the engine is through: the answer is whole and belongs to what is written. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('html[data-engine="idle"]', { timeout: 30_000 });
}

/** The part of a page below a heading. */
export function panel(page: Page, title: string): Locator {
  return page.locator(".panel").filter({ has: page.getByRole("heading", { name: title, exact: true }) });
}

/** To another view in the same tab, its charts drawn. */
export async function goTo(page: Page, view: string): Promise<void> {
  await page.evaluate((to) => (location.hash = to), `#/${view}`);
  await page.waitForSelector(`main.view-${view} h1`);
  await page.waitForFunction(() => document.querySelector(".plot:not([data-drawn])") === null);
}

/** Writes into a field by its place in the scenario, as a person would, on its card where that is closed. */
export async function typeAt(page: Page, path: string, text: string): Promise<void> {
  const input = page.locator(`[data-path="${path}"] input`);
  const card = await input.evaluate((one) => one.closest<HTMLElement>(".card:not([open])")?.dataset["card"]);
  if (card !== undefined) await openCard(page, card);
  await input.fill(text);
}

/** Opens a card of the inputs; the one that was open closes. */
export async function openCard(page: Page, card: string): Promise<void> {
  const summary = page.locator(`#inputs-${card} > summary`);
  await page.evaluate((id) => {
    document.querySelector<HTMLDetailsElement>(`#inputs-${id}`)!.open = true;
  }, card);
  await summary.scrollIntoViewIfNeeded();
  await page.waitForFunction(() => document.querySelectorAll(".card[open]").length === 1);
}

/** The fragment of a link to a scenario, made here and not by the page. */
export function linkTo(scenario: unknown, attachments: Readonly<Record<string, string>> = {}): string {
  return `#s=${deflateRawSync(JSON.stringify({ scenario, attachments })).toString("base64url")}`;
}

/** Writes down what the page's engine says, from before the page is loaded; nothing of the page is changed. */
export async function listenToEngine(context: BrowserContext | Page): Promise<Script> {
  return context.addInitScript(() => {
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

/** Opens what is folded within. */
export async function unfold(within: Locator): Promise<void> {
  const folded = within.locator("details:not([open]) > summary");
  while ((await folded.count()) > 0) await folded.first().click();
}

/** What is folded in the folded too; of the cards of the inputs only one can be open. */
export async function unfoldAll(page: Page): Promise<void> {
  for (let folded = 1; folded > 0;) {
    folded = await page.evaluate(() => {
      const closed = document.querySelectorAll<HTMLDetailsElement>("details:not([open], .card)");
      for (const one of closed) one.open = true;
      return closed.length;
    });
    await page.waitForTimeout(100);
  }
}

/** Light, and width in px. */
export type Look = readonly [theme: "light" | "dark", width: number];

/** The same page in another light and at another width, drawn again: dearer pages are opened once for all. */
export async function lookAt(page: Page, [theme, width]: Look): Promise<void> {
  await page.emulateMedia({ colorScheme: theme });
  await page.setViewportSize({ width, height: usualHeight });
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 50))));
  await page.waitForSelector(`html[data-theme="${theme}"]`);
  await page.waitForFunction(() => document.querySelector(".plot:not([data-drawn])") === null);
}

/** What passes the edge of the page, and what writing passes the edge of its drawing. */
export async function cutOff(page: Page): Promise<string[]> {
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  const outside = await page.locator('main svg[role="img"]').evaluateAll((pictures) =>
    pictures.flatMap((picture) => {
      const box = picture.getBoundingClientRect();
      return [...picture.querySelectorAll("text")]
        .filter((text) => {
          const { left, right, top, bottom } = text.getBoundingClientRect();
          return left < box.left - 1 || right > box.right + 1 || top < box.top - 1 || bottom > box.bottom + 2;
        })
        .map(({ textContent }) => `outside its drawing: ${textContent}`);
    }),
  );
  return [...(over > 0 ? [`${over} px wider than the page`] : []), ...outside];
}

/**
 * What is cut off in this look, and what axe finds. All its rules take as long as a test, so a page meets them once, light and
 * wide; dark it meets those on colours, narrow none (foundation.test.ts has all rules on every view at 390 px).
 */
export async function faultsSeen(page: Page, [theme, width]: Look): Promise<string[]> {
  const rules = theme === "dark" ? rulesOnColours : width === wide ? allRules : null;
  return [...(rules === null ? [] : await axeFaults(page, rules)), ...(await cutOff(page))];
}

const allRules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
/** axe's rules that another light can break. */
export const rulesOnColours = { type: "rule" as const, values: ["color-contrast", "link-in-text-block"] };

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Faults that axe finds and calls serious or worse, one line each. */
export async function axeFaults(
  page: Page,
  rules: string[] | typeof rulesOnColours = allRules,
): Promise<string[]> {
  // Not as a script tag: the page's policy allows none from outside.
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(axeSource);
  return page.evaluate(async (runOnly) => {
    const { axe } = globalThis as unknown as { axe: typeof import("axe-core") };
    const { violations } = await axe.run(document, { runOnly });
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(
        ({ id, nodes }) =>
          `${id}: ${nodes.map(({ target, failureSummary }) => `${target.join(" ")} (${failureSummary ?? ""})`).join("; ")}`,
      );
  }, rules);
}

/** The page begins with this scenario instead of the demo, as if it had been left so: small ensembles make quick tests. */
export async function leftWith(
  context: BrowserContext | Page,
  scenario: unknown,
  attachments: Readonly<Record<string, string>> = {},
): Promise<Script> {
  const kept = JSON.stringify({ scenario, attachments, editedAtMs: 1, files: "here" });
  return context.addInitScript((text) => {
    if (sessionStorage.getItem("rootfront.tab") !== null) return; // a reload: what the page has kept since stays
    sessionStorage.setItem("rootfront.tab", `test${performance.timeOrigin}`);
    localStorage.setItem(`rootfront.work.${sessionStorage.getItem("rootfront.tab")}`, text);
  }, kept);
}
