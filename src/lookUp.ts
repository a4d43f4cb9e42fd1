/**
 * What a table of ours holds under a name that came from outside. A plain `table[name]` would find for "constructor" or
 * "toString" what every object has.
 */
export function lookUp<T>(table: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(table, name) ? table[name] : undefined;
}
