import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import { runEnsemble } from "../../src/answer/runs/ensemble.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { moneyCaution, pairSentences, shownMoney } from "../../src/report/sentences/field/moneyText.ts";
import { rowsSentences } from "../../src/report/sentences/field/rowPositionsText.ts";
import { typeset } from "../../src/report/tables/typeset.ts";
import { percent, shownIn } from "../../src/report/tables/formatters.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import {
  faultsSeen,
  lastComparison,
  lookAt,
  openLeaf,
  panel,
  patience,
  settled,
  typeAt,
  unfold,
} from "./harness.ts";
import { demoAsWritten } from "../support/demos.ts";

const demo = demoAsWritten("sorghum-over-plough-pan");
const { evidence: _, money, ...plain } = demo;
const bare = { ...plain, ensemble: { years: 18, seed: 1 } };
const counted = { rows: 16, tyreRows: [6, 11], inTrack: "over the pan", other: "pan loosened" };
const costs = [
  { name: "loosening the pan", amount: "18 USD/ac", years: 4, interest: "7 %" },
  { name: "a ripper", amount: "4000 USD", years: 8, interest: "6 %" },
];
const full = { ...bare, rowPositions: counted, money: { ...(money as object), costs } };

/** What the command line's `compare` gives, and the words it tells it in. */
async function compared(scenario: unknown, units: Units = "us") {
  const read = await resolveScenario(scenario, { fileName: "scenario", readText: () => "" });
  return { comparison: comparisonOf(runEnsemble(read), units), unit: read.yieldLine.unit };
}

function tableIn(page: Page, title: string): Promise<string[][]> {
  return panel(page, title)
    .locator(".picture-table tbody tr")
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
}

const said = (page: Page) => page.locator(".field-said li").allTextContents();

/** The page has come to what compare says of this scenario, within 1e-9. */
async function comesTo(page: Page, scenario: unknown, part: "fieldAverage" | "money"): Promise<void> {
  const expected = (await compared(scenario)).comparison[part];
  await expect
    .poll(async () => {
      await settled(page);
      return differing((await lastComparison(page))[part], expected);
    }, patience)
    .toEqual([]);
}

/** Places at which two answers differ, numbers by more than 1e-9 of themselves. */
function differing(one: unknown, other: unknown, at = ""): string[] {
  if (typeof one === "number" && typeof other === "number")
    return Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(other)) ? [] : [`${at}: ${one}, ${other}`];
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null)
    return one === other ? [] : [`${at}: ${String(one)}, ${String(other)}`];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) =>
    differing((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key], `${at}.${key}`),
  );
}

