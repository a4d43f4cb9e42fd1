import { methodParagraphs } from "../sentences/methodText.ts";
import { escaped, list } from "./markup.ts";
import type { ReportInput, Section } from "./reportInput.ts";

/** How the answer came about (the yield line's source is among the sources), what was noticed, and what was taken because nothing was given. */
export const method: Section = (input) => {
  const { comparison, shown } = input;
  return {
    heading: "Method",
    body:
      `<div class="fine">${list([...methodParagraphs(comparison, shown, false), ...comparison.notes].map(escaped))}</div>` +
      defaultsSaid(input),
  };
};

function defaultsSaid({ comparison: { defaults } }: ReportInput): string {
  if (defaults.length === 0) return "";
  const all = defaults.map(({ field, value, why }) => `${field}: ${value} (${why})`);
  const count = defaults.length === 1 ? "One value was" : `${defaults.length} values were`;
  return (
    `<details><summary>Defaults used (${defaults.length})</summary>${list(all.map(escaped))}</details>` +
    `<p class="on-paper">${count} not given and taken as defaults: this page on a screen lists each with where it comes from.</p>`
  );
}
