/** A row of the scoreboard: what was published or measured, and how far from it the model may be. Data: data-reference/scoreboard/. */
export interface Row {
  readonly id: string;
  /** What and where, in a few words: the table's first column. */
  readonly what: string;
  /** Author and year, or the data, short enough for a column. */
  readonly where: string;
  /** One figure, or the two ends of a printed span. */
  readonly figure: number | readonly [number, number];
  readonly unit: string;
  /** Where ours has to lie; null = no bound on that side. */
  readonly range: readonly [number | null, number | null];
  /** Why this range. */
  readonly why: string;
  readonly source: string;
  readonly locator: string;
  readonly provenance: Provenance;
  /** What the run takes for given where the source is silent. */
  readonly assumes?: string;
  /** Set where the row cannot be worked out without ../shared/data. */
  readonly needs?: "../shared/data";
  /** The reason, where ours lies outside the range. */
  readonly outside?: string;
}

export type Provenance = "read" | "memory" | "open data" | "asked for";

/** A topic's rows, in the order of the table. */
export interface RowFile {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** What the model gives for a topic's rows, by the row's id. Rows that need the open data are left out without the folder. */
export type Ours = Readonly<Record<string, number>>;

export interface Topic {
  readonly file: RowFile;
  readonly isFallow: boolean;
  readonly ours: (openData: string | null) => Promise<Ours>;
}

export interface Judged {
  readonly row: Row;
  /** Null where the row was skipped. */
  readonly ours: number | null;
  readonly inside: boolean;
}

/** Decimals of ours. Printed and judged alike: what the table shows is what counts. */
export function digitsOf({ unit }: Pick<Row, "unit">): number {
  return digits[unit] ?? 0;
}

const digits: Readonly<Record<string, number>> = {
  in: 2,
  times: 2,
  m: 2,
  "mm/day": 2,
  share: 2,
  bu: 1,
  "t/ha": 2,
};

export function isInside({ range: [low, high], ...row }: Row, ours: number): boolean {
  const shown = Number(ours.toFixed(digitsOf(row)));
  return Number.isFinite(ours) && (low === null || shown >= low) && (high === null || shown <= high);
}

export function judge(row: Row, ours: Ours): Judged {
  const value = ours[row.id];
  if (value === undefined) return { row, ours: null, inside: false };
  return { row, ours: value, inside: isInside(row, value) };
}