describe.each(["us", "metric"] as const)("the numbers in %s units are those of compare", (units) => {
  test("rows", async () => {
    const { page, wrong, close } = await openLeaf(full, "Rows of the field", `?units=${units}`);
    const { comparison, unit } = await compared(full, units);
    const shown = shownIn(units);
    const field = comparison.fieldAverage!;
    expect(await said(page)).toEqual(rowsSentences(field, unit, shown).map(typeset));
    expect(await tableIn(page, "One pass, from above")).toEqual([
      ["wheel track", "over the pan", "2 rows, 13 %"],
      ["beside the track", "pan loosened", "4 rows, 25 %"],
      ["other", "pan loosened", "10 rows, 63 %"],
    ]);
    const say = shownMoney("USD", unit, shown);
    const rows = await tableIn(page, "The field, and a field of one kind of row");
    expect(rows).toHaveLength(3 * field.byRainTotal.length);
    for (const [t, at] of field.byRainTotal.entries()) {
      const [water, grain, worth] = rows.slice(3 * t, 3 * t + 3);
      expect(water![0]).toBe(shown.total(at.rainTotalMm!));
      expect([water![2], water![4], water![6]]).toEqual([
        shown.water(at.field.transpirationMm.p50),
        shown.water(at.allAsFirst.transpirationMm.p50),
        shown.fineWater(at.againstAllAsFirst.transpirationMm.p50),
      ]);
      expect(grain!.slice(2, 4)).toEqual([
        say.yield(at.field.yieldKgPerHa.p50),
        `${say.yield(at.field.yieldKgPerHa.p10)} to ${say.yield(at.field.yieldKgPerHa.p90)}`,
      ]);
      expect(Number(worth![2])).toBeGreaterThan(0);
    }
    expect(await page.locator(".row-steps tbody tr").count()).toBe(2);
    expect(wrong).toEqual([]);
    await close();
  });

  test("money, for each pair", async () => {
    const { page, wrong, close } = await openLeaf(full, "Money", `?units=${units}`);
    const { comparison, unit } = await compared(full, units);
    const shown = shownIn(units);
    const worth = comparison.money!;
    const say = shownMoney(worth.currency, unit, shown);
    expect(worth.pairs).toHaveLength(2);
    for (const [p, pair] of worth.pairs.entries()) {
      await page.getByRole("radio", { name: pair.to, exact: true }).check();
      expect(await said(page)).toEqual(pairSentences(worth, pair, unit, shown).map(typeset));
      const { addedReturns, reducedCosts, addedCosts, reducedReturns, net } = pair.budgetPerHa;
      const perLand = say.perLand(Object.values(pair.budgetPerHa));
      const parts = [addedReturns, reducedCosts, -addedCosts, -reducedReturns, net].map(perLand);
      const budget = await tableIn(page, "What it takes, what it brings, what is left");
      expect(budget.map(([, cell]) => cell).slice(0, 5)).toEqual(parts);
      expect(budget.at(-1)).toEqual(["Pays in", percent(pair.chanceItPays)]);
      const drawn = await panel(page, "What it takes, what it brings, what is left")
        .locator("svg text")
        .allTextContents();
      for (const part of parts.slice(0, 4)) expect(drawn).toContain(part);
      expect((await tableIn(page, "By price and by rain")).map((row) => row.slice(1))).toEqual(
        worth.byRainTotal.map(({ pairs }) => {
          const nets = say.perLand(
            worth.byRainTotal.flatMap((at) => at.pairs[p]!.byPrice.map(({ netPerHa }) => netPerHa.p50)),
          );
          return pairs[p]!.byPrice.map(
            ({ netPerHa, chanceItPays }) => `${nets(netPerHa.p50)} (${percent(chanceItPays)})`,
          );
        }),
      );
      const figures = await page.locator(".money-figures dd .big").allTextContents();
      expect(figures[0]).toBe(percent(pair.chanceItPays));
      expect(figures[1]).toBe(typeset(say.yield(pair.breakEven.extraYieldKgPerHa!)));
      expect(figures[2]).toBe(typeset(shown.fineWater(pair.breakEven.extraWaterMm!)));
      expect(figures[4]).toBe(pair.payBack!.haPerYear === null ? "–" : say.area(pair.payBack!.haPerYear));
    }
    expect(await page.locator(".leaf .caution").textContent()).toBe(moneyCaution);
    expect(await page.locator(".leaf").textContent()).toContain(
      "each with its own weather, yield line and price",
    );
    expect(await page.locator(".leaf").textContent()).toContain("where each season draws its own");
    expect(await page.locator("details.method summary").textContent()).toBe("Method and sources");
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("rows are entered", () => {
  test("by a button, a click, keys; taken out; and all of it is undone", async () => {
    const { page, wrong, close } = await openLeaf(bare, "Rows of the field");
    const undo = () => page.getByRole("button", { name: /^Undo/ }).click();
    const tyres = page.getByLabel("Tires on rows");
    await page.getByRole("button", { name: "Count the rows of one pass" }).click();
    await comesTo(page, { ...bare, rowPositions: counted }, "fieldAverage");

    const glass = page.getByRole("slider", { name: "Place for a tire" });
    const { width, height } = (await glass.boundingBox())!;
    // On the line between rows 8 and 9, which is the middle of sixteen.
    await glass.click({ position: { x: width / 2, y: height / 2 } });
    expect(await tyres.inputValue()).toBe("6, 8.5, 11");
    await comesTo(page, { ...bare, rowPositions: { ...counted, tyreRows: [6, 8.5, 11] } }, "fieldAverage");
    await undo();
    expect(await tyres.inputValue()).toBe("6, 11");

    await glass.focus();
    await page.keyboard.press("Home");
    for (let i = 0; i < 11; i++) await page.keyboard.press("ArrowRight");
    expect(await glass.getAttribute("aria-valuetext")).toBe("row 6, a tire");
    await page.keyboard.press("Enter");
    expect(await tyres.inputValue()).toBe("11");
    await page.keyboard.press("End");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press(" ");
    expect(await tyres.inputValue()).toBe("11, 16");
    await page.getByRole("button", { name: "Take the tire from row 16" }).click();
    await tyres.fill("");
    await typeAt(page, "rowPositions.rowsInTrack", "3");
    await settled(page);
    expect((await lastComparison(page)).fieldAverage!.positions.map(({ rows }) => rows)).toEqual([3, 0, 13]);

    await page.getByRole("radio", { name: "as shares of the field" }).check();
    await settled(page);
    expect((await lastComparison(page)).fieldAverage!.positions.map(({ share }) => share)).toEqual([
      3 / 16,
      13 / 16,
    ]);
    await page.getByRole("button", { name: "Take the rows out" }).click();
    await settled(page);
    expect((await lastComparison(page)).fieldAverage).toBeNull();
    expect(await page.getByRole("button", { name: "Count the rows of one pass" }).isVisible()).toBe(true);
    await undo();
    await settled(page);
    expect((await lastComparison(page)).fieldAverage!.positions).toHaveLength(2);
    expect(wrong).toEqual([]);
    await close();
  });

  test("what is wrong is said beside it, and the last good answer stays, marked stale", async () => {
    const { page, wrong, close } = await openLeaf({ ...bare, rowPositions: counted }, "Rows of the field");
    const before = await said(page);
    await page.getByLabel("Tires on rows").fill("6, 20");
    const field = page.locator('[data-path="rowPositions.tyreRows"]');
    await expect
      .poll(() => field.locator(".field-problem").allTextContents(), patience)
      .toEqual([
        "Expected a place from 0.5 to 16.5, as one pass has 16 rows, found 20; count rows from the left of one pass.",
      ]);
    expect(await page.locator(".stale-mark").count()).toBe(1);
    expect(await said(page)).toEqual(before);
    await page.getByLabel("Tires on rows").fill("6");
    await expect.poll(() => page.locator(".stale-mark").count(), patience).toBe(0);

    await page.getByRole("radio", { name: "as shares of the field" }).check();
    await typeAt(page, "rowPositions[0].share", "50 %");
    await expect
      .poll(() => page.locator(".leaf .field-problem").first().textContent(), patience)
      .toContain("shares that together make 100 %");
    expect(wrong).toEqual([]);
    await close();
  });
});

describe("money is entered", () => {
  test("a price, a cost, a block from a spreadsheet; removed with the last; and all of it is undone", async () => {
    const { page, wrong, close } = await openLeaf(bare, "Money");
    const undo = () => page.getByRole("button", { name: /^Undo/ }).click();
    await page.getByRole("button", { name: "Begin with a price" }).click();
    await comesTo(page, { ...bare, money: { price: "5 USD/bu" } }, "money");
    await typeAt(page, "money.priceRange[0]", "4 USD/bu");
    await typeAt(page, "money.priceRange[1]", "7 USD/bu");
    await typeAt(page, "money.area", "160 ac");
    await page.getByRole("button", { name: "Add a cost" }).click();
    const range = { price: "5 USD/bu", priceRange: ["4 USD/bu", "7 USD/bu"], area: "160 ac" };
    await comesTo(
      page,
      { ...bare, money: { ...range, costs: [{ name: "a cost", amount: "10 USD/ac" }] } },
      "money",
    );

    await page.locator('[data-path="money.costs[0].name"] input').evaluate((input) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData(
        "text/plain",
        "loosening the pan\t18 USD/ac\t\t\t4\t7\na ripper\t4000 USD\t\t\t8\t6\n",
      );
      input.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
    });
    await comesTo(page, { ...bare, money: { ...range, costs } }, "money");
    expect(await page.locator(".money-figures").textContent()).toContain("Paid back by, each year");

    await page.getByRole("button", { name: "Remove a ripper" }).click();
    await page.getByRole("button", { name: "Remove loosening the pan" }).click();
    await comesTo(page, { ...bare, money: range }, "money");
    await undo();
    await comesTo(page, { ...bare, money: { ...range, costs: costs.slice(0, 1) } }, "money");

    await page.getByRole("button", { name: "Take the money out" }).click();
    await settled(page);
    expect((await lastComparison(page)).money).toBeNull();
    await undo();
    await comesTo(page, { ...bare, money: { ...range, costs: costs.slice(0, 1) } }, "money");
    expect(wrong).toEqual([]);
    await close();
  });

  test("what is wrong is said beside it, and the last good answer stays, marked stale", async () => {
    const { page, wrong, close } = await openLeaf(full, "Money");
    const before = await said(page);
    await typeAt(page, "money.costs[0].amount", "18");
    await expect
      .poll(() => page.locator(".items .field-problem").textContent(), patience)
      .toMatch(/^Amount: expected an amount such as "12 USD\/ac"/);
    expect(await page.locator(".stale-mark").count()).toBe(1);
    expect(await said(page)).toEqual(before);
    await typeAt(page, "money.costs[0].amount", "18 USD/ac");
    await expect.poll(() => page.locator(".stale-mark").count(), patience).toBe(0);
    await typeAt(page, "money.priceRange[0]", "9 USD/bu");
    await expect
      .poll(
        () => page.locator('[data-path="money.priceRange[0]"] .field-problem').allTextContents(),
        patience,
      )
      .toHaveLength(1);
    expect(wrong).toEqual([]);
    await close();
  });
});

test.each(["Rows of the field", "Money"])(
  "for everyone: %s: axe finds nothing serious, nothing is cut off",
  async (leaf) => {
    const { page, wrong, close } = await openLeaf(full, leaf);
    for (const look of [
      ["light", 1280],
      ["dark", 390],
      ["light", 390],
    ] as const) {
      await lookAt(page, look);
      await unfold(page.locator(".leaf"));
      expect(await faultsSeen(page, look), look.join()).toEqual([]);
    }
    expect(wrong).toEqual([]);
    await close();
  },
);
