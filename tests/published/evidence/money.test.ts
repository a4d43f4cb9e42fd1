import checks from "../../../data-reference/money-checks.json" with { type: "json" };
import { moneyOfExtraYield } from "../../../src/answer/money/money.ts";
import type { BudgetParts, MoneyItem, MoneyPlan } from "../../../src/scenario/moneyPlan.ts";
import {
  annualRecovery,
  breakEvenAreaHa,
  breakEvenPricePerKg,
  breakEvenYieldKgPerHa,
  netChange,
  noChange,
  withExtraYield,
} from "../../../src/answer/money/partialBudget.ts";
import {
  bushelsPerAcre,
  kgPerHaOfUs,
  slopeOfUsPerInch,
  usOfKgPerHa,
} from "../../../src/crop/yield/yieldLine.ts";
import { haPerAcre, mmPerInch } from "../../../src/quantity/constants.ts";
import { published } from "../published.ts";
import { closenessOf, markOf, recordsOf, sourceOf, type ReferenceRecord } from "../weather/records.ts";

const bushel = bushelsPerAcre(60);
const perKg = (price: number) => price / bushel.kgPerUsUnit;
const costing = (perAcre: number): BudgetParts => ({ ...noChange, addedCosts: perAcre / haPerAcre });
const titled = (record: ReferenceRecord<unknown, unknown>) => `${sourceOf(record)}: ${record.what}`;
const of = recordsOf(checks);

/** The money of one run with that extra yield. */
function oneRun(
  bushels: number,
  price: number,
  items: readonly MoneyItem[],
  areaAcres: number | null = null,
) {
  const pricePerKg = { low: perKg(price), middle: perKg(price), high: perKg(price) };
  const areaHa = areaAcres === null ? null : areaAcres * haPerAcre;
  const plan: MoneyPlan = { currency: "USD", pricePerKg, areaHa, items };
  return moneyOfExtraYield(
    Float64Array.of(kgPerHaOfUs(bushels, bushel)),
    plan,
    Float64Array.of(pricePerKg.middle),
    slopeOfUsPerInch(5.5, bushel),
  );
}

const form = of.take<BudgetParts, { net: number }>("budget-form");
published(titled(form), closenessOf(form), [["net", form.expected.net]], () => netChange(form.inputs));

type Beans = Record<
  "acres" | "cornBushels" | "cornPrice" | "beanCost" | "beanHundredweight" | "beanPrice" | "cornCost",
  number
>;
const beans = of.take<Beans, { plus: number; minus: number; net: number }>("budget-corn-for-beans");
{
  const { acres, cornBushels, cornPrice, beanCost, beanHundredweight, beanPrice, cornCost } = beans.inputs;
  const parts: BudgetParts = {
    addedReturns: acres * cornBushels * cornPrice,
    reducedCosts: acres * beanCost,
    addedCosts: acres * cornCost,
    reducedReturns: acres * beanHundredweight * beanPrice,
  };
  published(
    titled(beans),
    closenessOf(beans),
    [
      ["plus", beans.expected.plus],
      ["minus", beans.expected.minus],
      ["net", beans.expected.net],
    ],
    (which: "plus" | "minus" | "net") =>
      ({
        plus: parts.addedReturns + parts.reducedCosts,
        minus: parts.addedCosts + parts.reducedReturns,
        net: netChange(parts),
      })[which],
  );
  const item = (part: keyof BudgetParts, amount: number): MoneyItem => ({
    name: part,
    part,
    amount: amount / acres / haPerAcre,
    per: "hectare",
    once: null,
  });
  published(
    `${titled(beans)}, as the money of a run for the field`,
    closenessOf(beans),
    [[acres, beans.expected.net]],
    () =>
      oneRun(
        cornBushels,
        cornPrice,
        [
          item("reducedCosts", parts.reducedCosts),
          item("addedCosts", parts.addedCosts),
          item("reducedReturns", parts.reducedReturns),
        ],
        acres,
      ).netForField!.p50,
  );
}

