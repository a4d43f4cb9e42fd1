import { expect, test } from "vitest";
import { rangeMoreOrLess } from "../../../src/report/tables/rangeSaid.ts";

test.each([
  [0.1, 0.8, "0.10 to 0.80 in more"],
  [-3.61, -1.06, "1.06 to 3.61 in less"],
  [-0.2, 0.8, "0.20 in less to 0.80 in more"],
  [-0.001, 0.8, "0.00 to 0.80 in more"],
])("from %d to %d: each end says which way it goes", (p10, p90, said) => {
  expect(rangeMoreOrLess({ p10, p90 }, (value) => value.toFixed(2), "in")).toBe(said);
});
