import { measuredInFull } from "./evidence.ts";
import { escaped, list } from "./markup.ts";
import { moneyInFull } from "./money.ts";
import type { Section } from "./reportInput.ts";

/** What the first side tells in tables and pictures, with intervals and all that was worked out from it; nothing where there is neither. */
export const inFull: Section = (input) => {
  const measured = measuredInFull(input);
  const worth = moneyInFull(input);
  if (measured.length + worth.length === 0) return null;
  const heading = [
    ...(measured.length > 0 ? ["what was measured"] : []),
    ...(input.comparison.fieldAverage !== null ? ["rows"] : []),
    ...(input.comparison.money !== null ? ["money"] : []),
  ];
  return {
    heading: `In full: ${heading.join(", ")}`,
    body: `<div class="fine">${list([...measured, ...worth].map(escaped))}</div>`,
  };
};
