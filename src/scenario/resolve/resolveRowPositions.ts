import {
  countTracks,
  rowsAcross,
  type RowPosition,
  type RowPositions,
  type TrackCount,
} from "../rowPositions.ts";
import { sayNumber } from "../../quantity/index.ts";
import { caseNamed } from "../caseNamed.ts";
import { complain, orDefault, type Notebook } from "./notebook.ts";
import { countedFields, type RowPositionsPart } from "../fields/rowPositionsFields.ts";

type Counted = Exclude<RowPositionsPart, readonly unknown[]>;

/** Row positions with their shares; undefined where they have faults, with the problems written down. */
export function resolveRowPositions(
  written: RowPositionsPart,
  caseNames: readonly string[],
  notebook: Notebook,
): RowPositions | undefined {
  const before = notebook.problems.length;
  const rows = Array.isArray(written)
    ? typedPositions(written, caseNames, notebook)
    : countedPositions(written as Counted, caseNames, notebook);
  return notebook.problems.length > before ? undefined : rows;
}

function typedPositions(
  written: Extract<RowPositionsPart, readonly unknown[]>,
  caseNames: readonly string[],
  notebook: Notebook,
): RowPositions {
  const sum = written.reduce((total, { share }) => total + share, 0);
  const positions = written.map(({ name, case: caseName, after, share }, r) => ({
    name: name ?? caseName,
    caseIndex: caseNamed(caseName, caseNames, `rowPositions[${r}].case`, notebook),
    afterIndex:
      after === undefined ? null : caseNamed(after, caseNames, `rowPositions[${r}].after`, notebook),
    share: share / sum,
    rows: null,
  }));
  const largest = Math.max(...positions.map(({ share }) => share));
  return { positions, rowsInAll: null, plainIndex: positions.findIndex(({ share }) => share === largest) };
}

/** Furthest from whole rows that a width may be, in rows: what rounding of a spacing in cm makes. Ours. */
const offWhole = 0.25;

function countedPositions(
  counted: Counted,
  caseNames: readonly string[],
  notebook: Notebook,
): RowPositions | undefined {
  const across = counted.rows ?? rowsAcross(counted.implementWidth ?? 0, counted.rowSpacing ?? 1);
  const rows = Math.round(across);
  if (rows < 1 || rows > 100 || Math.abs(across - rows) > offWhole) {
    complain(
      notebook,
      "rowPositions.implementWidth",
      "a width of 1 to 100 whole rows",
      `${sayNumber(across)} rows`,
      "check width and spacing, or give rows",
    );
    return undefined;
  }
  const count = countOf(counted, rows, notebook);
  if (count === undefined) return undefined;
  const index = (key: "inTrack" | "besideTrack" | "other") =>
    caseNamed(counted[key] ?? counted.other, caseNames, `rowPositions.${key}`, notebook);
  const inTrack = index("inTrack");
  const other = index("other");
  const beside = counted.besideTrack === undefined ? other : index("besideTrack");
  const after = (key: "inTrackAfter" | "besideTrackAfter" | "otherAfter") =>
    counted[key] === undefined ? null : caseNamed(counted[key], caseNames, `rowPositions.${key}`, notebook);
  const position = (name: string, caseIndex: number, afterIndex: number | null, of: number): RowPosition => ({
    name,
    caseIndex,
    afterIndex,
    share: of / rows,
    rows: of,
  });
  return {
    positions: [
      position("wheel track", inTrack, after("inTrackAfter"), count.inTrack),
      position("beside the track", beside, after("besideTrackAfter"), count.besideTrack),
      position("other", other, after("otherAfter"), count.other),
    ],
    rowsInAll: rows,
    plainIndex: 2,
  };
}

function countOf(
  { tyreRows, rowsInTrack = 0, rowsBesideTrack }: Counted,
  rows: number,
  notebook: Notebook,
): TrackCount | undefined {
  if (tyreRows !== undefined) {
    const outside = tyreRows.findIndex((tyre) => tyre > rows + 0.5);
    if (outside < 0) return countTracks(rows, tyreRows);
    complain(
      notebook,
      `rowPositions.tyreRows[${outside}]`,
      `a place from 0.5 to ${rows + 0.5}, as one pass has ${rows} rows`,
      String(tyreRows[outside]),
      "count rows from the left of one pass",
    );
    return undefined;
  }
  const none = countedFields.shape.rowsBesideTrack.byDefault;
  const besideTrack = orDefault(notebook, rowsBesideTrack, none, "rowPositions.rowsBesideTrack");
  if (rowsInTrack + besideTrack <= rows)
    return { inTrack: rowsInTrack, besideTrack, other: rows - rowsInTrack - besideTrack };
  complain(
    notebook,
    "rowPositions.rowsInTrack",
    `with the rows beside a track at most the ${rows} rows of one pass`,
    `${rowsInTrack + besideTrack} rows`,
    "check the counts",
  );
  return undefined;
}
