import { date, faultAt, group, list, quantity, quantityAsWritten, text } from "./fields.ts";
import { priceAsWritten } from "./priceField.ts";

/** Money, evidence and row positions: checked now, used by commands still to come. */

const share = { from: 0, to: 1, says: "0 to 100 %" };
const depth = { from: 0, to: 6000, says: "0 to 20 ft (6000 mm)" };

export const moneyFields = group(
  {
    price: priceAsWritten("mass", 'What the crop sells for, such as "5 USD/bu"'),
    addedCost: priceAsWritten("land", 'What deeper rooting costs more, such as "12 USD/ac"').optional(),
    reducedCost: priceAsWritten("land", "What it saves").optional(),
    area: quantity("area", {
      means: "The field",
      within: { from: 0, to: 100_000, above: true, says: "more than 0 and at most 247,000 ac" },
    }).optional(),
  },
  "For a partial budget",
);

const rootDepthsFields = group(
  {
    case: text("The case these plants stood in"),
    date: date("Day they were dug, such as 2021-07-14"),
    depths: list(
      quantity("depth", { means: "Deepest root of one plant", within: depth }),
      "One depth a plant",
    ),
  },
  "Plants dug in one case",
);

const stripsFields = group(
  {
    cases: list(text("A case"), "The two cases, in the order of the yields", { atLeast: 2, atMost: 2 }),
    yields: list(
      list(quantityAsWritten(["yieldPerArea"], "Yield of one strip"), "One pair of neighbouring strips", {
        atLeast: 2,
        atMost: 2,
      }),
      "A pair of yields for each pair of strips",
    ),
  },
  "Strips harvested side by side",
);

export const evidenceFields = group(
  {
    rootDepths: list(rootDepthsFields, "Dug plants, case by case").optional(),
    strips: stripsFields.optional(),
  },
  "What was measured in the field",
);

export const rowPositionsFields = list(
  group(
    {
      name: text('Where the row is, such as "wheel track"').optional(),
      case: text("The case that these rows are"),
      share: quantity("share", { means: "Their share of all rows", within: share }),
    },
    "Rows of one position",
  ),
  "Positions of rows; shares make 100 %",
).superRefine((rows, context) => {
  const sum = rows.reduce((total, row) => total + row.share, 0);
  if (Math.abs(sum - 1) <= 0.005) return;
  context.addIssue(
    faultAt(
      [],
      `${Math.round(sum * 1000) / 10} %`,
      "shares that together make 100 %",
      "change the shares until they do",
    ),
  );
});
