import { expect, test } from "vitest";
import { demoAsWritten } from "../support/demos.ts";
import {
  faultsSeen,
  goTo,
  lastComparison,
  lookAt,
  openCard,
  openTab,
  panel,
  patience,
  settled,
  sharedHarness,
} from "./harness.ts";

const rotating = {
  ...demoAsWritten("sorghum-in-rotation"),
  weather: { pattern: "summer-peak", annualRain: "19 in" },
  ensemble: { years: 14, seed: 3 },
  chain: { warmUp: 2, length: 4 },
};

test("years in a row: the answer first, its path, the pit wall year by year, and another rotation chosen", async () => {
  const { page, wrong, close } = await openTab(await sharedHarness(), {
    route: "#/answer",
    scenario: rotating,
  });
  await settled(page);
  const { chain } = await lastComparison(page);
  expect(chain!.byCrop.map(({ crop }) => crop)).toEqual(["grain sorghum", "winter wheat"]);
  expect(await page.locator(".answer-sentence").textContent()).toMatch(
    /in the first year and in a year|in the first year and/,
  );
  expect(await page.locator(".banner").count()).toBe(0);
  const path = panel(page, "From the first year on");
  await path.getByText("Read as a table").click();
  const rows = await path.locator("tbody tr").count();
  expect(rows).toBe(chain!.byCrop[0]!.differences[0]!.path.length + 1);
  const both = panel(page, "First year, and year after year");
  expect(await both.locator("tbody tr").first().locator("th").textContent()).toBe("First year");
  expect(await panel(page, "When it is taken up").locator("tbody tr").nth(1).textContent()).toContain("%");
  await lookAt(page, ["light", 1280]);
  expect(await faultsSeen(page, ["light", 1280])).toEqual([]);
  await lookAt(page, ["dark", 390]);
  expect(await faultsSeen(page, ["dark", 390])).toEqual([]);

  await goTo(page, "pit");
  const wall = panel(page, "Years in a row");
  expect(await wall.locator("svg image").count()).toBeGreaterThanOrEqual(4);
  await wall.locator(".case-switch label").nth(2).click();
  expect(await wall.locator("figcaption").textContent()).toContain("roots stop at two feet");
  await lookAt(page, ["dark", 390]);
  expect(await faultsSeen(page, ["dark", 390])).toEqual([]);

  await goTo(page, "inputs");
  await openCard(page, "crop");
  await page.getByLabel("Crops year after year").selectOption("every year");
  await settled(page);
  await expect.poll(async () => (await lastComparison(page)).chain?.rotation, patience).toBe("every year");
  expect(wrong).toEqual([]);
  await close();
}, 120_000);
