import { expect, test } from "vitest";
import { typeset } from "../../../src/report/tables/typeset.ts";

test.each([
  ['"deeper" against "as it is" (-0.20 to 0.31)', "“deeper” against “as it is” (−0.20 to 0.31)"],
  ["-3.6 in", "−3.6 in"],
  ["dug on 2024-07-18, 10-12 plants", "dug on 2024-07-18, 10-12 plants"],
  ['a 12" auger', 'a 12" auger'],
])("%s", (text, set) => {
  expect(typeset(text)).toBe(set);
});
