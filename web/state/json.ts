/** What a scenario file may hold before anyone has read it. */
export type Json = string | number | boolean | null | readonly Json[] | JsonGroup;
export interface JsonGroup {
  readonly [key: string]: Json;
}

export function isGroup(value: unknown): value is JsonGroup {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

export function isList(value: unknown): value is readonly Json[] {
  return Array.isArray(value);
}
