import { caseLetter } from "./reportStyle.ts";
import { called, escaped } from "./markup.ts";
import type { ReportInput, Section } from "./reportInput.ts";
import { changesOfSoil, soilPicture } from "./pictures/soilPicture.ts";

/** The soil as in a pit. */
export const soil: Section = (input) => ({
  heading: "The soil",
  body: `<figure>${soilPicture(input)}<figcaption>${captionOf(input)}</figcaption></figure>`,
});

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
    "Hatched: a layer that slows roots; the percentage is the share of their pace that they keep there, by the usual reading. The bar ends where roots end in a typical year.",
  ].join(" ");
}
