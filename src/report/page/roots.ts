import { isSod } from "../../crop/crop.ts";
import { caseLetter } from "./reportStyle.ts";
import { called } from "./markup.ts";
import type { ReportInput, Section } from "./reportInput.ts";
import { dayWords, dugCaption } from "./pictures/dugMarks.ts";
import { rootsPicture } from "./pictures/rootsPicture.ts";

/** The roots of one season near the middle. */
export const roots: Section = (input) => ({
  heading: "The roots",
  body: `<figure>${rootsPicture(input)}<figcaption>${captionOf(input)}${dugCaption(input)}</figcaption></figure>`,
});

function captionOf({ scenario, comparison, season, shown }: ReportInput): string {
  const [first] = season.cases;
  const depths = scenario.cases.map(
    ({ name }, c) =>
      `<b>${caseLetter(c)}</b> ${called(name)} ${shown.depth(season.cases[c]!.frontMm.at(-1) ?? 0)} ${shown.length}`,
  );
  const which =
    comparison.method.runs === 1
      ? "The one season run"
      : `Run ${season.run} of ${comparison.method.runs}, the one in the middle`;
  if (isSod(scenario.cases[0].crop))
    return `${which}: growth begins ${dayWords(first!.sowingDay)} and ends ${dayWords(first!.maturityDay)}. Depth of the sod's roots: ${depths.join(", ")}.`;
  return (
    `${which}: sown ${dayWords(first!.sowingDay)}, in flower ${dayWords(first!.floweringDay)} (open dot), ` +
    `mature ${dayWords(first!.maturityDay)} (full dot). Depth at maturity: ${depths.join(", ")}.`
  );
}
