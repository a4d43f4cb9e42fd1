import { withoutHead } from "../../../forms/edits/pasted.ts";
import { isList, type Json } from "../../../state/json.ts";
import { getAt } from "../../../state/path.ts";
import { cellValue } from "../counts/cellText.ts";
import type { Changes } from "../counts/edits.ts";

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

/** What is typed into a cell; an emptied one is a missing strip. */
export function stripValue(text: string, unit: string): Json {
  return /^(missing|lost|null|-|–)$/i.test(text.trim()) ? null : (cellValue(text, "quantity", unit) ?? null);
}

/** Pairs with cells from a spreadsheet written over them; pairs that are not there yet are added. */
export function pastedPairs(
  pairs: readonly (readonly [Json, Json])[],
  cells: readonly (readonly string[])[],
  from: { readonly pair: number; readonly side: 0 | 1 },
  unit: string,
): [Json, Json][] {
  const next = pairs.map(([a, b]): [Json, Json] => [a, b]);
  withoutHead(cells).forEach((row, r) => {
    const pair = (next[from.pair + r] ??= [null, null]);
    row.slice(0, 2 - from.side).forEach((text, c) => (pair[from.side + c] = stripValue(text, unit)));
  });
  return next;
}
