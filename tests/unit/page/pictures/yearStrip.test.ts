import { expect, test } from "vitest";
import { stripLayout, yearAt, type YearOfStrip } from "../../../../web/pictures/answer/yearStripLayout.ts";

const years = (count: number, label = (i: number) => String(1991 + i)): YearOfStrip[] =>
  Array.from({ length: count }, (_, i) => ({ label: label(i), more: i - 3, rain: 10 + i }));
const room = { width: 1000, sizePx: 13, byYear: true };

test("few years all have their names, many upright, very many only some by year and none by size", () => {
  const named = (count: number, byYear = true) => stripLayout(years(count), { ...room, byYear }).names;
  expect(named(12)).toMatchObject({ upright: false });
  expect(named(12).labels).toHaveLength(12);
  expect(named(60)).toMatchObject({ upright: true });
  expect(named(60).labels).toHaveLength(60);
  const some = named(200);
  expect(some.upright).toBe(false);
  expect(some.labels.length).toBeGreaterThan(4);
  expect(some.labels.length).toBeLessThan(25);
  expect(named(200, false).labels).toEqual([]);
});

test("both axes hold all values and nothing", () => {
  const { more, rain } = stripLayout(years(9), room);
  expect([more.from, more.to]).toEqual([-4, 6]);
  expect(rain.from).toBe(0);
  expect(rain.to).toBeGreaterThanOrEqual(18);
  expect(more.at(more.to)).toBeLessThan(more.at(more.from));
});

test.each([1, 7, 200])("a tap on any of %d bars takes that year, beside them the nearest", (count) => {
  const layout = stripLayout(years(count), { ...room, width: 366 });
  for (let i = 0; i < count; i++) expect(yearAt(layout, count, layout.xOf(i))).toBe(i);
  expect(yearAt(layout, count, 0)).toBe(0);
  expect(yearAt(layout, count, 2000)).toBe(count - 1);
});

test("nothing but one year of nothing has its places too", () => {
  const layout = stripLayout([{ label: "1", more: 0, rain: 0 }], room);
  for (const px of [layout.more.at(0), layout.rain.at(0), layout.xOf(0), layout.height])
    expect(px).toBeGreaterThan(0);
});
