/** The scoreboard as plain text, 80 columns wide. */
import { digitsOf, type Judged, type Row } from "./row.ts";

export interface JudgedTopic {
  readonly title: string;
  readonly isFallow: boolean;
  readonly judged: readonly Judged[];
}

const widths = { what: 28, where: 18, figure: 9, range: 10, ours: 5 } as const;

export function tableOf(topics: readonly JudgedTopic[]): string {
  const all = topics.flatMap(({ judged }) => judged);
  const letters = reasonLetters(all);
  const lines = topics.flatMap(({ title, judged }) => [
    "",
    title,
    ...judged.map((one) => rowText(one, letters)),
  ]);
  return [
    lineOf(["what", "published by", "figure", "range", "ours", ""]),
    "-".repeat(80),
    ...lines,
    "",
    ...reasonsText(letters),
    "Full sources, why each range, what each run assumes: data-reference/scoreboard.",
    "",
    ...skippedText(all),
    ...countText("rows", all),
    ...countText(
      "fallow rows",
      topics.filter(({ isFallow }) => isFallow).flatMap(({ judged }) => judged),
    ),
  ].join("\n");
}

function lineOf([what, where, figure, range, ours, verdict]: readonly string[]): string {
  return [
    what!.padEnd(widths.what),
    where!.padEnd(widths.where),
    figure!.padStart(widths.figure),
    range!.padStart(widths.range),
    ours!.padStart(widths.ours),
    verdict,
  ]
    .join(" ")
    .trimEnd();
}

/** A long first column goes on below. */
function rowText({ row, ours, inside }: Judged, letters: ReadonlyMap<string, string>): string {
  const [first, ...more] = wrapped(row.what, widths.what);
  const shown = ours === null ? "-" : number(ours, row);
  const verdict = ours === null ? "-" : inside ? "in" : `out ${letters.get(reasonOf(row))}`;
  const cells = [first!, row.where, figureText(row), rangeText(row), shown, verdict];
  return [lineOf(cells), ...more.map((line) => `  ${line}`)].join("\n");
}

function number(value: number, row: Row): string {
  const text = value.toFixed(digitsOf(row));
  return Number(text) === 0 ? (0).toFixed(digitsOf(row)) : text;
}

/** The unit where there is room for it; where not, the first column says it. */
function figureText({ figure, unit }: Row): string {
  const shown = (value: number) => String(Number(value.toFixed(2)));
  const text = typeof figure === "number" ? shown(figure) : `${shown(figure[0])}..${shown(figure[1])}`;
  if (unit === "times" || unit === "share" || unit === "points") return text;
  const withUnit = `${text} ${unit.replace("/day", "/d")}`;
  return withUnit.length > widths.figure ? text : withUnit;
}

function rangeText({ range: [low, high] }: Row): string {
  if (low === null) return `<= ${high}`;
  if (high === null) return `>= ${low}`;
  return `${low}..${high}`;
}

const reasonOf = ({ outside }: Row): string => outside ?? "no reason given";

/** A letter for each reason, in the order of the table: a to z, then aa. */
function reasonLetters(all: readonly Judged[]): ReadonlyMap<string, string> {
  const outside = all.filter(({ ours, inside }) => ours !== null && !inside);
  const reasons = [...new Set(outside.map(({ row }) => reasonOf(row)))];
  const letter = (at: number) =>
    String.fromCharCode("a".charCodeAt(0) + (at % 26)).repeat(1 + Math.floor(at / 26));
  return new Map(reasons.map((reason, at) => [reason, letter(at)]));
}

function reasonsText(letters: ReadonlyMap<string, string>): string[] {
  if (letters.size === 0) return [];
  const told = [...letters].flatMap(([reason, letter]) => hanging(`${letter.padEnd(2)} ${reason}`));
  return ["Outside, and why:", ...told, ""];
}

function skippedText(all: readonly Judged[]): string[] {
  const skipped = all.filter(({ ours }) => ours === null);
  return skipped.length === 0 ? [] : [`${skipped.length} rows need ../shared/data, which is absent.`, ""];
}

function countText(what: string, judged: readonly Judged[]): string[] {
  const tried = judged.filter(({ ours }) => ours !== null);
  const inside = tried.filter((one) => one.inside).length;
  return tried.length === 0
    ? []
    : [`${inside} of ${tried.length} ${what} inside (${Math.round((100 * inside) / tried.length)} %).`];
}

const hanging = (text: string): string[] =>
  wrapped(text, 78).map((line, l) => (l === 0 ? line : `   ${line}`));

function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= width - (lines.length > 1 ? 2 : 0))
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
