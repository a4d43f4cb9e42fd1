/** With one full stop at its end. */
export function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** How reference ET came about, as a sentence that begins with its name once. */
export function referenceEtSaid(how: string): string {
  return sentence(how.startsWith("Reference ET") ? how : `Reference ET: ${how}`);
}

/** @example capital("corn, sown May 10") // "Corn, sown May 10" */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
