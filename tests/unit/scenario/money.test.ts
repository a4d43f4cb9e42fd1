import { describe, expect, test } from "vitest";
import { partsPerHa } from "../../../src/answer/money/yearlyItems.ts";
import { bushelsPerAcre, poundsPerAcre, type YieldUnit } from "../../../src/crop/yield/yieldLine.ts";
import { haPerAcre } from "../../../src/quantity/constants.ts";
import { moneyFields } from "../../../src/scenario/fields/moneyFields.ts";
import { resolveMoney } from "../../../src/scenario/resolve/resolveMoney.ts";
import { readPart } from "./partsRead.ts";

const sorghum = bushelsPerAcre(56);
const read = (raw: unknown, { unit = sorghum as YieldUnit | null, rows = null as number | null } = {}) =>
  readPart("money", moneyFields, raw, (part, notebook) => resolveMoney(part, unit, rows, notebook));

/** What is written, and every line a person then reads. */
const bad: readonly (readonly [string, unknown, ...string[]])[] = [
  [
    "no price",
    { addedCost: "12 USD/ac" },
    'money.price: expected a price such as "5 USD/bu" or "0.18 EUR/kg", found nothing; write amount, currency, and per bu, lb, kg or t',
  ],
  [
    "a price of nothing",
    { price: "0 USD/bu" },
    'money.price: expected a price above 0, found "0 USD/bu"; check the number',
  ],
  [
    "a price below 0",
    { price: "-5 USD/bu" },
    'money.price: expected a price above 0, found "-5 USD/bu"; check the number',
  ],
  [
    "one price in the range",
    { price: "5 USD/bu", priceRange: ["4 USD/bu"] },
    "money.priceRange: expected a list of 2 in brackets, found a list of 1; give 2 of them",
  ],
  [
    "a range upside down",
    { price: "5 USD/bu", priceRange: ["6 USD/bu", "4 USD/bu"] },
    'money.priceRange: expected the lower price first, found "6 USD/bu" to "4 USD/bu"; turn the two round',
  ],
  [
    "a range beside the price",
    { price: "7 USD/bu", priceRange: ["4 USD/bu", "6 USD/bu"] },
    'money.priceRange: expected prices on both sides of money.price, "7 USD/bu", found "4 USD/bu" to "6 USD/bu"; widen the range, or change the price',
  ],
  [
    "a range in another currency",
    { price: "5 USD/bu", priceRange: ["4 USD/bu", "6 EUR/bu"] },
    'money.priceRange[1]: expected an amount in USD, as the price is, found "6 EUR/bu"; use one currency',
  ],
  [
    "a cost in another currency",
    { price: "5 USD/bu", area: "100 ac", costs: [{ name: "tines", amount: "400 EUR" }] },
    'money.costs[0].amount: expected an amount in USD, as the price is, found "400 EUR"; use one currency',
  ],
  [
    "a cost below 0",
    { price: "5 USD/bu", costs: [{ name: "tines", amount: "-12 USD/ac" }] },
    'money.costs[0].amount: expected an amount such as "12 USD/ac", "25 EUR/ha" or "4000 USD", not below 0, found "-12 USD/ac"; leave out the minus; what is saved has the kind "reduced"',
  ],
  [
    "an added cost below 0",
    { price: "5 USD/bu", addedCost: "-2 USD/ac" },
    'money.addedCost: expected an amount not below 0, found "-2 USD/ac"; leave out the minus, or give it as reducedCost',
  ],
  [
    "a cost as a bare number",
    { price: "5 USD/bu", costs: [{ name: "tines", amount: 400 }] },
    "money.costs[0].amount: expected text of 1 to 120 letters, found 400; write it between quotes",
  ],
  [
    "a cost without a currency",
    { price: "5 USD/bu", costs: [{ name: "tines", amount: "four hundred" }] },
    'money.costs[0].amount: expected an amount such as "12 USD/ac", "25 EUR/ha" or "4000 USD", found "four hundred"; write amount and currency, and per ac or ha',
  ],
  [
    "one that lasts no years",
    { price: "5 USD/bu", area: "100 ac", costs: [{ name: "tines", amount: "400 USD", years: 0 }] },
    "money.costs[0].years: expected a number, more than 0 and at most 100, found 0; check the number",
  ],
  [
    "interest without years",
    { price: "5 USD/bu", area: "100 ac", costs: [{ name: "tines", amount: "400 USD", interest: "8 %" }] },
    "money.costs[0].years: expected the years it lasts, as interest is given, found nothing; give them, or leave out interest",
  ],
  [
    "interest as a bare 8",
    {
      price: "5 USD/bu",
      area: "100 ac",
      costs: [{ name: "tines", amount: "400 USD", years: 5, interest: 8 }],
    },
    'money.costs[0].interest: expected 0 to 50 %, found 8; write percent with its sign, such as "35 %"',
  ],
  [
    "a one-off without the area",
    { price: "5 USD/bu", costs: [{ name: "tines", amount: "400 USD", years: 5, interest: "8 %" }] },
    'money.area: expected the land that "tines" is spread over, such as "160 ac", found nothing; give the area, or write the amount per ac or ha',
  ],
  [
    "a cost per row without rows",
    { price: "5 USD/bu", area: "100 ac", costs: [{ name: "tines", amount: "400 USD", per: "row" }] },
    'money.implementRows: expected the rows of the implement, as "tines" is a cost per row, found nothing; give them here, or rows in rowPositions',
  ],
  [
    "said twice what it is for",
    { price: "5 USD/bu", costs: [{ name: "tines", amount: "4 USD/ac", per: "acre" }] },
    'money.costs[0].per: expected one way to say what it is for, found "acre"; leave it out: the amount says it',
  ],
  [
    "for a word that is none",
    { price: "5 USD/bu", costs: [{ name: "tines", amount: "4 USD", per: "akre" }] },
    'money.costs[0].per: expected one of "row", "acre", "hectare", "field", found "akre"; did you mean "acre"?',
  ],
  [
    "no field",
    { price: "5 USD/bu", area: 0 },
    "money.area: expected 0.025 to 247,000 ac (0.01 to 100,000 ha), found 0; check the number and its unit",
  ],
];

