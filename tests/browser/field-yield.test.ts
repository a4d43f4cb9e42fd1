import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import {
  fieldSentences,
  fieldTypeset,
  type FieldSentences,
} from "../../src/report/sentences/field/fieldSentences.ts";
import { measuredYield, type MeasuredYield } from "../../src/report/sentences/field/measuredYield.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import {
  faultsSeen,
  lastComparison,
  lookAt,
  openLeaf,
  settled,
  turnToLeaf,
  typeAt,
  unfold,
} from "./harness.ts";
import { demoAsWritten } from "../support/demos.ts";

const quick = { ensemble: { years: 18, seed: 1 } };
const sorghum = { ...demoAsWritten("sorghum-over-plough-pan"), ...quick };
const sunflower = { ...demoAsWritten("sunflower-over-dry-clay"), ...quick };
const spotsOfCorn = [
  { ears: 22, kernelRows: [14, 15, 16], kernelsPerRow: [28, 30, 27], secondEars: 1, secondEarKernels: [120] },
  { ears: 21, kernelRows: [16, 14, 16], kernelsPerRow: [26, 31, 28] },
];
const corn = {
  ...sorghum,
  crop: { name: "corn", sowing: "May 10" },
  evidence: {
    counts: [
      { case: "over the pan", rowWidth: "30 in", spots: spotsOfCorn },
      { case: "pan loosened", rowWidth: "30 in", spots: spotsOfCorn.toReversed() },
    ],
  },
};

/** Of the scenario, what is looked at here. */
interface Kept {
  readonly evidence?: {
    readonly counts: readonly { readonly spots: readonly unknown[] }[];
    readonly strips: { readonly yields: readonly unknown[] };
  };
}

interface Told {
  readonly comparison: Comparison;
  readonly field: FieldSentences;
  readonly said: MeasuredYield;
}

/** What the command line works out and says of the same file. */
async function told(scenario: unknown, units: Units = "us"): Promise<Told> {
  const read = await resolveScenario(scenario, { fileName: "scenario", readText: () => "" });
  const comparison = comparisonOf(runEnsemble(read), units);
  return {
    comparison,
    field: fieldTypeset(fieldSentences(comparison, read, units)),
    said: measuredYield(read.yieldLine.unit, units),
  };
}

const undo = (page: Page) => page.getByRole("button", { name: /Undo/ }).click();
const paragraphs = (page: Page) => page.locator(".leaf p").allTextContents();

/** Waits for what was typed to be asked, then for its answer or its refusal. */
async function answered(page: Page): Promise<void> {
  await page.waitForTimeout(350);
  await settled(page);
}

/** The scenario as the page keeps it. */
async function kept(page: Page): Promise<Kept> {
  await page.waitForTimeout(500);
  return page.evaluate(() => {
    const key = `rootfront.work.${sessionStorage.getItem("rootfront.tab")}`;
    return (JSON.parse(localStorage.getItem(key) ?? "{}") as { scenario: never }).scenario;
  });
}

/** The cells of a picture's own table, by the picture's name. */
function tableOf(page: Page, name: RegExp): Promise<string[][]> {
  return page
    .getByRole("img", { name })
    .locator("xpath=ancestor::figure")
    .locator("tbody tr")
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
}

