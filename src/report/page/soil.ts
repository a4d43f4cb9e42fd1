import { paceUsed } from "./paceUsed.ts";
import { caseLetter } from "./reportStyle.ts";
import { called, escaped } from "./markup.ts";
import type { ReportInput, Section } from "./reportInput.ts";
import { changesOfSoil, soilPicture } from "./pictures/soilPicture.ts";

/** The soil as in a pit. */
export const soil: Section = (input) => ({
  heading: "The soil",
  body: `<figure>${soilPicture(input)}<figcaption>${captionOf(input)}</figcaption></figure>`,
});

/** What the pace is read from: the same that the runs take it from. */
function readBy(input: ReportInput): string {
  const { scenario } = input;
  const paces = scenario.cases.flatMap(({ name, layers }) =>
    layers.map((layer) => paceUsed(input, name, layer)),
  );
  const byDig = paces.some((one) => one.byDig) ? ", as dug where it says so, else" : ",";
  return `${byDig} by density or penetrometer`;
}

function captionOf(input: ReportInput): string {
  const { scenario } = input;
  const [first] = scenario.cases;
  const others = changesOfSoil(input).map(
    ({ c, name, changes }) =>
      `<b>${caseLetter(c)}</b> ${called(name)}: ${changes.length === 0 ? "the same soil" : escaped(changes.join("; "))}.`,
  );
  return [
    `<b>A</b> ${called(first.name)}: as labeled.`,
    ...others,
    `Hatched: a layer that slows roots; pace is the share of it that they keep there${readBy(input)}. The bar ends where roots end in a typical year.`,
  ].join(" ");
}
