import { beforeEach, describe, expect, test } from "vitest";
import {
  addressOf,
  chosenRun,
  openCard,
  openLeaf,
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

describe("the leaf and the card", () => {
  test("stand in the address of their own view only", () => {
    readAddress("#/field?leaf=strips");
    expect([openLeaf.value, addressOf()]).toEqual(["strips", "#/field?leaf=strips"]);
    readAddress("#/inputs?card=soil");
    expect([openCard.value, addressOf(), addressOf("answer")]).toEqual([
      "soil",
      "#/inputs?card=soil",
      "#/answer",
    ]);
    expect(addressOf("field")).toBe("#/field?leaf=strips");
    expect(addressOf("field", { leaf: "money" })).toBe("#/field?leaf=money");
    readAddress("#/answer");
    expect([openLeaf.value, openCard.value]).toEqual(["strips", "soil"]);
  });
  test("an address of the inputs without a card has all closed; a leaf nobody knows is left", () => {
    readAddress("#/inputs?card=soil");
    readAddress("#/inputs");
    expect(openCard.value).toBeNull();
    readAddress("#/field?leaf=rows");
    readAddress("#/field?leaf=nowhere");
    expect(openLeaf.value).toBe("rows");
    readAddress("#/field?leaf=dig");
  });
});
