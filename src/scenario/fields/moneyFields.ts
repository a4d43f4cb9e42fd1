import * as z from "zod";
import { moneyWanted, tryMoney, type MoneyFor } from "../../quantity/index.ts";
import { choice, fault, faultAt, group, list, number, quantity, text, wholeNumber } from "./fields.ts";
import { withDefault } from "./facts/withDefault.ts";

/** Money in a scenario file: price, what a change costs and saves, the field. */

/** Money as written: a price for each bushel is read again once the crop is known. */
function priceAsWritten(per: MoneyFor, means: string) {
  return z
    .string({ error: () => fault(moneyWanted[per].expected, moneyWanted[per].mend) })
    .superRefine((found, context) => {
      const read = tryMoney(found, per, { kgPerBushel: 25 });
      if ("mend" in read) context.addIssue({ code: "custom", message: fault(read.expected, read.mend) });
    })
    .describe(means);
}

/** `12 USD/ac`, `25 EUR/ha`, or `4000 USD` with `per` beside it. */
function amountAsWritten(means: string) {
  return text(means).superRefine((found, context) => {
    const readings = [tryMoney(found, "land"), tryMoney(found, "whole")];
    const read = readings.find((one) => "currency" in one);
    const tooMuch = readings.find((one) => "isTooMuch" in one);
    const expected = 'an amount such as "12 USD/ac", "25 EUR/ha" or "4000 USD"';
    if (tooMuch !== undefined && "mend" in tooMuch)
      context.addIssue({ code: "custom", message: fault(tooMuch.expected, tooMuch.mend) });
    else if (read === undefined)
      context.addIssue({
        code: "custom",
        message: fault(expected, "write amount and currency, and per ac or ha"),
      });
    else if ("amount" in read && read.amount < 0)
      context.addIssue({
        code: "custom",
        message: fault(
          `${expected}, not below 0`,
          'leave out the minus; what is saved has the kind "reduced"',
        ),
      });
  });
}

/** Of a cost or a return, what holds while it is left out. */
export const itemDefaults = {
  interest: withDefault(
    quantity("share", {
      means: "Interest a year on what is bought once",
      within: { from: 0, to: 0.5, says: "0 to 50 %" },
    }),
    0,
    "no interest is given; with some, what is bought once costs more each year",
  ),
  kind: withDefault(choice(["added", "reduced"], "Whether the change adds it or saves it"), "added"),
};

const itemShape = (what: string) => ({
  name: text("What it is", 60),
  amount: amountAsWritten(
    `${what} each year, or once where \`years\` is given, such as "12 USD/ac" or "4000 USD"`,
  ),
  per: choice(
    ["row", "acre", "hectare", "field"],
    "What an amount without its own per ac or ha is for; a row is one of the implement's. Left out: field",
  ).optional(),
  years: number("Years it lasts, where it is bought once", {
    from: 0,
    to: 100,
    above: true,
    says: "more than 0 and at most 100",
  }).optional(),
  ...itemDefaults,
});

const item = (what: string, means: string) =>
  group(itemShape(what), means).superRefine(({ interest, years, per, amount }, context) => {
    if (interest !== undefined && years === undefined)
      context.addIssue(
        faultAt(
          ["years"],
          "nothing",
          "the years it lasts, as interest is given",
          "give them, or leave out interest",
        ),
      );
    if (per !== undefined && "currency" in tryMoney(amount, "land"))
      context.addIssue(
        faultAt(["per"], `"${per}"`, "one way to say what it is for", "leave it out: the amount says it"),
      );
  });

export const moneyFields = group(
  {
    price: priceAsWritten("mass", 'What the crop sells for, such as "5 USD/bu"'),
    priceRange: list(
      priceAsWritten("mass", "A price"),
      "Lowest and highest price you expect; draws lie between, most near `price`. Left out: the price is certain",
      {
        atLeast: 2,
        atMost: 2,
      },
    ).optional(),
    addedCost: priceAsWritten(
      "land",
      'What deeper rooting costs more each year, such as "12 USD/ac"',
    ).optional(),
    reducedCost: priceAsWritten("land", "What it saves each year").optional(),
    costs: list(item("What it costs", "A cost that the change adds or saves"), "Costs, one by one", {
      atMost: 30,
    }).optional(),
    returns: list(
      item("What it brings", "A return beside the yield that the change adds or takes away"),
      "Returns besides the yield",
      { atMost: 30 },
    ).optional(),
    implementRows: wholeNumber(
      "Rows of the implement, for costs per row. Left out: those of rowPositions",
      1,
      100,
    ).optional(),
    area: quantity("area", {
      means: "The field, or all land worked in a year",
      within: { from: 0.01, to: 100_000, says: "0.025 to 247,000 ac (0.01 to 100,000 ha)" },
    }).optional(),
  },
  "For a partial budget of each later case against the first",
);

export type MoneyPart = z.output<typeof moneyFields>;
