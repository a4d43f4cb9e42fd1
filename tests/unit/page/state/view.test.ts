import { beforeEach, describe, expect, test } from "vitest";
import {
  addressOf,
  chosenRun,
  playDay,
  readAddress,
  skipWords,
  theme,
  units,
  view,
  viewNames,
} from "../../../../web/state/view.ts";

beforeEach(() => readAddress("#/answer?units=us&theme=auto"));

describe("an address", () => {
  test("says what is looked at, and is read back", () => {
    readAddress("#/pit?units=metric&theme=dark&run=12&day=40");
    expect([view.value, units.value, theme.value, chosenRun.value, playDay.value]).toEqual([
      "pit",
      "metric",
      "dark",
      11,
      40,
    ]);
    expect(addressOf()).toBe("#/pit?units=metric&theme=dark&run=12&day=40");
  });
  test("without units or theme, or with none that are, leaves them to the one who looks", () => {
    readAddress("#/pit?units=metric&theme=dark");
    readAddress("#/teach");
    expect([view.value, units.value, theme.value]).toEqual(["teach", "metric", "dark"]);
    readAddress("#/teach?units=furlongs&theme=plaid");
    expect([units.value, theme.value]).toEqual(["metric", "dark"]);
  });
  test("without a run or a day means the usual ones", () => {
    readAddress("#/pit?run=12&day=40");
    readAddress("#/pit");
    expect([chosenRun.value, playDay.value]).toEqual([null, null]);
  });
  test("of no view is the answer's", () => {
    readAddress("#/nowhere");
    expect(view.value).toBe("answer");
  });
});

test("the skip link of every view is a sentence", () => {
  expect(Object.keys(skipWords)).toEqual([...viewNames]);
  for (const said of Object.values(skipWords)) expect(said).toMatch(/^Skip to (?!the in\b)[a-z ]+$/);
});
