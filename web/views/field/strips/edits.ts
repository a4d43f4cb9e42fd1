import { tableOfRows, type Table } from "../../../forms/edits/cells.ts";
import { isList, type Json } from "../../../state/json.ts";
import { getAt, type Changes } from "../../../state/path.ts";

/** Changes to the yields of strips. The last pair takes all of them along. */

export const stripsPath = "evidence.strips";

/** As guides ask for at least. */
const firstPairs = 4;

export function pairsIn(scenario: Json): readonly (readonly [Json, Json])[] {
  const yields = getAt(scenario, `${stripsPath}.yields`);
  return isList(yields)
    ? yields.map((pair) => (isList(pair) ? [pair[0] ?? null, pair[1] ?? null] : [null, null]))
    : [];
}

/** Of the first two cases, with empty pairs to fill in: what is not filled in counts as missing. */
export function firstStrips(caseNames: readonly string[]): Changes {
  const yields = Array.from({ length: firstPairs }, () => [null, null]);
  return [[stripsPath, { cases: caseNames.slice(0, 2), yields }]];
}

export function addPair(scenario: Json): Changes {
  return [[`${stripsPath}.yields`, [...pairsIn(scenario), [null, null]]]];
}

export function removePair(scenario: Json, pair: number): Changes {
  const pairs = pairsIn(scenario);
  return pairs.length > 1 ? [[`${stripsPath}.yields`, pairs.toSpliced(pair, 1)]] : [[stripsPath, undefined]];
}

/** Yields of neighbouring strips, a pair a row; an emptied cell is a strip that is missing. */
export function pairsTable(names: readonly string[], unit: string): Table {
  const columns = names.map((word, side) => ({
    key: `[${side}]`,
    word,
    unit,
    hint: "missing",
    empty: null,
  }));
  return tableOfRows(`${stripsPath}.yields`, columns, () => [null, null]);
}
