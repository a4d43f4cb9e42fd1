import { InputError, quoteFound } from "../../problem.ts";

/**
 * JSON text to values. The language's own parser does not always say where a text goes wrong, and takes the last of two
 * equal keys in silence; so the text is walked first, and refused with line and column.
 */
export function readJson(text: string, fileName: string): unknown {
  const plain = text.replace(/^\ufeff/, "");
  walkValue({ text: plain, at: 0, fileName }, 0);
  return JSON.parse(plain);
}

interface Walk {
  readonly text: string;
  at: number;
  readonly fileName: string;
}

const deepest = 40;

function walkValue(walk: Walk, depth: number): void {
  skipSpace(walk);
  if (depth > deepest) fail(walk, "a file less nested than this", "take out brackets");
  const here = walk.text[walk.at];
  if (here === "{") walkGroup(walk, depth);
  else if (here === "[") walkList(walk, depth);
  else if (here === '"') walkText(walk);
  else {
    const word = /^(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/.exec(
      walk.text.slice(walk.at, walk.at + 400),
    );
    if (word === null)
      fail(
        walk,
        'a value such as "14 in", 12, true, [ or {',
        "put text, and a quantity with its unit, between double quotes",
      );
    walk.at += word[0].length;
  }
  if (depth > 0) return;
  skipSpace(walk);
  if (walk.at < walk.text.length) fail(walk, "nothing after the last }", "take out what follows");
}

function walkGroup(walk: Walk, depth: number): void {
  walk.at += 1;
  const keys = new Set<string>();
  skipSpace(walk);
  if (walk.text[walk.at] === "}") return void (walk.at += 1);
  for (;;) {
    skipSpace(walk);
    const start = walk.at;
    if (walk.text[start] !== '"')
      fail(
        walk,
        'a key between double quotes, such as "name"',
        walk.text[start] === "}" ? "take out the comma before it" : "put the key between double quotes",
      );
    const key = walkText(walk);
    if (keys.has(key)) {
      walk.at = start;
      fail(walk, "each key once", "take out one of the two", quoteFound(key));
    }
    keys.add(key);
    skipSpace(walk);
    if (walk.text[walk.at] !== ":") fail(walk, `a colon after ${quoteFound(key)}`, "put one in");
    walk.at += 1;
    walkValue(walk, depth + 1);
    if (endsWith(walk, "}")) return;
  }
}

function walkList(walk: Walk, depth: number): void {
  walk.at += 1;
  skipSpace(walk);
  if (walk.text[walk.at] === "]") return void (walk.at += 1);
  for (;;) {
    skipSpace(walk);
    if (walk.text[walk.at] === "]") fail(walk, "a value after the comma", "take out the comma before it");
    walkValue(walk, depth + 1);
    if (endsWith(walk, "]")) return;
  }
}

/** After a value: true at the end of the group or list, false after a comma. */
function endsWith(walk: Walk, close: "}" | "]"): boolean {
  skipSpace(walk);
  const here = walk.text[walk.at];
  if (here !== close && here !== ",")
    fail(
      walk,
      `a comma or ${close}`,
      here === undefined
        ? `the file breaks off; close it with ${close}`
        : "put a comma between values, and a quantity with its unit between double quotes",
    );
  walk.at += 1;
  return here === close;
}

function walkText(walk: Walk): string {
  const start = walk.at;
  for (walk.at += 1; walk.at < walk.text.length; walk.at += 1) {
    const here = walk.text[walk.at] ?? "";
    if (here === '"') {
      walk.at += 1;
      return JSON.parse(walk.text.slice(start, walk.at)) as string;
    }
    if (here === "\\") {
      if (!/^\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/.test(walk.text.slice(walk.at, walk.at + 6)))
        fail(walk, 'one of \\" \\\\ \\/ \\n \\t', "write \\\\ for a backslash");
      walk.at += 1;
    } else if (here < " ") break;
  }
  walk.at = start;
  fail(walk, "a closing double quote on the same line", "put it in");
}

function skipSpace(walk: Walk): void {
  while (" \t\r\n".includes(walk.text[walk.at] ?? "x")) walk.at += 1;
  if (/^(?:\/\/|\/\*|#)/.test(walk.text.slice(walk.at, walk.at + 2)))
    fail(walk, "no comments", 'JSON has none; write them in "notes"');
}

function fail({ text, at, fileName }: Walk, expected: string, mend: string, found?: string): never {
  const before = text.slice(0, at).split("\n");
  const place = `${fileName} line ${before.length}, column ${(before.at(-1) ?? "").length + 1}`;
  const word = /^(?:[\w.+-]+|[^])/.exec(text.slice(at, at + 200))?.[0];
  const seen =
    found ??
    (word === undefined ? "the end of the file" : word === '"' ? "a double quote" : quoteFound(word));
  throw new InputError([{ field: place, expected, found: seen, mend }]);
}
