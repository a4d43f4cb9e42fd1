import { countsUnripe, disagreementsSaid } from "../sentences/field/levelsText.ts";
import { evidenceSentences } from "../sentences/field/evidenceText.ts";
import { measuredYield } from "../sentences/field/measuredYield.ts";
import { plainReconciled } from "../sentences/field/reconcileText.ts";
import { measuredPicture } from "./pictures/measuredPicture.ts";
import { escaped, list } from "./markup.ts";
import { measuredTables } from "./measuredTables.ts";
import type { ReportInput, Section } from "./reportInput.ts";

/** What was dug, counted and harvested, as its tables, and what comes of it in a few plain sentences; nothing where nothing was measured. */
export const evidence: Section = (input) => {
  const { comparison, scenario, shown } = input;
  const measured = comparison.evidence;
  if (measured === null || measuredInFull(input).length === 0) return null;
  const { reconciliations, levels } = measured;
  const said = measuredYield(scenario.yieldLine.unit, shown.system);
  const names = scenario.cases.map(({ name }) => name);
  const unripe = countsUnripe(scenario.evidence?.counts ?? null);
  const sentences = [
    ...levels.flatMap((one) => disagreementsSaid(one, names, said, unripe)),
    ...reconciliations.map((one) => plainReconciled(one, said)),
  ];
  const figure =
    reconciliations.length === 0
      ? ""
      : `<figure>${measuredPicture(input, reconciliations)}<figcaption>${escaped(
          "Difference in yield, as measured and as water explains it; the bar is how far each could be off.",
        )}</figcaption></figure>`;
  return {
    heading: "Measured in the field",
    body: `${measuredTables(input, measured).join("")}${figure}<div class="told">${list(sentences.map(escaped))}</div>`,
  };
};

/** Every sentence about what was measured, with its intervals and what was fitted. */
export function measuredInFull({
  comparison: { evidence: measured },
  scenario,
  shown,
}: ReportInput): string[] {
  return measured === null ? [] : evidenceSentences(measured, scenario, shown.system);
}
