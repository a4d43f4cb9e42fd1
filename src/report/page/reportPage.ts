import { answer } from "./answer.ts";
import { embedded } from "./embedded.ts";
import { evidence } from "./evidence.ts";
import { paperStyle, reportStyle } from "./reportStyle.ts";
import { called, escaped, list } from "./markup.ts";
import type { ReportInput, Section } from "./reportInput.ts";
import { inFull } from "./inFull.ts";
import { method } from "./method.ts";
import { money } from "./money.ts";
import { question } from "./question.ts";
import { reopening } from "./reopening.ts";
import { roots } from "./roots.ts";
import { soil } from "./soil.ts";
import { sources } from "./sources.ts";
import { years } from "./years.ts";

/** What this very result calls for, then the limits of the model, digging and money, as said beside every answer. */
const limits: Section = ({ comparison: { cautions } }) => ({
  heading: "Limits and cautions",
  body: `<div class="fine">${list(cautions.map(escaped))}</div>`,
});

/** In the order in which they are read; what stands in one row lies side by side where there is room, flowing on in the next column. */
const rows: readonly (readonly Section[])[] = [
  [question],
  [years],
  [soil, roots],
  [answer],
  [evidence, money],
];

/** What it stands on, after all that is told: on paper in narrow columns. */
const toCheck: readonly Section[] = [limits, inFull, method, sources, reopening];

/**
 * The whole report: one HTML page that needs nothing else, runs nothing and asks no host for anything.
 * Two printed sides for a scenario of a few cases.
 */
export function reportHtml(input: ReportInput): string {
  const title = escaped(input.scenario.name);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<link rel="icon" href="data:,">
<title>${title} – rootfront report</title>
<style>${paperStyle}
html{background:#efe7d4}body{margin:0}
@media print{html{background:none}}
</style>
<style id="report-style">${reportStyle}</style>
</head>
<body>
<main class="field-report">${reportBody(input)}</main>
${embedded(input.kept)}
</body>
</html>
`;
}

function reportBody(input: ReportInput): string {
  const { name, invented } = input.scenario;
  const mark = invented ? ' <span class="invented">invented data</span>' : "";
  const head = `<header class="head"><h1>${called(name)}</h1><p class="where">A rootfront report.${mark}</p></header>`;
  return [
    head,
    ...rows.map((row) => rowOf(row, input)),
    `<div class="check">${partsOf(toCheck, input).join("")}</div>`,
  ].join("\n");
}

function partsOf(row: readonly Section[], input: ReportInput): string[] {
  const told = row.flatMap((section) => section(input) ?? []);
  return told.map(({ heading, body }) => `<section><h2>${escaped(heading)}</h2>${body}</section>`);
}

function rowOf(row: readonly Section[], input: ReportInput): string {
  const parts = partsOf(row, input);
  const flows = row.includes(evidence) ? " flows loose" : "";
  return parts.length > 1 ? `<div class="pair${flows}">${parts.join("")}</div>` : parts.join("");
}
