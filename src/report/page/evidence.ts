import { evidenceSentences } from "../sentences/field/evidenceText.ts";
import { percent } from "../tables/formatters.ts";
import { measuredPicture } from "./pictures/measuredPicture.ts";
import { escaped, list } from "./markup.ts";
import type { Section } from "./reportInput.ts";

/** What was dug, counted and harvested, and how much of it can be water; nothing where nothing was measured. */
export const evidence: Section = (input) => {
  const { comparison, scenario, shown } = input;
  const measured = comparison.evidence;
  if (measured === null) return null;
  const sentences = evidenceSentences(measured, scenario, shown.system);
  if (sentences.length === 0) return null;
  const { reconciliations, confidence } = measured;
  const figure =
    reconciliations.length === 0
      ? ""
      : `<figure>${measuredPicture(input, reconciliations)}<figcaption>${escaped(
          `Difference in yield: as measured (${percent(confidence)} interval), and as water explains it (${percent(confidence)} of the seasons).`,
        )}</figcaption></figure>`;
  return {
    heading: "Measured in the field",
    body: `${figure}<div class="told">${list(sentences.map(escaped))}</div>`,
  };
};
