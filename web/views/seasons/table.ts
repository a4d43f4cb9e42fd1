import { mmPerInch } from "../../../src/quantity/constants.ts";
import { csvText } from "../../../src/report/tables/csvText.ts";
import { roundForPrint } from "../../../src/report/tables/roundForPrint.ts";
import { generatedYear } from "../../../src/report/tables/yearSaid.ts";
import { fineYield, fixed, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../../pictures/kit/frame.tsx";
import type { SeasonRow } from "./rows.ts";

/** What a season's numbers are called and written as. */
export interface SeasonWords {
  /** Of the cases in the rows, in their order. */
  readonly names: readonly string[];
  readonly yieldUnit: string;
  /** Years are generated ones, and counted. */
  readonly isGenerated: boolean;
  readonly shown: Formatters;
}

interface Column {
  readonly head: string;
  /** As the rows have it, in the units shown; null where there is none. */
  readonly value: (row: SeasonRow) => number | null;
  readonly say: (value: number) => string;
}

/** The numbers of every season, in the order given. */
export function seasonsTable(rows: readonly SeasonRow[], told: SeasonWords): PictureTable {
  const columns = columnsOf(told, rows);
  return {
    head: columns.map(({ head }) => head),
    rows: rows.map((row) =>
      columns.map(({ value, say }) => {
        const one = value(row);
        return one === null ? "–" : say(one);
      }),
    ),
  };
}

/** The same for a spreadsheet, to six significant digits. */
export function seasonsCsv(rows: readonly SeasonRow[], told: SeasonWords): string {
  const columns = columnsOf(told, rows);
  return csvText([
    columns.map(({ head }) => head),
    ...rows.map((row) =>
      columns.map(({ value }) => {
        const one = value(row);
        return one === null ? null : roundForPrint(one);
      }),
    ),
  ]);
}

function columnsOf(
  { names, yieldUnit, shown, isGenerated }: SeasonWords,
  rows: readonly SeasonRow[],
): Column[] {
  const { length } = shown;
  const perUnit = length === "in" ? mmPerInch : 1;
  const whole = (value: number) => String(value);
  const water = (head: string, mm: (row: SeasonRow) => number | null, digits: number): Column => ({
    head: `${head}, ${length}`,
    value: (row) => {
      const found = mm(row);
      return found === null ? null : found / perUnit;
    },
    say: (value) => fixed(value, length === "in" ? digits : digits - 1),
  });
  const isPaired = names.length > 1;
  return [
    isGenerated
      ? { head: "Generated year", value: ({ year }) => generatedYear(year), say: whole }
      : { head: "Year", value: ({ year }) => year, say: whole },
    { head: "Run", value: ({ run }) => run + 1, say: whole },
    ...(rows.some(({ runsOfYear }) => runsOfYear > 1)
      ? [{ head: "Runs of the year", value: ({ runsOfYear }: SeasonRow) => runsOfYear, say: whole }]
      : []),
    water("Rain in the season", ({ seasonRainMm }) => seasonRainMm, 1),
    water("Rain in the year", ({ annualRainMm }) => annualRainMm, 1),
    ...(isPaired
      ? [
          water("Extra water used", ({ extraWaterMm }) => extraWaterMm, 2),
          {
            head: `Extra yield, ${yieldUnit}`,
            value: ({ extraYield }: SeasonRow) => extraYield,
            say: (value: number) => fineYield(value, yieldUnit),
          },
        ]
      : []),
    ...names.flatMap((name, i): Column[] => [
      water(`${name}: root depth`, ({ cases }) => cases[i]!.rootDepthMm, 1),
      water(`${name}: water used`, ({ cases }) => cases[i]!.waterUseMm, 1),
      {
        head: `${name}: yield, ${yieldUnit}`,
        value: ({ cases }) => cases[i]!.yield,
        say: (value) => fixed(value, 0),
      },
    ]),
  ];
}
