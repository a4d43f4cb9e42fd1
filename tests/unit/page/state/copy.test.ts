import { afterEach, expect, test } from "vitest";
import {
  attach,
  begin,
  beginCopy,
  edit,
  isOnCopy,
  keepCopy,
  leaveCopy,
  ownWork,
  redo,
  redoSays,
  openWork,
  undo,
  undoSays,
  valueAt,
  work,
} from "../../../../web/state/scenarioStore.ts";

const start = () => begin({ scenario: { rain: "13 in", crop: "corn" }, attachments: {} });
afterEach(() => begin({ scenario: {}, attachments: {} }));
const ownRain = () => (ownWork.value.scenario as Record<string, string>)["rain"];

test("a copy is changed, undone and left, and the user's own is as it was", () => {
  start();
  edit("crop", "sorghum");
  beginCopy();
  expect(isOnCopy.value).toBe(false);
  edit("rain", "16 in", "slid");
  edit("rain", "17 in", "slid");
  expect([valueAt("rain"), ownRain(), isOnCopy.value]).toEqual(["17 in", "13 in", true]);
  undo();
  expect([valueAt("rain"), isOnCopy.value]).toEqual(["13 in", false]);
  // What was done before the copy is not the copy's to undo.
  expect(undoSays.value).toBeNull();
  redo();
  expect(valueAt("rain")).toBe("17 in");
  leaveCopy();
  expect([valueAt("rain"), valueAt("crop"), redoSays.value]).toEqual(["13 in", "sorghum", null]);
  undo();
  expect(valueAt("crop")).toBe("corn");
});

test("a copy that is kept is one step of undo of the user's own", () => {
  start();
  beginCopy();
  edit("rain", "16 in");
  edit("crop", "sunflower");
  keepCopy("keep it");
  expect([work.value, undoSays.value]).toEqual([ownWork.value, "keep it"]);
  expect(ownRain()).toBe("16 in");
  undo();
  expect([valueAt("rain"), valueAt("crop")]).toEqual(["13 in", "corn"]);
});

test("another scenario, or a file beside it, is the user's own and ends the copy", () => {
  start();
  beginCopy();
  edit("rain", "16 in");
  attach("record.csv", "…", [["record", "record.csv"]]);
  expect([ownRain(), valueAt("record"), isOnCopy.value]).toEqual(["13 in", "record.csv", false]);
  beginCopy();
  edit("rain", "16 in");
  openWork({ scenario: { rain: "20 in" }, attachments: {} }, "open another");
  expect([ownRain(), isOnCopy.value]).toEqual(["20 in", false]);
});
