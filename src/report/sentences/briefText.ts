import type { CaseAnswer, Comparison } from "../../answer/comparison/comparison.ts";
import type { RowsThatChange } from "../../answer/runs/rowsThatChange.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { textWidth, wrap } from "../../wrap.ts";
import { shortened } from "../../drawing/text.ts";
import { differenceDigits } from "../tables/differenceDigits.ts";
import { fixed, percent, shownIn, type Formatters } from "../tables/formatters.ts";
import { rangeSigned } from "../tables/rangeSaid.ts";
import { chainSentences } from "./chainText.ts";
import { decidingDefaults } from "./defaultsText.ts";
import { useSaid } from "./field/digReadingsText.ts";
import { measuredYield } from "./field/measuredYield.ts";
import { shownMoney } from "./field/moneyText.ts";
import { doubtLines } from "./firstLine.ts";

/** What fits on the screen of a phone in a truck. */
const mostLines = 10;
const longestName = 26;

/** Some lines that stand together or go together. */
interface Part {
  readonly lines: readonly string[];
  /** Whether the answer is none without it. */
  readonly needed: boolean;
}

/**
 * The answer in ten lines of 80 columns: dollars first where a price is given, then yield and water, then the two defaults that
 * decide most. What does not fit goes, the last first; where what cannot go is more than ten lines, it is more.
 */
export function briefText(comparison: Comparison, scenario: Scenario, units: Units): string {
  const shown = shownIn(units);
  const { differences, defaults, chain } = comparison;
  const needed = (text: string): Part => ({ lines: wrap(text), needed: true });
  const wanted = (text: string): Part => ({ lines: wrap(text), needed: false });
  const parts = [
    ...doubtLines(comparison).map(needed),
    ...moneySentences(comparison, scenario, shown).map(needed),
    needed(whereSaid(comparison, shown)),
    ...differences.map((_, d) => (d === 0 ? needed : wanted)(pairSaid(comparison, d, shown))),
    ...differences.flatMap((_, d) =>
      otherReadings(comparison, d, scenario, shown).map(d === 0 ? needed : wanted),
    ),
    ...undecidedYears(comparison).map(needed),
    ...decidingDefaults(defaults).map(({ field, value }) =>
      needed(cut(`Not stated: ${field}, taken as ${value}`)),
    ),
    ...(chain === undefined ? [] : chainSentences(chain, shown).map(wanted)),
    ...measuredSaid(comparison, scenario, units).map(wanted),
    wanted(yieldsSaid(comparison)),
    ...otherTotals(comparison, shown).map(wanted),
  ];
  let left = mostLines - 1 - parts.reduce((sum, one) => sum + (one.needed ? one.lines.length : 0), 0);
  const lines = parts.flatMap((part) => {
    if (part.needed) return part.lines;
    if (part.lines.length > left) return [];
    left -= part.lines.length;
    return part.lines;
  });
  return `${[...lines, lastLine(comparison)].join("\n")}\n`;
}

/** `At 13 in of rain, against "as now" (8 years of 10):` */
function whereSaid({ rainTotalMm, method, cases, chain }: Comparison, shown: Formatters): string {
  const season = method.rainTotalOver === "season" ? " in the season" : "";
  const rain =
    rainTotalMm === null
      ? "With the rain as it came"
      : `At ${shown.total(rainTotalMm)} ${shown.length} of rain${season}`;
  const years = chain === undefined ? "" : ", year after year";
  const range = method.runs === 1 ? "" : " (8 years of 10)";
  const against = cases.length > 1 ? `, against ${named(cases[0]!)}` : "";
  return `${rain}${years}${against}${range}:`;
}

function pairSaid(comparison: Comparison, d: number, shown: Formatters): string {
  const digits = differenceDigits(comparison, d, shown);
  const { runs } = comparison.method;
  const { extraYield, extraWaterUsedMm, extraDepthMm, to } = comparison.differences[d]!;
  const grown = signed(extraYield, digits.yield, extraYield.unit, runs);
  const water = signed(extraWaterUsedMm, digits.water, `${shown.length} water`, runs);
  return `${named({ name: to })}: ${grown}, ${water}, roots ${signedNumber(extraDepthMm, shown.depth)} ${shown.length}`;
}

/** `"pan loosened": +5.81 USD/ac (-1.61 to 18.12), +929 on 160 ac, pays in 78 %` */
function moneySentences({ money, method }: Comparison, { yieldLine }: Scenario, shown: Formatters): string[] {
  if (money === null) return [];
  const { currency, areaHa, pairs } = money;
  const say = shownMoney(currency, yieldLine.unit, shown);
  return pairs.map(({ to, rows, netPerHa, netForField, chanceItPays }) => {
    const perLand = say.perLand(Object.values(netPerHa));
    const field =
      netForField === null || areaHa === null
        ? ""
        : `, ${signedNumber(netForField.p50, say.whole)} on ${say.area(areaHa)} ${say.land}`;
    return `${named({ name: to })}: ${signed(netPerHa, perLand, `${currency}/${say.land}`, method.runs)}${field}${rowsSaid(rows)}, pays in ${percent(chanceItPays)}`;
  });
}