describe("money that is wrong", () => {
  test.each(bad)("%s", async (_name, raw, ...lines) => {
    const { value, lines: said } = await read(raw);
    expect(said).toEqual(lines);
    expect(value).toBeUndefined();
  });

  test("a bushel of a crop that has none", async () => {
    const { lines } = await read({ price: "5 USD/bu" }, { unit: poundsPerAcre });
    expect(lines).toEqual([
      'money.price: expected a price such as "0.25 USD/lb", found "5 USD/bu"; this crop is not counted in bushels: give the price for a lb or kg',
    ]);
  });
});

describe("money that is right", () => {
  test("the keys of before still do", async () => {
    const { value } = await read({
      price: "5 USD/bu",
      addedCost: "12 USD/ac",
      reducedCost: "2 USD/ac",
      area: "160 ac",
    });
    expect(value!.pricePerKg.middle).toBeCloseTo(5 / sorghum.kgPerUsUnit, 9);
    expect(value!.pricePerKg.low).toBe(value!.pricePerKg.high);
    expect(value!.areaHa).toBeCloseTo(160 * haPerAcre, 6);
    const parts = partsPerHa(value!);
    expect(parts.addedCosts).toBeCloseTo(12 / haPerAcre, 6);
    expect(parts.reducedCosts).toBeCloseTo(2 / haPerAcre, 6);
  });

  test("costs per row, per acre and bought once; returns", async () => {
    const { value, notebook } = await read(
      {
        price: "5 USD/bu",
        priceRange: ["4 USD/bu", "7 USD/bu"],
        area: "100 ac",
        costs: [
          { name: "tines", amount: "250 USD", per: "row", years: 5 },
          { name: "fuel", amount: "3 USD", per: "acre" },
          { name: "tillage", amount: "6 USD/ac", kind: "reduced" },
        ],
        returns: [{ name: "stubble", amount: "200 USD", kind: "reduced" }],
      },
      { rows: 16 },
    );
    expect(value!.pricePerKg.high).toBeCloseTo(7 / sorghum.kgPerUsUnit, 9);
    const parts = partsPerHa(value!);
    expect(parts.addedCosts * haPerAcre).toBeCloseTo((250 * 16) / 5 / 100 + 3, 6);
    expect(parts.reducedCosts * haPerAcre).toBeCloseTo(6, 6);
    expect(parts.reducedReturns * haPerAcre).toBeCloseTo(2, 6);
    expect(notebook.defaults.map(({ field }) => field)).toEqual(["money.costs[0].interest"]);
  });
});
