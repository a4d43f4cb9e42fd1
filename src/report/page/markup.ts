import { printable } from "../../printable.ts";

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * A text as it may stand in the report, between tags or in an attribute: nothing in it is markup any more.
 * @example escaped("</script><b>") // "&lt;/script&gt;&lt;b&gt;"
 */
export function escaped(text: string): string {
  return printable(text).replace(/[&<>"']/g, (found) => entities[found]!);
}

/** A name from the file, which may be written from right to left: it does not turn the words around it. */
export function called(name: string): string {
  return `<bdi>${escaped(name)}</bdi>`;
}

/** A list, an item a paragraph. */
export function list(items: readonly string[]): string {
  return `<ul>${items.map((item) => `<li>${item}</li>`).join("")}</ul>`;
}

export interface Table {
  readonly caption: string;
  /** Already markup, as the cells are. */
  readonly head: readonly string[];
  /** The first cell of a row is its heading. */
  readonly rows: readonly (readonly string[])[];
}

/** Of a heading that is markup already: its text, for an attribute. */
function plainText(heading: string): string {
  return heading.replace(/<[^>]*>/g, "");
}

/** Where it is too narrow for its columns, each cell stands below its heading. */
export function table({ caption, head, rows }: Table): string {
  const heads = head.map((cell) => `<th scope="col">${cell}</th>`).join("");
  const body = rows
    .map(
      ([first = "", ...cells]) =>
        `<tr><th scope="row">${first}</th>${cells.map((cell, c) => `<td data-head="${plainText(head[c + 1] ?? "")}">${cell}</td>`).join("")}</tr>`,
    )
    .join("");
  return `<div class="scrolls" tabindex="0" role="region" aria-label="${caption}"><table><caption>${caption}</caption><thead><tr>${heads}</tr></thead><tbody>${body}</tbody></table></div>`;
}
