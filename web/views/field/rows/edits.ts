import type { RowPositions } from "../../../../src/scenario/rowPositions.ts";
import { isGroup, isList, type Json, type JsonGroup } from "../../../state/json.ts";
import type { Changes } from "../../../state/path.ts";

/** Changes to where the rows stand: what is written in, what is to be written out. */

/** A first pass to change: sixteen rows, two tyres. Ours, a common size. */
const firstPass = { rows: 16, tyreRows: [6, 11] } as const;

/**
 * Rows counted across one pass.
 * @param names of the cases, two at least
 * @param rootDepthMmByCase where known, the shallower of the first two is put into the track
 */
export function countedStart(names: readonly string[], rootDepthMmByCase: readonly number[]): JsonGroup {
  const [first = "", second = first] = names;
  const named = names.find((name) => /track|tyre|tire|wheel/i.test(name));
  if (named !== undefined)
    return {
      ...firstPass,
      tyreRows: [...firstPass.tyreRows],
      inTrack: named,
      other: named === first ? second : first,
    };
  const [a = 0, b = 0] = rootDepthMmByCase;
  const [shallow, deep] = b < a ? [second, first] : [first, second];
  return { ...firstPass, tyreRows: [...firstPass.tyreRows], inTrack: shallow, other: deep };
}

/** The shares of rows counted so far, or halves of the first two cases. */
export function sharesOf(rows: RowPositions | null, names: readonly string[]): Json {
  if (rows === null)
    return names
      .slice(0, 2)
      .map((name) => ({ name, case: name, share: names.length < 2 ? "100 %" : "50 %" }));
  return rows.positions
    .filter(({ share }) => share > 0)
    .map(({ name, caseIndex, share }) => ({
      name,
      case: names[caseIndex] ?? "",
      share: `${Number((100 * share).toFixed(2))} %`,
    }));
}

/** Tyres that can be drawn: numbers as written, in order. */
export function tyresIn(written: Json | undefined): number[] {
  const list = isGroup(written) ? written["tyreRows"] : undefined;
  return isList(list)
    ? list
        .filter((one) => typeof one === "number" && one >= 0.5)
        .map(Number)
        .sort((a, b) => a - b)
    : [];
}

/** A tyre set at a place, or taken from it. Without a tyre no row is tracked. */
export function tyreTurned(written: Json | undefined, place: number): Changes {
  const before = tyresIn(written);
  const after = before.includes(place)
    ? before.filter((one) => one !== place)
    : [...before, place].sort((a, b) => a - b);
  return after.length === 0
    ? [
        ["rowPositions.tyreRows", undefined],
        ["rowPositions.rowsInTrack", 0],
      ]
    : [
        ["rowPositions.tyreRows", after],
        ["rowPositions.rowsInTrack", undefined],
        ["rowPositions.rowsBesideTrack", undefined],
      ];
}

/**
 * Places of tyres from text; what is no number stays as it was typed.
 * @example tyresFromText("6, 11.5, x") // [6, 11.5, "x"]
 */
export function tyresFromText(text: string): Json | undefined {
  if (text.trim() === "") return undefined;
  return text.split(",").map((one) => {
    const plain = one.trim();
    return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : plain;
  });
}