/** `, 2 of 8 rows change`: the money is of the whole field, the bushels above it of the rows that change. */
function rowsSaid(rows: RowsThatChange | undefined): string {
  if (rows === undefined || rows.share > 1 - 1e-9) return "";
  const { share, rowsInAll } = rows;
  return rowsInAll === null
    ? `, ${percent(share)} of the rows change`
    : `, ${Math.round(share * rowsInAll)} of ${rowsInAll} rows change`;
}

/** `Dig read otherwise, "straight": +44 bu/ac, +40 USD/ac if the roots stopped where they were dug; ...` */
function otherReadings(
  comparison: Comparison,
  d: number,
  { yieldLine }: Scenario,
  shown: Formatters,
): string[] {
  const { digReadings: readings, money, differences } = comparison;
  const others = readings?.answers.slice(1) ?? [];
  if (readings === undefined || others.length === 0) return [];
  const { yield: sayYield } = differenceDigits(comparison, d, shown);
  const said = others.map(({ use, differences: each }) => {
    const { extraYield, netPerHa } = each[d]!;
    const grown = `${signedNumber(extraYield.p50, sayYield)} ${extraYield.unit}`;
    if (netPerHa === null || money === null) return `${grown} ${useSaid(use, readings)}`;
    const say = shownMoney(money.currency, yieldLine.unit, shown);
    const net = signedNumber(netPerHa.p50, say.perLand([netPerHa.p50]));
    return `${grown}, ${net} ${money.currency}/${say.land} ${useSaid(use, readings)}`;
  });
  return [`Dig read otherwise, ${named({ name: differences[d]!.to })}: ${said.join("; ")}`];
}

/** Years in a row are run with roots that go on only: that another reading was left open belongs to the answer. */
function undecidedYears({ chain, evidence }: Comparison): string[] {
  const fit = evidence?.dig?.fit ?? null;
  if (chain === undefined || fit === null || !fit.decides) return [];
  return fit.cases
    .filter(({ told }) => told.reading === "either")
    .map((one) =>
      cut(`The dig cannot tell if roots of ${named({ name: one.case })} stopped; here they go on`),
    );
}

function measuredSaid({ evidence }: Comparison, { yieldLine }: Scenario, units: Units): string[] {
  const said = measuredYield(yieldLine.unit, units);
  return (evidence?.reconciliations ?? []).map(
    ({ by, to, measured, explained }) =>
      `Measured by ${by}: ${named({ name: to })} ${said.more(measured.middle)}; water explains ${said.more(explained.middle)}`,
  );
}

function yieldsSaid({ cases }: Comparison): string {
  return `Yield, ${cases[0]!.yield.unit}: ${cases.map((one) => `${named(one)} ${fixed(one.yield.p50, 0)}`).join(", ")}`;
}

function otherTotals({ byRainTotal, rainTotalMm }: Comparison, shown: Formatters): string[] {
  const others = byRainTotal.filter((at) => at.rainTotalMm !== rainTotalMm && at.differences.length > 0);
  return others.map((at) => {
    const each = at.differences.map(
      ({ to, extraYield }) =>
        `${named({ name: to })} ${signedNumber(extraYield.p50, (value) => fixed(value, 1))} ${extraYield.unit}`,
    );
    return `At ${shown.total(at.rainTotalMm ?? 0)} ${shown.length}: ${each.join(", ")}`;
  });
}

function lastLine({ defaults, cautions, invented }: Comparison): string {
  return `${invented ? "Invented data. " : ""}${cautions.length} cautions: without --brief. ${defaults.length} defaults: --defaults.`;
}

/** `+2.5 bu/ac (0.8 to 5.5)` */
function signed(spread: Spread, say: (value: number) => string, unit: string, runs: number): string {
  const range = runs === 1 ? "" : ` (${rangeSigned(spread, say)})`;
  return `${signedNumber(spread.p50, say)} ${unit}${range}`;
}

function signedNumber(value: number, say: (value: number) => string): string {
  const text = say(value);
  return Number(text) > 0 ? `+${text}` : text;
}

function named({ name }: Pick<CaseAnswer, "name">): string {
  return `"${shortened(name, longestName, "...")}"`;
}

function cut(line: string): string {
  return shortened(line, textWidth, "...");
}
