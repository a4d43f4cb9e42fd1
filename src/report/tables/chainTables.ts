import type { ChainAnswer, ExtraOfYears } from "../../answer/chain/chainAnswer.ts";
import { caseCells, waterCells, wettedSaid, yieldCell } from "../sentences/chainText.ts";
import type { Formatters } from "./formatters.ts";

/** Years in a row as tables with whole headings, for the page and the report. */

export interface TableOfTexts {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Rows as columns: a phone holds few of these, and they may be many. */
export function turned({ head, rows }: TableOfTexts): TableOfTexts {
  const [corner = "", ...names] = head;
  return {
    head: [corner, ...rows.map(([first = ""]) => first)],
    rows: names.map((name, i) => [name, ...rows.map((row) => row[i + 1] ?? "")]),
  };
}

/** First year and year after year side by side, a row for each total of rain. */
export function sideBySideTable({ byRainTotal }: ChainAnswer, d: number, shown: Formatters): TableOfTexts {
  const { unit } = byRainTotal[0]!.byCrop[0]!.differences[d]!.firstYear.extraYield;
  return {
    head: [
      `Rain, ${shown.length}`,
      "First year",
      "P10 to P90",
      "Year after year",
      "P10 to P90",
      "Soil below wetted in",
      `First year, ${unit}`,
      `Year after year, ${unit}`,
    ],
    rows: byRainTotal.map((at) => {
      const one = at.byCrop[0]!.differences[d]!;
      return [
        at.rainTotalMm === null ? "as it came" : shown.total(at.rainTotalMm),
        ...rangeCells(one.firstYear, shown),
        ...rangeCells(one.yearAfterYear, shown),
        wettedSaid(one.wettedShare),
        yieldCell(one.firstYear),
        yieldCell(one.yearAfterYear),
      ];
    }),
  };
}

function rangeCells(extra: ExtraOfYears, shown: Formatters): string[] {
  const [mean = "", p10 = "", p90 = ""] = waterCells(extra, shown);
  return [mean, `${p10} to ${p90}`];
}

/** When each case takes up its water, and how the fallow fills its soil: a row a case. */
export function caseTimesTable({ byCrop }: ChainAnswer, shown: Formatters): TableOfTexts {
  return {
    head: [
      "",
      `Taken up, ${shown.length}`,
      "After flowering",
      "Demand met around it",
      `Root depth, ${shown.length}`,
      `Wetted to, ${shown.length}`,
      `At sowing, ${shown.length}`,
      "Rain stored",
    ],
    rows: byCrop[0]!.cases.map((one) => [one.name, ...caseCells(one, shown)]),
  };
}
