import * as z from "zod";
import { alternatives, isSaidTwice } from "./facts/alternatives.ts";
import { faultAt, group, list, number, quantity, text, wholeNumber } from "./fields.ts";
import { encodeFault } from "../read/problems.ts";
import { withDefault } from "./facts/withDefault.ts";

/** Row positions in a scenario file: shares as typed, or rows counted across the implement. */

const share = { from: 0, to: 1, says: "0 to 100 %" };

/** Left out everywhere, each comparison tells which rows it changes. */
const becomes =
  "The case that these rows are once the change is made. Left out: as they are, but for rows of one of the two cases compared, which become the other";

const typedFields = list(
  group(
    {
      name: text('Where the row is, such as "wheel track"').optional(),
      case: text("The case that these rows are"),
      after: text(becomes).optional(),
      share: quantity("share", { means: "Their share of all rows", within: share }),
    },
    "Rows of one position",
  ),
  "Positions of rows; shares make 100 %",
).superRefine((rows, context) => {
  const sum = rows.reduce((total, row) => total + row.share, 0);
  if (Math.abs(sum - 1) <= 0.005) return;
  context.addIssue(
    faultAt(
      [],
      `${Math.round(sum * 1000) / 10} %`,
      "shares that together make 100 %",
      "change the shares until they do",
    ),
  );
});

const mostRows = 100;
const width = { from: 0, to: 50_000, above: true, says: "more than 0 and at most 164 ft (50 m)" };

export const countedFields = group(
  {
    rows: wholeNumber("Rows of one pass; or give `implementWidth` and `rowSpacing`", 1, mostRows).optional(),
    implementWidth: quantity("depth", {
      means: "Width of one pass; needs `rowSpacing`",
      within: width,
    }).optional(),
    rowSpacing: quantity("depth", {
      means: "From row to row; needs `implementWidth`",
      within: { from: 50, to: 3000, says: "2 to 118 in (50 to 3000 mm)" },
    }).optional(),
    tyreRows: list(
      number("Where a tire runs, in rows from the left: 6 is on row 6, 6.5 between rows 6 and 7", {
        from: 0.5,
        to: mostRows + 0.5,
        says: `0.5 to ${mostRows + 0.5}`,
      }),
      "Where the tires run, each in rows from the left; or give `rowsInTrack`",
      { atMost: 40 },
    ).optional(),
    rowsInTrack: wholeNumber("Rows that a tire runs on; or give `tyreRows`", 0, mostRows).optional(),
    rowsBesideTrack: withDefault(
      wholeNumber("Rows next to a tire, with `rowsInTrack`", 0, mostRows),
      0,
      "none are told apart",
    ),
    inTrack: text("The case that rows in a wheel track are"),
    besideTrack: text("The case that rows beside a track are. Left out: as the other rows").optional(),
    other: text("The case that all other rows are"),
    inTrackAfter: text(becomes).optional(),
    besideTrackAfter: text(becomes).optional(),
    otherAfter: text(becomes).optional(),
  },
  "Rows counted across one pass of the implement",
).superRefine((counted, context) => {
  const wrong = (path: string, found: string, expected: string, mend: string) =>
    context.addIssue(faultAt([path], found, expected, mend));
  const { rows, implementWidth, rowSpacing, tyreRows, rowsInTrack, rowsBesideTrack } = counted;
  const isTwice = (key: keyof typeof alternatives.countedRows) =>
    isSaidTwice(counted, key, alternatives.countedRows);
  if (isTwice("rows")) wrong("rows", "both", "rows, or implementWidth and rowSpacing", "leave one out");
  else if (rows === undefined && (implementWidth === undefined || rowSpacing === undefined))
    wrong(
      implementWidth === undefined && rowSpacing !== undefined
        ? "implementWidth"
        : rowSpacing === undefined && implementWidth !== undefined
          ? "rowSpacing"
          : "rows",
      "nothing",
      "rows, or implementWidth and rowSpacing together",
      "give the rows of one pass",
    );
  if ((tyreRows === undefined) === (rowsInTrack === undefined))
    wrong(
      "tyreRows",
      tyreRows === undefined ? "nothing" : "both",
      "tyreRows, or rowsInTrack",
      tyreRows === undefined ? "say where the tires run, such as [6, 11]" : "leave one out",
    );
  else if (isTwice("tyreRows"))
    wrong("rowsBesideTrack", String(rowsBesideTrack), "nothing, as tyreRows tells it", "leave it out");
});

export const rowPositionsFields = z
  .union([typedFields, countedFields], {
    error: (issue) => insideOf(issue.code === "invalid_union" ? issue.errors : [], issue.input),
  })
  .describe("Where the rows of the field stand: shares as typed, or rows counted");

/** A list is meant as typed shares, anything else as rows counted: what that one found wrong. */
function insideOf(errors: readonly (readonly z.core.$ZodIssue[])[], input: unknown): string {
  const [typed = [], counted = []] = errors;
  const issues = (Array.isArray(input) ? typed : counted).map((one) => ({
    path: one.path,
    message: one.message,
    ...(one.code === "unrecognized_keys" ? { keys: one.keys } : {}),
  }));
  return encodeFault({ kind: "inside", issues });
}

export type RowPositionsPart = z.output<typeof rowPositionsFields>;
