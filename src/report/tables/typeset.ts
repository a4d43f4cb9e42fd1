/**
 * A sentence as a page sets it: curly quotes, and the true minus sign before a number. A terminal keeps to plain letters.
 *
 * @example typeset('"deeper" at -0.2 in') // “deeper” at −0.2 in
 */
export function typeset(text: string): string {
  const signed = text.replace(/(^|[\s("])-(?=\d)/g, "$1\u2212");
  // An odd mark is one of inches: no telling which.
  return (signed.split('"').length - 1) % 2 === 0 ? signed.replace(/"([^"]*)"/g, "\u201c$1\u201d") : signed;
}
