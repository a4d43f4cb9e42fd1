import type { Problem } from "../../src/problem.ts";

/** One of several things in a file: what to write for it, and what it is called. */
export interface Asked {
  readonly value: string;
  readonly word: string;
}

/**
 * Stations to choose from, out of the reader's question: `2: XXC1 (INVENTED EAST, 365 lines); XXC2 (4 lines)`.
 * Empty where the problem is no such question.
 */
export function stationsAsked({ expected, found }: Problem): Asked[] {
  const list = /^one station$/.test(expected)
    ? found.replace(/^\d+: /, "")
    : /^a station of .*?: (.+)$/.exec(expected)?.[1];
  if (list === undefined) return [];
  return list.split("; ").flatMap((item) => {
    const [, value, said] = /^(\S+) \((.*)\)$/.exec(item) ?? [];
    return value === undefined ? [] : [{ value, word: `${value} (${said})` }];
  });
}

/**
 * Components or pedons to choose from, out of the reader's question: `one of Amarillo NM021 AM (504646), Colby (77)`.
 * The key is what is written. Empty where the problem is no such question.
 */
export function profilesAsked({
  field,
  expected,
}: Problem): { key: "component" | "pedon"; choices: Asked[] } | null {
  const key = / (component|pedon)$/.exec(field)?.[1] as "component" | "pedon" | undefined;
  const list = /^one of (.+?)(?: and \d+ more)?$/.exec(expected)?.[1];
  if (key === undefined || list === undefined) return null;
  const choices = list.split(", ").map((word) => ({ word, value: /\((\S+)\)$/.exec(word)?.[1] ?? word }));
  return { key, choices };
}
