/** The name meant by a mistyped one, or null when nothing is near. Case, spaces and hyphens do not count. */
export function nearestName(typed: string, known: readonly string[]): string | null {
  const wanted = plain(typed);
  let nearest: string | null = null;
  let fewest = Infinity;
  for (const name of known) {
    const edits = editDistance(wanted, plain(name));
    if (edits < fewest) {
      fewest = edits;
      nearest = name;
    }
  }
  return fewest <= Math.max(2, Math.floor(wanted.length / 3)) ? nearest : null;
}

function plain(text: string): string {
  return text
    .slice(0, 60)
    .toLowerCase()
    .replace(/[\s_-]/g, "");
}

/** Letters to add, drop or change, or neighbours to swap. */
function editDistance(from: string, to: string): number {
  let before: number[] = [];
  let row = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const change = (row[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      const swap = swapped ? (before[j - 2] ?? 0) + 1 : Infinity;
      next.push(Math.min(change, swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    before = row;
    row = next;
  }
  return row[to.length] ?? to.length;
}
