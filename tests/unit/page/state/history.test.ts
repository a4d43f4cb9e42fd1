import { expect, test } from "vitest";
import { closed, edited, newHistory, redone, undone, type EditHow } from "../../../../web/state/history.ts";

const typed = (atMs: number, place = "name", how: EditHow = "typed") => ({ place, how, atMs });

test("typing goes back in one step, a pause begins another", () => {
  let history = newHistory("");
  for (const [atMs, text] of [
    [0, "1"],
    [200, "14"],
    [400, "14 in"],
    [9000, "15 in"],
  ] as const) {
    history = edited(history, text, "type", typed(atMs));
  }
  const once = undone(history)!;
  expect(once.present).toBe("14 in");
  const twice = undone(once)!;
  expect(twice.present).toBe("");
  expect(undone(twice)).toBeNull();
  expect(redone(redone(twice)!)!.present).toBe("15 in");
});

test("a slide is one step until it is let go, however long it takes", () => {
  let history = newHistory(0);
  for (let i = 1; i <= 5; i++) history = edited(history, i, "slide", typed(i * 10_000, "soil", "slid"));
  history = edited(closed(history), 9, "slide", typed(60_000, "soil", "slid"));
  expect(undone(history)!.present).toBe(5);
  expect(undone(undone(history)!)!.present).toBe(0);
});

test("choices never join, and other places do not", () => {
  let history = edited(newHistory("a"), "b", "choose", typed(0, "crop", "chosen"));
  history = edited(history, "c", "choose", typed(1, "crop", "chosen"));
  history = edited(history, "d", "type", typed(2, "name"));
  history = edited(history, "e", "type", typed(3, "site"));
  expect(history.past.map(({ value }) => value)).toEqual(["a", "b", "c", "d"]);
});

test("a new edit drops what was undone", () => {
  const history = undone(edited(newHistory(1), 2, "x", typed(0)))!;
  expect(redone(edited(history, 3, "y", typed(1)))).toBeNull();
});

test("the oldest steps go, so that the history stays bounded", () => {
  let history = newHistory(0);
  for (let i = 1; i <= 500; i++) history = edited(history, i, "x", typed(i, `place ${i}`, "chosen"));
  expect(history.past.length).toBe(200);
  expect(history.present).toBe(500);
});
