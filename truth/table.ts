/** The scoreboard as plain text, 80 columns wide. */
import { digitsOf, type Judged, type Row } from "./row.ts";

export interface JudgedTopic {
  readonly title: string;
  readonly isFallow: boolean;
  readonly judged: readonly Judged[];
}

const widths = { what: 30, where: 18, figure: 9, range: 10, ours: 5 } as const;

export function tableOf(topics: readonly JudgedTopic[]): string {
  const head = lineOf(["what", "published by", "figure", "range", "ours", ""]);
  const lines = topics.flatMap(({ title, judged }) => ["", title, ...judged.map(rowText)]);
  const all = topics.flatMap(({ judged }) => judged);
  return [
    head,
    "-".repeat(80),
    ...lines,
    "",
    ...outsideText(all),
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
function rowText({ row, ours, inside }: Judged): string {
  const [first, ...more] = wrapped(row.what, widths.what);
  const verdict = ours === null ? "-" : inside ? "in" : "OUT";
  const cells = [
    first!,
    row.where,
    figureText(row),
    rangeText(row),
    ours === null ? "-" : number(ours, row),
    verdict,
  ];
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

function outsideText(all: readonly Judged[]): string[] {
  const outside = all.filter(({ ours, inside }) => ours !== null && !inside);
  if (outside.length === 0) return [];
  return [
    "Outside, and why:",
    ...outside.flatMap(({ row }) => hanging(`${row.what}: ${row.outside ?? "no reason given"}`)),
    "",
  ];
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
  wrapped(text, 76).map((line, l) => (l === 0 ? `- ${line}` : `  ${line}`));

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
