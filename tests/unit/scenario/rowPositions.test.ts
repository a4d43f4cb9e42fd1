import { describe, expect, test } from "vitest";
import { rowPositionsFields } from "../../../src/scenario/fields/rowPositionsFields.ts";
import { resolveRowPositions } from "../../../src/scenario/resolve/resolveRowPositions.ts";
import { readPart } from "./partsRead.ts";

const read = (raw: unknown) =>
  readPart("rowPositions", rowPositionsFields, raw, (part, notebook) =>
    resolveRowPositions(part, ["as it is", "deeper"], notebook),
  );
const cases = { inTrack: "as it is", other: "deeper" };

const bad: readonly (readonly [string, unknown, ...string[]])[] = [
  [
    "shares of 90 %",
    [
      { case: "as it is", share: "30 %" },
      { case: "deeper", share: "60 %" },
    ],
    "rowPositions: expected shares that together make 100 %, found 90 %; change the shares until they do",
  ],
  [
    "a share below 0",
    [{ case: "as it is", share: "-30 %" }],
    'rowPositions[0].share: expected 0 to 100 %, found "-30 %"; check the number and its unit',
  ],
  [
    "a case that is not there",
    [{ case: "as is", share: "100 %" }],
    'rowPositions[0].case: expected the name of a case: "as it is", "deeper", found "as is"; did you mean "as it is"?',
  ],
  [
    "a misspelt key",
    { rows: 16, tireRows: [6, 11], rowsInTrack: 2, ...cases },
    'rowPositions.tireRows: expected a key that belongs here, found "tireRows"; did you mean "tyreRows"?',
  ],
  [
    "a text",
    "16 rows",
    'rowPositions: expected a group of keys in braces, such as { "rows": ... }, found "16 rows"; write it between { and }',
  ],
  [
    "no rows at all",
    { rows: 0, tyreRows: [1], ...cases },
    "rowPositions.rows: expected a whole number from 1 to 100, found 0; check the number",
  ],
  [
    "neither rows nor width",
    { tyreRows: [6, 11], ...cases },
    "rowPositions.rows: expected rows, or implementWidth and rowSpacing together, found nothing; give the rows of one pass",
  ],
  [
    "a width without spacing",
    { implementWidth: "40 ft", tyreRows: [6, 11], ...cases },
    "rowPositions.rowSpacing: expected rows, or implementWidth and rowSpacing together, found nothing; give the rows of one pass",
  ],
  [
    "both ways",
    { rows: 16, rowSpacing: "30 in", tyreRows: [6, 11], ...cases },
    "rowPositions.rows: expected rows, or implementWidth and rowSpacing, found both; leave one out",
  ],
  [
    "a width of half rows",
    { implementWidth: "41.3 ft", rowSpacing: "30 in", tyreRows: [6, 11], ...cases },
    "rowPositions.implementWidth: expected a width of 1 to 100 whole rows, found 16.5 rows; check width and spacing, or give rows",
  ],
  [
    "a tyre beyond the implement",
    { rows: 8, tyreRows: [3, 11], ...cases },
    "rowPositions.tyreRows[1]: expected a place from 0.5 to 8.5, as one pass has 8 rows, found 11; count rows from the left of one pass",
  ],
  [
    "a tyre as text",
    { rows: 8, tyreRows: ["three"], ...cases },
    'rowPositions.tyreRows[0]: expected a number, 0.5 to 100.5, found "three"; write it without quotes or unit',
  ],
  [
    "no tyres",
    { rows: 8, ...cases },
    "rowPositions.tyreRows: expected tyreRows, or rowsInTrack, found nothing; say where the tires run, such as [6, 11]",
  ],
  [
    "more tracked rows than rows",
    { rows: 8, rowsInTrack: 6, rowsBesideTrack: 4, ...cases },
    "rowPositions.rowsInTrack: expected with the rows beside a track at most the 8 rows of one pass, found 10 rows; check the counts",
  ],
  [
    "a track of no case",
    { rows: 8, tyreRows: [3, 6], inTrack: "wheels", other: "deeper" },
    'rowPositions.inTrack: expected the name of a case: "as it is", "deeper", found "wheels"; use one of these names',
  ],
];

describe("row positions that are wrong", () => {
  test.each(bad)("%s", async (_name, raw, ...lines) => {
    const { value, lines: said } = await read(raw);
    expect(said).toEqual(lines);
    expect(value).toBeUndefined();
  });
});

describe("row positions that are right", () => {
  test("typed shares, as before", async () => {
    const { value } = await read([
      { name: "wheel track", case: "as it is", share: "30 %" },
      { case: "deeper", share: "70 %" },
    ]);
    expect(value!.rowsInAll).toBeNull();
    expect(value!.plainIndex).toBe(1);
    expect(value!.positions).toEqual([
      { name: "wheel track", caseIndex: 0, afterIndex: null, share: 0.3, rows: null },
      { name: "deeper", caseIndex: 1, afterIndex: null, share: 0.7, rows: null },
    ]);
  });

  test("counted from width, spacing and tyre rows", async () => {
    const { value } = await read({
      implementWidth: "40 ft",
      rowSpacing: "30 in",
      tyreRows: [6, 11],
      ...cases,
    });
    expect(value!.rowsInAll).toBe(16);
    expect(value!.positions.map(({ name, rows, caseIndex }) => [name, rows, caseIndex])).toEqual([
      ["wheel track", 2, 0],
      ["beside the track", 4, 1],
      ["other", 10, 1],
    ]);
    expect(value!.positions[0]!.share).toBe(0.125);
  });

  test("a width in metric, a case of its own beside the track", async () => {
    const { value } = await read({
      implementWidth: "12 m",
      rowSpacing: "75 cm",
      rowsInTrack: 4,
      rowsBesideTrack: 2,
      besideTrack: "as it is",
      ...cases,
    });
    expect(value!.positions.map(({ rows, caseIndex }) => [rows, caseIndex])).toEqual([
      [4, 0],
      [2, 0],
      [10, 1],
    ]);
  });
});
