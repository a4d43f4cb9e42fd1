import { escaped, list } from "./markup.ts";
import type { Section } from "./section.ts";

/** What this very result calls for, then the limits of the model, digging and money, as said beside every answer. */
export const limits: Section = ({ comparison: { cautions } }) => ({
  heading: "Limits and cautions",
  body: `<div class="fine">${list(cautions.map(escaped))}</div>`,
});
