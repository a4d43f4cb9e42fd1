import { expect, test } from "vitest";
import {
  growInYear,
  rotationWay,
  toRotation,
  withOwnSowing,
  yearsWritten,
} from "../../../../web/forms/edits/rotationEdits.ts";
import type { Json } from "../../../../web/state/json.ts";
import { changed, getAt } from "../../../../web/state/path.ts";

const single: Json = {
  crop: { name: "corn" },
  fallow: { length: "11 months" },
  cases: [{ name: "a" }, { name: "b", fallow: { length: "1 month" } }],
};

test("a rotation takes away what was said of the fallow's length, in every case; back again takes the rotation away", () => {
  const rotating = changed(single, toRotation(single, "wheat-corn-fallow"));
  expect(rotationWay(rotating)).toBe("wheat-corn-fallow");
  expect(getAt(rotating, "fallow")).toBeUndefined();
  expect(getAt(rotating, "cases[1].fallow")).toBeUndefined();
  const chained = changed(rotating, [["chain.length", 5]]);
  const back = changed(chained, toRotation(chained, "none"));
  expect(rotationWay(back)).toBe("none");
  expect(getAt(back, "chain")).toBeUndefined();
});

test("a list begins with the crop in question and fallow; a year takes another crop, or a sowing day of its own", () => {
  const listed = changed(single, toRotation(single, "list"));
  expect(getAt(listed, "rotation")).toEqual(["corn", "fallow"]);
  const longer = changed(listed, growInYear(2, "winter wheat"));
  const sown = changed(longer, withOwnSowing(longer, 2));
  expect(yearsWritten(sown)).toEqual([
    { name: "corn", hasOwn: false },
    { name: "fallow", hasOwn: false },
    { name: "winter wheat", hasOwn: true },
  ]);
  expect(getAt(changed(sown, growInYear(2, "sunflower")), "rotation[2]")).toBe("sunflower");
});
