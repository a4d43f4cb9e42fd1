/** Width of a letter against the size of its type, for a sans face: on the wide side, so that text stays inside. */
const letterWidth = 0.56;

/** How much room a text takes, px. */
export function widthOf(text: string, sizePx: number): number {
  return text.length * sizePx * letterWidth;
}

/**
 * Text broken at words into lines that fit, for drawings, which do not break lines by themselves.
 *
 * @param widthPx room for a line; a word that is longer keeps a line of its own
 * @example wrapped("Stored there at sowing", 100, 13) // ["Stored there", "at sowing"]
 */
export function wrapped(text: string, widthPx: number, sizePx: number): string[] {
  const most = Math.max(1, Math.floor(widthPx / (sizePx * letterWidth)));
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/**
 * As much of a text as there is room for; the whole of it stands elsewhere.
 *
 * @param most letters, the mark of what is left out among them; one letter is always kept
 * @example shortened("stiff subsoil", 8) // "stiff s…"
 */
export function shortened(text: string, most: number, leftOut = "…"): string {
  const letters = [...text];
  if (letters.length <= most) return text;
  return `${letters
    .slice(0, Math.max(1, most - leftOut.length))
    .join("")
    .trimEnd()}${leftOut}`;
}
