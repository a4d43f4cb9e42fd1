/**
 * The scoreboard of `npm run truth`, held: a row inside its range stays inside, a row outside says why, and no reason outlives its
 * row's return. Rows: data-reference/scoreboard/, what the runs take for given: truth/.
 */
import { describe, expect, test } from "vitest";
import { digitsOf, type Row } from "../../truth/row.ts";
import { judgeTopic, openDataFolder, topics } from "../../truth/topics.ts";

const openData = openDataFolder();
const orSkipped = openData === null ? " (rows that need ../shared/data are skipped: it is absent)" : "";

describe.each(topics)("$file.title" + orSkipped, async (topic) => {
  const { judged } = await judgeTopic(topic, openData);

  test("every row has ours, but those that need the absent folder", () => {
    const without = judged.filter(({ ours }) => ours === null).map(({ row }) => row.id);
    expect(without).toEqual(
      openData === null ? topic.file.rows.filter(({ needs }) => needs).map(({ id }) => id) : [],
    );
    expect(judged.length).toBeGreaterThan(0);
  });

  test.each(judged.filter(({ ours }) => ours !== null))("$row.id: $row.what", ({ row, ours, inside }) => {
    const shown = `${ours!.toFixed(digitsOf(row))} ${row.unit}, range ${JSON.stringify(row.range)}`;
    if (inside) expect(row.outside, `inside (${shown}) and still called outside`).toBeUndefined();
    else expect(row.outside, `outside (${shown}) and no reason stands in the row`).toMatch(/\w{3}/);
  });
});

describe("rows", () => {
  const rows = topics.flatMap(({ file }) => file.rows);
  test("each has an id of its own, a range that can be missed, a source and a mark", () => {
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
    for (const row of rows) {
      expect(lacking(row), row.id).toEqual([]);
      const [low, high] = row.range;
      expect(low === null && high === null, row.id).toBe(false);
      if (low !== null && high !== null) expect(low, row.id).toBeLessThan(high);
    }
  });
});

const agreed = [
  "what",
  "where",
  "figure",
  "unit",
  "range",
  "why",
  "source",
  "locator",
  "provenance",
] as const;
const marks = ["read", "memory", "open data", "asked for"];

function lacking(row: Row): string[] {
  const empty = agreed.filter((key) => row[key] === undefined || row[key] === "");
  return marks.includes(row.provenance) ? empty : [...empty, `provenance "${row.provenance}"`];
}
