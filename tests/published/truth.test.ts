/**
 * The scoreboard of `npm run truth`, held: a row inside its range stays inside, a row outside says why, and no reason outlives its
 * row's return. Rows: data-reference/scoreboard/; what the runs take for given: truth/.
 */
import { describe, expect, test } from "vitest";
import { digitsOf, isInside, judge, type Judged, type Row } from "../../truth/row.ts";
import { tableOf } from "../../truth/table.ts";
import { judgeTopic, openDataFolder, topics } from "../../truth/topics.ts";

const openData = openDataFolder();
const orSkipped = openData === null ? " (rows that need ../shared/data are skipped: it is absent)" : "";

/** What is wrong with a row's verdict; nothing where it is inside without a reason or outside with one. */
function faultOf({ row, ours, inside }: Judged): string {
  const hasReason = /\w{3}/.test(row.outside ?? "");
  const shown = `${ours?.toFixed(digitsOf(row))} ${row.unit}, range ${JSON.stringify(row.range)}`;
  if (inside && row.outside !== undefined) return `inside (${shown}) and still called outside`;
  if (!inside && !hasReason) return `outside (${shown}) and no reason stands in the row`;
  return "";
}

describe.each(topics)(`$file.title${orSkipped}`, async (topic) => {
  const judgedTopic = await judgeTopic(topic, openData);
  const { judged } = judgedTopic;

  test("every row has ours, but those that need the absent folder", () => {
    const without = judged.filter(({ ours }) => ours === null).map(({ row }) => row.id);
    const excused = openData === null ? topic.file.rows.filter(({ needs }) => needs) : [];
    expect(without).toEqual(excused.map(({ id }) => id));
    expect(judged.length).toBeGreaterThan(0);
  });

  const tried = judged.filter(({ ours }) => ours !== null);
  test.each(tried.map((one) => [one.row.id, one.row.outside ?? "inside", one] as const))(
    "%s: %s",
    (_id, _reason, one) => expect(faultOf(one)).toBe(""),
  );

  test("fits 80 columns", () => {
    const lines = tableOf([judgedTopic]).split("\n");
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });
});

describe("rows", () => {
  const rows = topics.flatMap(({ file }) => file.rows);

  test("each has an id of its own, a range that can be missed, a source and a mark", () => {
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
    for (const row of rows) expect(lacking(row), row.id).toEqual([]);
  });

  test("there are more than ten fallow cases, from several places, over generated years and a record", () => {
    const fallow = topics.filter(({ isFallow }) => isFallow).flatMap(({ file }) => file.rows);
    expect(new Set(fallow.map(({ source }) => source)).size).toBeGreaterThanOrEqual(7);
    expect(fallow.filter(({ id }) => id.endsWith("-record")).length).toBeGreaterThanOrEqual(10);
    expect(fallow.length).toBeGreaterThan(30);
  });
});

describe("a verdict", () => {
  const row = { ...topics[0]!.file.rows[0]!, unit: "mm", range: [10, 20] } as Row;
  test.each([
    [9.4, false],
    [9.6, true],
    [20.4, true],
    [20.6, false],
    [NaN, false],
    [Infinity, false],
  ])("%d mm of 10 to 20, judged as it is printed", (ours, inside) =>
    expect(isInside(row, ours)).toBe(inside),
  );

  test("a row without ours is not inside", () => expect(judge(row, {}).inside).toBe(false));
  test("faults: a reason that outlived its row, and a missing one", () => {
    expect(faultOf({ row: { ...row, outside: "some reason" }, ours: 15, inside: true })).toMatch(
      /still called/,
    );
    const { outside: _, ...bare } = row;
    expect(faultOf({ row: bare, ours: 5, inside: false })).toMatch(/no reason/);
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
  const [low, high] = row.range;
  const canBeMissed = low === null ? high !== null : high === null || low < high;
  return [
    ...agreed.filter((key) => row[key] === undefined || row[key] === ""),
    ...(marks.includes(row.provenance) ? [] : [`a mark in place of "${row.provenance}"`]),
    ...(canBeMissed ? [] : ["a range"]),
  ];
}
