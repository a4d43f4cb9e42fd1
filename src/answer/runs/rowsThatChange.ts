import type { RowPosition, RowPositions } from "../../scenario/rowPositions.ts";

/** The field's rows before and after one case takes the place of another: only those that change earn. */
export interface RowsThatChange {
  /** Of all rows, 0 to 1. */
  readonly share: number;
  readonly rowsInAll: number | null;
  /** Every position with rows in it, by its case before and after; the same for rows that stay as they are. */
  readonly positions: readonly RowBeforeAndAfter[];
}

export interface RowBeforeAndAfter {
  readonly name: string;
  readonly share: number;
  /** Rows of one pass; null where only shares are known. */
  readonly rows: number | null;
  readonly before: string;
  readonly after: string;
}

/** What a case counts in a mean or a difference: shares of all rows, below 0 what goes. */
export interface CaseWeight {
  readonly caseIndex: number;
  readonly share: number;
}

/** Every row of the field changes, where their positions are not told. */
const allRows = (p: number): CaseWeight[] => [
  { caseIndex: p + 1, share: 1 },
  { caseIndex: 0, share: -1 },
];

/**
 * Weighted mean, or difference, of the cases' values in each run.
 *
 * @param valuesByCase one array a case, indexed by run
 */
export function averageByRun(
  valuesByCase: readonly Float64Array[],
  weights: readonly CaseWeight[],
): Float64Array {
  const mean = new Float64Array(valuesByCase[0]?.length ?? 0);
  for (const { caseIndex, share } of weights) {
    const values = valuesByCase[caseIndex]!;
    for (let run = 0; run < mean.length; run++) mean[run]! += share * values[run]!;
  }
  return mean;
}

/**
 * The weights of the field after the change less the field before it.
 *
 * @param p which later case against the first, from 0
 */
export function weightsOfChange(rows: RowPositions | null, p: number): CaseWeight[] {
  if (rows === null) return allRows(p);
  return changed(rows, p).flatMap(({ share, before, after }) =>
    before === after
      ? []
      : [
          { caseIndex: after, share },
          { caseIndex: before, share: -share },
        ],
  );
}

/** The same in names, for people. */
export function rowsThatChange(rows: RowPositions, caseNames: readonly string[], p: number): RowsThatChange {
  const all = changed(rows, p);
  return {
    share: all.reduce((sum, { share, before, after }) => (before === after ? sum : sum + share), 0),
    rowsInAll: rows.rowsInAll,
    positions: all
      .filter(({ share }) => share > 0)
      .map(({ name, share, rows: count, before, after }) => ({
        name,
        share,
        rows: count,
        before: caseNames[before]!,
        after: caseNames[after]!,
      })),
  };
}

type Changed = Pick<RowPosition, "name" | "share" | "rows"> & {
  readonly before: number;
  readonly after: number;
};

/**
 * As the scenario says what rows become, where it says so of this case. Else one of the two cases takes the other's place: the
 * plain position, which most rows are, stays as it is, so that a comparison with the case of the tracks tells what the tracks
 * cost, and one with the case of the plain rows what it brings to be rid of them. Where only the first case has rows, those
 * become the later one; where only the later one has, they were the first.
 */
function changed({ positions, plainIndex }: RowPositions, p: number): Changed[] {
  const [from, to] = [0, p + 1];
  const saysSo = positions.some(({ afterIndex, caseIndex }) => afterIndex === to && caseIndex !== to);
  // A position that is named has its case among the rows, if there are none of them just now.
  const has = (c: number) => positions.some(({ caseIndex }) => caseIndex === c);
  const plainCase = positions[plainIndex]?.caseIndex;
  const goesBack = has(to) && (!has(from) || plainCase === from);
  return positions.map(({ name, share, rows, caseIndex, afterIndex }) => {
    const own = { name, share, rows };
    if (saysSo) return { ...own, before: caseIndex, after: afterIndex ?? caseIndex };
    if (goesBack) return { ...own, before: caseIndex === to ? from : caseIndex, after: caseIndex };
    return { ...own, before: caseIndex, after: caseIndex === from ? to : caseIndex };
  });
}
