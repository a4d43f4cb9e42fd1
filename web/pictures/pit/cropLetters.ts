/** A letter or two for each crop, where there is no room for its name: none stands for two of them. */
export function lettersOf(crops: readonly string[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const crop of crops) {
    if (found.has(crop)) continue;
    const taken = new Set(found.values());
    found.set(crop, waysOf(crop).find((way) => !taken.has(way)) ?? crop.toUpperCase());
  }
  return found;
}

/** Its first letter, the first ones of its words, then more and more of it. */
function waysOf(crop: string): string[] {
  const words = crop.split(" ");
  const initials = words.length > 1 ? [words.map((word) => word.charAt(0)).join("")] : [];
  const begun = Array.from(crop, (_, i) => crop.slice(0, i + 2));
  return [crop.charAt(0), ...initials, ...begun].map((way) => way.toUpperCase());
}
