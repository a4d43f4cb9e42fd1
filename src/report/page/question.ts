import { isSod } from "../../crop/crop.ts";
import { sayMonthDay } from "../../quantity/dates.ts";
import { sayQuantity } from "../../quantity/sayQuantity.ts";
import type { Case } from "../../scenario/scenario.ts";
import { capital } from "../sentences/sentence.ts";
import type { ReportInput, Section } from "./reportInput.ts";
import { called, escaped } from "./markup.ts";

/** What is asked, in the words of who asks it, and for which field. */
export const question: Section = (input) => ({
  heading: "The question",
  body: `<p class="asked">${questionSaid(input)}</p><p class="where">${placeSaid(input)}</p>`,
});

function questionSaid({ scenario, comparison, shown }: ReportInput): string {
  const [first, ...others] = scenario.cases;
  const rain = rainSaid(comparison, shown);
  const crop = escaped(first.crop.name);
  if (others.length === 0)
    return `${rain}: how deep do the roots of ${crop} go, how much water do they find, and what does it yield?`;
  const named = orList(others.map(({ name }) => `“${called(name)}”`));
  return comparison.differences.every(({ onlyRootsDiffer }) => onlyRootsDiffer)
    ? `${rain}: how much more water does ${crop} take up, and how much more does it yield, with roots as in ${named} rather than “${called(first.name)}”?`
    : `${rain}: how much more water does ${crop} take up, and how much more does it yield, in ${named} rather than “${called(first.name)}”?`;
}

function rainSaid(
  { byRainTotal, method, annualRainMm }: ReportInput["comparison"],
  shown: ReportInput["shown"],
): string {
  const totals = byRainTotal.flatMap(({ rainTotalMm }) => rainTotalMm ?? []);
  const over = method.rainTotalOver === "season" ? "the season" : "a year";
  if (totals.length === 0) {
    return annualRainMm === null
      ? "With the rain as it came"
      : `With the rain as it came, ${shown.total(annualRainMm.p50)} ${shown.length} of it in a typical year`;
  }
  const [least, most] = [Math.min(...totals), Math.max(...totals)];
  const amount = least === most ? shown.total(least) : `${shown.total(least)} to ${shown.total(most)}`;
  return `With ${amount} ${shown.length} of rain ${over === "a year" ? over : `in ${over}`}`;
}

function placeSaid({ scenario, shown }: ReportInput): string {
  const { latitudeDeg, elevationM } = scenario.site;
  const [first] = scenario.cases;
  const latitude = `${Number(Math.abs(latitudeDeg).toFixed(2))}° ${latitudeDeg < 0 ? "S" : "N"}`;
  const fallow = first.fallowDays > 0 ? `, after ${fallowSaid(first)}` : "";
  return `${latitude}, ${sayQuantity(elevationM, "elevation", shown.system)} above the sea. ${capital(escaped(first.crop.name))}, ${isSod(first.crop) ? "its growth begins" : "sown"} ${sayMonthDay(first.crop.sowing)}${fallow}.`;
}

function fallowSaid({ fallowDays }: Case): string {
  return `${fallowDays} days of fallow`;
}

/** `a, b or c` */
function orList(items: readonly string[]): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} or ${items.at(-1)!}`;
}