async function paste(page: Page, path: string, text: string): Promise<void> {
  await page.locator(`[data-path="${path}"] input`).focus();
  await page.evaluate((copied) => {
    const data = new DataTransfer();
    data.setData("text/plain", copied);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);
}

describe.each(["us", "metric"] as const)("in %s units", (units) => {
  test("counts, strips and water say and show what the engine works out", async () => {
    const { page, wrong, close } = await openLeaf(sunflower, "Counts", `?units=${units}`);
    const { comparison, field, said } = await told(sunflower, units);
    const { counts, strips, reconciliations } = comparison.evidence!;
    const shown = (await lastComparison(page)).evidence!;
    counts!.groups.forEach(({ spotsKgPerHa }, g) =>
      spotsKgPerHa.forEach((kgPerHa, s) => {
        const there = shown.counts!.groups[g]!.spotsKgPerHa[s]!;
        expect(Math.abs(there / kgPerHa - 1)).toBeLessThan(1e-9);
      }),
    );
    expect(await paragraphs(page)).toEqual(
      expect.arrayContaining([...field.counts, ...field.countsCautions]),
    );
    expect(await page.locator(".measured-verdict").textContent()).toBe(field.counts[0]);
    const drawn = await tableOf(page, /^Yield by counts/);
    expect(drawn).toEqual(
      counts!.groups.map(({ caseIndex, spotsKgPerHa, estimate, byWeight }) => [
        comparison.cases[caseIndex]!.name,
        String(spotsKgPerHa.length),
        spotsKgPerHa.map(said.size).join(", "),
        said.size(estimate.value!),
        `${said.size(estimate.interval!.low)} to ${said.size(estimate.interval!.high)}`,
        `${said.size(byWeight!.lowKgPerHa)} to ${said.size(byWeight!.highKgPerHa)}`,
      ]),
    );
    expect(await page.locator(".counted-spot").count()).toBe(6);
    const narrowed = field.yields!.countsNarrowing[0]!;
    expect(await page.locator(".narrowing tbody th").allTextContents()).toEqual(["3 (now)", "6", "12"]);
    expect(await page.locator(".narrowing tbody td").allTextContents()).toEqual(
      narrowed.map(({ reach }) => `± ${said.size(reach)}`),
    );

    await turnToLeaf(page, "Strips");
    expect(await page.locator(".measured-verdict").textContent()).toBe(field.strips[0]);
    expect(await paragraphs(page)).toEqual(expect.arrayContaining([...field.strips]));
    const { pairsKgPerHa, narrowing } = field.yields!.strips!;
    const pairs = await tableOf(page, /^Strips, pair by pair/);
    expect(pairs.map((row) => row.slice(0, 3))).toEqual([
      ...pairsKgPerHa.map((pair, p) => [
        String(p + 1),
        ...pair.map((kgPerHa) => (kgPerHa === null ? "missing" : said.size(kgPerHa))),
      ]),
      ["Mean", ...strips!.meansKgPerHa!.map(said.size)],
    ]);
    expect(pairs.at(-1)!.at(-1)).toBe(said.size(strips!.difference.value!));
    expect(await page.locator(".strip-pair").count()).toBe(3);
    expect(await page.locator(".strip.is-alone").count()).toBe(1);
    expect(await page.locator(".narrowing tbody td").allTextContents()).toEqual(
      narrowing!.map(({ reach }) => `± ${said.size(reach)}`),
    );

    await turnToLeaf(page, "Can it be water?");
    const verdicts = await page.locator(".measured-verdict").allTextContents();
    expect(verdicts).toHaveLength(2);
    reconciliations.forEach((_, i) => {
      expect(verdicts[i]).toContain(field.yields!.verdicts[i]);
    });
    expect(await paragraphs(page)).toEqual(expect.arrayContaining([...field.reconciliations]));
    const signed = (kgPerHa: number | null) =>
      kgPerHa === null
        ? "–"
        : (kgPerHa < 0 && Number(said.size(kgPerHa)) !== 0 ? "-" : "") + said.size(kgPerHa);
    expect((await tableOf(page, /^Measured, and explained by water/)).map((row) => row.slice(2))).toEqual(
      reconciliations.flatMap(({ measured, explained }) =>
        [measured, explained].map(({ middle, low, high }) => [middle, low, high].map(signed)),
      ),
    );
    expect(await page.locator(".at-nothing").count()).toBe(1);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("counts", () => {
  test("a spot is typed, pasted, removed and taken back; the answer follows the engine's", async () => {
    const { page, wrong, close } = await openLeaf(sorghum, "Counts");
    await typeAt(page, "evidence.counts[0].spots[0].kernelsPerHead", "900 800,  850");
    await typeAt(page, "evidence.counts[0].spots[0].heads", "27");
    await answered(page);
    const now = await kept(page);
    expect(now.evidence!.counts[0]!.spots[0]).toEqual({ heads: 27, kernelsPerHead: [900, 800, 850] });
    expect(await page.locator(".measured-verdict").textContent()).toBe((await told(now)).field.counts[0]);

    await paste(page, "evidence.counts[0].spots[4].heads", "30\t880, 940\n26\t1010\n25\t990 1000");
    await paste(page, "evidence.counts[1].spots[4].heads", "29\t1180\n31\t1100\n28\t1060");
    await answered(page);
    const pasted = await kept(page);
    expect(pasted.evidence!.counts[0]!.spots).toHaveLength(7);
    expect(pasted.evidence!.counts[0]!.spots[6]).toEqual({ heads: 25, kernelsPerHead: [990, 1000] });
    expect(await page.locator(".counted-spot").count()).toBe(14);
    expect(await page.locator(".measured-verdict").textContent()).toBe((await told(pasted)).field.counts[0]);
    await undo(page);
    await undo(page);
    await answered(page);
    expect(await page.locator(".counted-spot").count()).toBe(10);

    // Both tables lose a spot, as they are paired; alone, one is refused beside its table.
    const remove = (title: string) =>
      page.getByRole("button", { name: `Remove spot 5 of ${title}`, exact: true }).click();
    await remove("over the pan");
    await answered(page);
    expect(await page.locator(".leaf .field-problem").allTextContents()).toEqual([
      expect.stringContaining("one for each of evidence.counts[0]"),
    ]);
    await remove("pan loosened");
    await answered(page);
    expect(await page.locator(".counted-spot").count()).toBe(8);
    expect(await page.locator(".leaf .field-problem").count()).toBe(0);
    expect(wrong).toEqual([]);
    await close();
  });

  test("begin empty, and end empty; both undone", async () => {
    const { evidence: _, ...bare } = sorghum as Record<string, unknown>;
    const { page, wrong, close } = await openLeaf(bare, "Counts");
    await page.getByRole("button", { name: "Begin counting" }).click();
    await answered(page);
    expect(await page.locator(".tally-note").allTextContents()).toEqual([
      expect.stringContaining("Nothing counted here yet"),
      expect.stringContaining("Nothing counted here yet"),
    ]);
    for (const [c, heads, kernels] of [
      [0, "30", "900"],
      [1, "31", "1000"],
    ] as const) {
      await typeAt(page, `evidence.counts[${c}].spots[0].heads`, heads);
      await typeAt(page, `evidence.counts[${c}].spots[0].kernelsPerHead`, kernels);
    }
    await answered(page);
    expect(await page.locator(".measured-verdict").textContent()).toContain("nothing says how sure");
    expect(await page.locator(".stale-mark").count()).toBe(0);
    for (const title of ["over the pan", "pan loosened"])
      await page.getByRole("button", { name: `Remove these counts of ${title}` }).click();
    await answered(page);
    expect(await page.getByRole("button", { name: "Begin counting" }).count()).toBe(1);
    expect(await kept(page)).toEqual(bare);
    await undo(page);
    await answered(page);
    expect((await kept(page)).evidence!.counts).toHaveLength(1);
    expect(wrong).toEqual([]);
    await close();
  });

  test("a bad value is told beside its spot, and the last good answer stays, marked stale", async () => {
    const { page, wrong, close } = await openLeaf(sorghum, "Counts");
    const before = await page.locator(".measured-verdict").textContent();
    await typeAt(page, "evidence.counts[0].spots[2].kernelsPerHead", "900, many");
    await answered(page);
    const cell = page.locator('[data-path="evidence.counts[0].spots[2].kernelsPerHead"] input');
    expect(await cell.inputValue()).toBe("900, many");
    expect(await cell.getAttribute("aria-invalid")).toBe("true");
    const note = page.locator(`[id="${await cell.getAttribute("aria-describedby")}"]`);
    expect(await note.textContent()).toMatch(/Kernels, head by head: expected a whole number.*"many"/);
    expect(await page.locator(".stale-mark").count()).toBe(1);
    expect(await page.locator(".measured-verdict").textContent()).toBe(before);
    await undo(page);
    await answered(page);
    expect(await page.locator(".stale-mark").count()).toBe(0);
    expect(wrong).toEqual([]);
    await close();
  });

  test("the row to walk is told while its width is typed; rows, second ears and weights of corn", async () => {
    const { page, wrong, close } = await openLeaf(corn, "Counts");
    const walk = page.locator(".row-to-walk").first();
    expect(await walk.textContent()).toBe("Count 17 ft 5 in of row: a thousandth of an acre.");
    await typeAt(page, "evidence.counts[0].rowWidth", "36 in");
    expect(await walk.textContent()).toContain("14 ft 6 in");
    expect(await page.locator(".field-odd").first().textContent()).toBe(
      "15 is odd: kernel rows on an ear come in pairs, so count again.",
    );
    const weight = page.locator('[data-path="evidence.counts[0].kernelWeight"]');
    expect(await weight.locator(".field-default").textContent()).toContain(
      "usual of a thousand kernels of corn",
    );
    await typeAt(page, "evidence.counts[0].kernelWeight", "300 g");
    await answered(page);
    await typeAt(page, "evidence.counts[0].kernelsPerPound", "1500");
    await answered(page);
    const now = await kept(page);
    expect(now.evidence!.counts[0]).toMatchObject({ kernelsPerPound: 1500, rowWidth: "36 in" });
    expect(now.evidence!.counts[0]).not.toHaveProperty("kernelWeight");
    const { comparison, field } = await told(now);
    expect(await page.locator(".measured-verdict").textContent()).toBe(field.counts[0]);
    expect((await lastComparison(page)).evidence!.counts!.groups[0]!.estimate.value).toBeCloseTo(
      comparison.evidence!.counts!.groups[0]!.estimate.value!,
      6,
    );
    // Another way of counting puts the rows away, and brings them back.
    const way = page.getByRole("radio", { name: "Kernels of an ear" }).first();
    await way.check();
    expect(await page.locator('[data-path="evidence.counts[0].spots[0].kernelRows"]').count()).toBe(0);
    await page.getByRole("radio", { name: "Kernel rows, and kernels along a row" }).first().check();
    expect(
      await page.locator('[data-path="evidence.counts[0].spots[0].kernelRows"] input').inputValue(),
    ).toBe("14, 15, 16");
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("strips", () => {
  test("are entered, pasted, lost and removed; all of it undone", async () => {
    const { evidence: _, ...bare } = sorghum as Record<string, unknown>;
    const { page, wrong, close } = await openLeaf(bare, "Strips");
    await page.getByRole("button", { name: "Enter strips" }).click();
    await answered(page);
    expect(await page.locator(".measured-verdict").textContent()).toContain("nothing to compare");
    await paste(page, "evidence.strips.yields[0][0]", "60\t64\n55\t60.5\n58\t62.8\n61\t66\n59\t");
    await typeAt(page, "evidence.strips.detect", "5 bu/ac");
    await answered(page);
    const now = await kept(page);
    expect(now.evidence!.strips.yields).toEqual([
      ["60 bu/ac", "64 bu/ac"],
      ["55 bu/ac", "60.5 bu/ac"],
      ["58 bu/ac", "62.8 bu/ac"],
      ["61 bu/ac", "66 bu/ac"],
      ["59 bu/ac", null],
    ]);
    const { field } = await told(now);
    expect(await page.locator(".measured-verdict").textContent()).toBe(field.strips[0]);
    expect(field.strips[0]).toContain("Four pairs of strips tell the cases apart");
    expect(await page.locator(".strips-table .is-missing").count()).toBe(1);

    await turnToLeaf(page, "Can it be water?");
    expect(await page.locator(".measured-verdict").textContent()).toBe(field.yields!.verdicts[0]);
    await turnToLeaf(page, "Strips");

    const cell = page.locator('[data-path="evidence.strips.yields[1][1]"] input');
    await cell.fill("sixty");
    await answered(page);
    expect(await cell.getAttribute("aria-invalid")).toBe("true");
    expect(await page.locator(".tally-note .field-problem").textContent()).toMatch(
      /^pan loosened: expected a yield .*found "sixty"/,
    );
    expect(await page.locator(".stale-mark").count()).toBe(1);
    await cell.fill("");
    await answered(page);
    expect(await page.locator(".stale-mark").count()).toBe(0);
    expect(await paragraphs(page)).toEqual(
      expect.arrayContaining([expect.stringContaining("pair 2 (lacks the yield of “pan loosened”)")]),
    );
    await page.getByRole("button", { name: "Remove all strips" }).click();
    await answered(page);
    expect(await kept(page)).toEqual(bare);
    await undo(page);
    await answered(page);
    expect((await kept(page)).evidence!.strips.yields).toHaveLength(5);
    expect(wrong).toEqual([]);
    await close();
  });
});

test("without anything measured the water leaf says what to do", async () => {
  const { evidence: _, ...bare } = sorghum as Record<string, unknown>;
  const { page, close } = await openLeaf(bare, "Can it be water?");
  expect(await page.locator(".leaf").textContent()).toContain("enter strips or counts of two cases");
  await close();
});

test("a case renamed takes its counts along", async () => {
  const { page, close } = await openLeaf(sorghum, "Counts");
  await page.evaluate(() => (location.hash = "#/inputs"));
  await typeAt(page, "cases[1].name", "loosened");
  await answered(page);
  expect((await kept(page)).evidence!.counts[1]).toMatchObject({ case: "loosened" });
  expect(await page.locator(".problem-list").count()).toBe(0);
  await close();
});

test("for everyone: axe finds nothing serious, nothing is cut off", async () => {
  const { page, wrong, close } = await openLeaf(sunflower, "Counts");
  for (const look of [
    ["light", 1280],
    ["dark", 390],
  ] as const) {
    await lookAt(page, look);
    for (const leaf of ["Counts", "Strips", "Can it be water?"]) {
      await turnToLeaf(page, leaf);
      await unfold(page.locator(".leaf"));
      expect(await faultsSeen(page, look), `${leaf}, ${look.join()}`).toEqual([]);
    }
  }
  expect(wrong).toEqual([]);
  await close();
});
