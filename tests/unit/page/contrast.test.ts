/**
 * The colours of the style sheets, light and dark: what is written can be read, what shows a state can be seen. axe looks at
 * pages; here is every pair that they can come to. [WCAG 2.2, 1.4.3 and 1.4.11]
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const folder = new URL("../../../web/style/", import.meta.url);
const sheets = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), "utf8"));
const tokens = readFileSync(new URL("tokens.css", folder), "utf8");

/** What is written, by what it lies on: `color` and `background` of the style sheets, with what is inherited. */
const written: Readonly<Record<string, readonly string[]>> = {
  paper: ["ink", "pencil", "accent-ink", "wrong", "stale"],
  sheet: ["ink", "pencil", "accent-ink", "wrong", "stale"],
  mark: ["ink", "pencil", "accent-ink"],
  "wrong-sheet": ["ink", "wrong", "accent-ink"],
  "stale-sheet": ["ink", "stale", "accent-ink"],
  earth: ["on-earth"],
  "earth-deep": ["on-earth"],
  accent: ["on-accent"],
  "accent-ink": ["on-accent"],
};

/** Outlines of what has the focus, edges and bars that alone show a state. */
const shown: Readonly<Record<string, readonly string[]>> = {
  paper: ["focus", "accent", "ink"],
  sheet: ["focus", "accent", "ink"],
  mark: ["focus", "accent"],
  "wrong-sheet": ["wrong", "focus"],
  "stale-sheet": ["stale", "focus"],
  earth: ["on-earth"],
  "earth-deep": ["on-earth"],
};

/** Relative luminance of `#rrggbb`, 0 to 1. [WCAG 2.2, relative luminance] */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** 1 to 21. [WCAG 2.2, contrast ratio] */
function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** The colours of a block of tokens, by name. */
function coloursOf(block: string): Map<string, string> {
  return new Map(
    [...block.matchAll(/--([\w-]+): (#[\da-f]{6});/g)].map(([, name, colour]) => [name!, colour!]),
  );
}

const [lightBlock, darkBlock] = tokens.split(':root[data-theme="dark"]') as [string, string];

test("black on white is 21 to 1, a colour on itself 1 to 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
  expect(contrast("#125e8f", "#125e8f")).toBe(1);
});

describe.each([
  ["light", coloursOf(lightBlock)],
  ["dark", coloursOf(darkBlock)],
])("%s", (_, colours) => {
  const tooFaint = (pairs: typeof written, least: number) =>
    Object.entries(pairs).flatMap(([under, over]) =>
      over.flatMap((name) => {
        const ratio = contrast(colours.get(name)!, colours.get(under)!);
        return ratio >= least ? [] : [`${name} on ${under}: ${ratio.toFixed(2)}`];
      }),
    );
  test("writing stands out 4.5 to 1", () => expect(tooFaint(written, 4.5)).toEqual([]));
  test("what shows a state stands out 3 to 1", () => expect(tooFaint(shown, 3)).toEqual([]));
  test("has the same colours as the other", () =>
    expect([...colours.keys()]).toEqual([...coloursOf(lightBlock).keys()]));
});

test("every colour that is written in or written on, and every two set together, are among the pairs", () => {
  const rules = sheets.flatMap((text) => [...text.matchAll(/\{([^{}]*)\}/g)].map(([, body]) => body!));
  const tokenOf = (body: string, property: string) =>
    new RegExp(`(?<![\\w-])${property}:\\s*var\\(--([\\w-]+)\\)`).exec(body)?.[1];
  const inks = new Set<string>();
  const unknown: string[] = [];
  for (const body of rules) {
    const [over, under] = [tokenOf(body, "color"), tokenOf(body, "background(?:-color)?")];
    if (over !== undefined) inks.add(over);
    // A bar or a tick of ink has no writing on it.
    if (under !== undefined && under !== "ink" && !Object.hasOwn(written, under)) unknown.push(`on ${under}`);
    if (over !== undefined && under !== undefined && written[under]?.includes(over) !== true)
      unknown.push(`${over} on ${under}`);
  }
  const known = new Set(Object.values(written).flat());
  expect([...unknown, ...[...inks].filter((name) => !known.has(name))]).toEqual([]);
  expect(inks.size).toBeGreaterThan(5);
});
