import type * as z from "zod";
import { group, list, quantity, quantityAsWritten, text, wholeNumber } from "./fields.ts";
import { harvestYears } from "./facts/limits.ts";
import { withDefault } from "./facts/withDefault.ts";

/** Yields of strips in a scenario file. */

const chance = { from: 0.5, to: 0.99, says: "50 to 99 %" };

export const stripsFields = group(
  {
    cases: list(text("A case"), "The two cases, in the order of the yields", { atLeast: 2, atMost: 2 }),
    yields: list(
      list(
        quantityAsWritten(["yieldPerArea"], "Yield of one strip")
          .nullable()
          .describe("Yield of one strip, text with its unit; null where it is missing"),
        "One pair of neighboring strips",
        { atLeast: 2, atMost: 2 },
      ),
      "A pair of yields for each pair of strips",
    ),
    year: wholeNumber(
      "Calendar year of harvest; with a station record that holds it, that season stands beside the strips. Left out: all seasons do",
      ...harvestYears,
    ).optional(),
    detect: quantityAsWritten(
      ["yieldPerArea"],
      "Smallest difference to detect: how many pairs would tell it from nothing",
    ).optional(),
    chance: withDefault(
      quantity("share", { means: "Power: the chance of seeing that difference", within: chance }),
      0.8,
      "as trials are usually planned",
    ),
  },
  "Strips harvested side by side",
);

/** The key of `evidence` that tells of strips. */
export const stripsShape = { strips: stripsFields.optional() };

export type StripsPart = z.output<typeof stripsFields>;
