import type { EvidenceAnswer } from "../../answer/comparison/evidenceAnswer.ts";
import type { DugAnswer } from "../../answer/dig/digAnswer.ts";
import { measuredYield, type MeasuredYield } from "../sentences/field/measuredYield.ts";
import { called, escaped, table } from "./markup.ts";
import type { ReportInput } from "./reportInput.ts";
import { caseLetter } from "./reportStyle.ts";

/** What was dug, counted and harvested, as its tables. */

/** More strips than these are told by their means, least and most. */
const mostPairs = 6;

export function measuredTables(input: ReportInput, measured: EvidenceAnswer): string[] {
  const said = measuredYield(input.scenario.yieldLine.unit, input.shown.system);
  return [dugTable(input, measured), countedTable(input, measured, said), stripsTable(input, said)].filter(
    (one) => one !== "",
  );
}

function dugTable({ scenario, shown }: ReportInput, { dig }: EvidenceAnswer): string {
  if (dig === null) return "";
  const letterOf = (name: string) => caseLetter(scenario.cases.findIndex((one) => one.name === name));
  const isTurned = dig.groups.some(({ turnedAtMm }) => turnedAtMm !== undefined);
  const isTold = dig.groups.some(({ ways }) => ways !== undefined);
  return table({
    caption: `Dug: deepest root of a plant, ${shown.length}`,
    head: [
      "",
      "dug on",
      "plants",
      "least",
      "middle",
      "most",
      ...(isTurned ? ["turned at"] : []),
      ...(isTold ? ["they"] : []),
    ],
    rows: dig.groups.map((one) => [
      `<b>${letterOf(one.case)}</b> ${called(one.case)}${placeSaid(one.rowPosition)}`,
      one.date,
      String(one.depthMm.n),
      shown.depth(one.depthMm.smallest!),
      shown.depth(one.depthMm.median!),
      shown.depth(one.depthMm.largest!),
      ...(isTurned ? [one.turnedAtMm === undefined ? "" : shown.depth(one.turnedAtMm)] : []),
      ...(isTold ? [`<span class="words">${waysSaid(one)}</span>`] : []),
    ]),
  });
}

/** `3 turned aside, 1 straight` */
function waysSaid({ ways = {} }: DugAnswer): string {
  return Object.entries(ways)
    .map(([way, count]) => `${count} ${way}`)
    .join(", ");
}

function countedTable({ scenario }: ReportInput, { counts }: EvidenceAnswer, said: MeasuredYield): string {
  if (counts === null) return "";
  const year = scenario.evidence?.counts?.year ?? null;
  return table({
    caption: `Counted${inYear(year)}, ${said.unit} by spot`,
    head: ["", "spots", "least", "mean", "most"],
    rows: counts.groups.map(({ caseIndex, rowPosition, spotsKgPerHa, estimate }) => [
      `<b>${caseLetter(caseIndex)}</b> ${called(scenario.cases[caseIndex]!.name)}${placeSaid(rowPosition)}`,
      String(spotsKgPerHa.length),
      said.size(Math.min(...spotsKgPerHa)),
      estimate.value === null ? "" : said.size(estimate.value),
      said.size(Math.max(...spotsKgPerHa)),
    ]),
  });
}

function stripsTable({ scenario }: ReportInput, said: MeasuredYield): string {
  const strips = scenario.evidence?.strips ?? null;
  if (strips === null || strips.pairs.length === 0) return "";
  const { caseIndexes, pairs, year } = strips;
  const shownPairs = pairs.length <= mostPairs;
  const rows = caseIndexes.map((caseIndex, side) => {
    const yields = pairs.map((pair) => pair[side]!);
    const known = yields.filter((one) => one !== null);
    const cells = shownPairs
      ? yields.map((one) => (one === null ? "–" : said.size(one)))
      : [
          String(known.length),
          ...(known.length === 0
            ? ["–", "–"]
            : [said.size(Math.min(...known)), said.size(Math.max(...known))]),
        ];
    return [
      `<b>${caseLetter(caseIndex)}</b> ${called(scenario.cases[caseIndex]!.name)}`,
      ...cells,
      known.length === 0 ? "–" : said.size(known.reduce((sum, one) => sum + one, 0) / known.length),
    ];
  });
  return table({
    caption: `Strips${inYear(year)}, ${said.unit}${shownPairs ? " by pair" : ""}`,
    head: ["", ...(shownPairs ? pairs.map((_, p) => String(p + 1)) : ["strips", "least", "most"]), "mean"],
    rows,
  });
}

function inYear(year: number | null): string {
  return year === null ? "" : ` in ${year}`;
}

function placeSaid(rowPosition: string | null): string {
  return rowPosition === null ? "" : `, ${escaped(rowPosition)}`;
}
