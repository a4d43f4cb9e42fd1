/** Sowing, flowering, maturity: a word beside its day. */
export interface EventMark {
  readonly word: string;
  /** `12 Jun` */
  readonly date: string;
  readonly day: number;
  /** Which side of its day the word stands on. */
  readonly side: "before" | "over" | "after";
}

export interface PlacedMark {
  readonly word: string;
  readonly x: number;
  /** Where the word begins; null where there is no room for it at all. */
  readonly left: number | null;
}

/** Words beside their days, none over another: with all dates if there is room, else without some, and rather that than no word. */
export function placedMarks(
  marks: readonly EventMark[],
  xOf: (day: number) => number,
  size: number,
  [from, to]: readonly [from: number, to: number],
): PlacedMark[] {
  // The date of flowering is missed least.
  const ways = [
    () => true,
    ({ side }: EventMark) => side !== "over",
    ({ side }: EventMark) => side === "after",
    () => false,
  ];
  const place = (isDated: (mark: EventMark) => boolean, isSaid: (mark: EventMark) => boolean) => {
    let lastEnd = -Infinity;
    return marks.map((mark) => {
      const word = isDated(mark) ? `${mark.word} ${mark.date}` : mark.word;
      const length = word.length * size * 0.66;
      const x = xOf(mark.day);
      const shift = mark.side === "before" ? length - 3 : mark.side === "after" ? 3 : length / 2;
      const wanted = Math.min(Math.max(x - shift, from, lastEnd + 6), to - length);
      const left = isSaid(mark) && wanted > lastEnd + 4 ? wanted : null;
      if (left !== null) lastEnd = left + length;
      return { word, x, left };
    });
  };
  for (const isDated of ways) {
    const placed = place(isDated, () => true);
    if (placed.every(({ left }) => left !== null)) return placed;
  }
  return place(
    () => false,
    ({ side }) => side !== "over",
  );
}