const evenCost = of.take<{ costPerAcre: number; price: number }, { bushels: number }>("break-even-cost");
published(
  titled(evenCost),
  closenessOf(evenCost),
  [[evenCost.inputs.costPerAcre, evenCost.inputs.price, evenCost.expected.bushels]],
  (cost: number, price: number) => usOfKgPerHa(breakEvenYieldKgPerHa(costing(cost), perKg(price))!, bushel),
);
published(
  `${titled(evenCost)}, turned round to the price`,
  { ...closenessOf(evenCost), unit: "USD/bu" },
  [[evenCost.inputs.costPerAcre, evenCost.expected.bushels, evenCost.inputs.price]],
  (cost: number, bushels: number) =>
    breakEvenPricePerKg(costing(cost), kgPerHaOfUs(bushels, bushel))! * bushel.kgPerUsUnit,
);

const practice = of.take<
  { addedCostPerAcre: number; price: number; bushelsPerInch: number },
  { bushels: number; inches: number }
>("break-even-practice");
published(
  titled(practice),
  closenessOf(practice),
  [
    ["bushels", practice.expected.bushels],
    ["inches", practice.expected.inches],
  ],
  (which: "bushels" | "inches") => {
    const { addedCostPerAcre, price } = practice.inputs;
    const amount = addedCostPerAcre / haPerAcre;
    const { breakEven } = oneRun(0, price, [
      { name: "pass", part: "addedCosts", amount, per: "hectare", once: null },
    ]);
    return which === "bushels"
      ? usOfKgPerHa(breakEven.extraYieldKgPerHa!, bushel)
      : breakEven.extraWaterMm! / mmPerInch;
  },
);

const use = of.take<{ ownership: number; operating: number; acres: number[] }, { total: number[] }>(
  "cost-by-use",
);
published(
  titled(use),
  closenessOf(use),
  use.inputs.acres.map((acres, a) => [acres, use.expected.total[a]!]),
  (acres: number) =>
    -oneRun(
      0,
      5,
      [
        { name: "own", part: "addedCosts", amount: use.inputs.ownership, per: "field", once: null },
        {
          name: "run",
          part: "addedCosts",
          amount: use.inputs.operating / haPerAcre,
          per: "hectare",
          once: null,
        },
      ],
      acres,
    ).netForField!.p50,
);

const evenUse = of.take<{ ownership: number; customRate: number; operating: number }, { acres: number }>(
  "break-even-use",
);
published(
  titled(evenUse),
  closenessOf(evenUse),
  [[evenUse.inputs.ownership, evenUse.inputs.customRate, evenUse.inputs.operating, evenUse.expected.acres]],
  (ownership: number, custom: number, operating: number) =>
    breakEvenAreaHa(ownership, (custom - operating) / haPerAcre)! / haPerAcre,
);

const payBack = of.take<
  { price: number; gainPerAcre: number; years: number },
  { acresPerYear: number; acresOverLife: number }
>("pay-back-acres");
published(
  titled(payBack),
  closenessOf(payBack),
  [
    ["haPerYear", payBack.expected.acresPerYear],
    ["haOverLife", payBack.expected.acresOverLife],
  ],
  (which: "haPerYear" | "haOverLife") => {
    const { price, gainPerAcre, years } = payBack.inputs;
    const tool: MoneyItem = {
      name: "tool",
      part: "addedCosts",
      amount: price,
      per: "field",
      once: { years, interest: 0 },
    };
    return oneRun(gainPerAcre / 5, 5, [tool], 100).payBack![which]! / haPerAcre;
  },
);

for (const [id, bushels] of [
  ["worth-of-an-inch", "bushelsPerInch"],
  ["trade-eleven-bushels", "bushels"],
] as const) {
  const record = of.take<Record<string, number>, { perAcre: number }>(id);
  published(
    titled(record),
    closenessOf(record),
    [[record.inputs[bushels]!, record.inputs["price"]!, record.expected.perAcre]],
    (more: number, price: number) =>
      netChange(withExtraYield(noChange, kgPerHaOfUs(more, bushel), perKg(price))) * haPerAcre,
  );
}

const recovery = of.take<{ interest: number; years: number[] }, { factor: number[] }>("capital-recovery");
published(
  titled(recovery),
  { ...closenessOf(recovery), mark: markOf(recovery) },
  recovery.inputs.years.map((years, y) => [years, recovery.expected.factor[y]!]),
  (years: number) => annualRecovery(1, years, recovery.inputs.interest),
);
of.noneLeft();
