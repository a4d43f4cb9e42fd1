/** The fields asked for, as a tree: `null` = all below. */
export interface FieldTree {
  readonly [key: string]: FieldTree | null;
}

/**
 * @param paths such as `differences.extraWaterUsedMm.p50`; of a list, the field of each entry
 * @example fieldTree(["scenario", "cases.name"]) // { scenario: null, cases: { name: null } }
 */
export function fieldTree(paths: readonly string[]): FieldTree {
  const top = new Map<string, string[] | null>();
  for (const path of paths) {
    const [key = "", ...rest] = path.trim().split(".");
    const before = top.get(key);
    // The whole of it was asked for, or is now.
    if (rest.length === 0 || before === null) top.set(key, null);
    else top.set(key, [...(before ?? []), rest.join(".")]);
  }
  return Object.fromEntries([...top].map(([key, below]) => [key, below === null ? null : fieldTree(below)]));
}

/**
 * A result with these fields alone, in the order asked. Nothing has nothing below it: null stays null.
 *
 * @param onMissing is told of a field that is not there, with those that are
 */
export function pickFields(
  value: unknown,
  tree: FieldTree,
  onMissing: (key: string, there: readonly string[]) => void,
): unknown {
  if (Array.isArray(value)) return value.map((one) => pickFields(one, tree, onMissing));
  if (value === null || value === undefined) return value;
  const group = value as Readonly<Record<string, unknown>>;
  const picked: Record<string, unknown> = {};
  for (const [key, below] of Object.entries(tree)) {
    if (typeof value !== "object" || !Object.hasOwn(group, key))
      onMissing(key, typeof value === "object" ? Object.keys(group) : []);
    else picked[key] = below === null ? group[key] : pickFields(group[key], below, onMissing);
  }
  return picked;
}
