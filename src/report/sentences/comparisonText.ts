import type { AnswerAtRain, Comparison, DifferenceAnswer } from "../../answer/comparison/comparison.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import type { Units } from "../../quantity/kinds.ts";
import { differenceDigits } from "../tables/differenceDigits.ts";
import { chainLines, chainSentences } from "./chainText.ts";
import { defaultLines, type DefaultsTold } from "./defaultsText.ts";
import { doubtLines, firstLines } from "./firstLine.ts";
import { methodLines } from "./methodText.ts";
import { fixed, percent, shownIn, type Formatters } from "../tables/formatters.ts";
import { tableLines } from "../tables/textTable.ts";
import { bullets, wrap } from "../../wrap.ts";

export type { DefaultsTold };

/**
 * The answer for people: plain words first, then tables, defaults, method and cautions, in 80 columns.
 *
 * @param more parts of a scenario that tells more, in lines: see `fieldParts`
 */
export function comparisonText(
  comparison: Comparison,
  units: Units,
  defaultsTold: DefaultsTold,
  more: readonly (readonly string[])[] = [],
): string {
  const shown = shownIn(units);
  const { chain } = comparison;
  const doubted = doubtLines(comparison).flatMap((line) => wrap(line));
  const plain = firstLines(comparison, shown)
    .slice(comparison.doubts.length)
    .flatMap((line) => wrap(line));
  const lines = [
    ...doubted,
    ...(chain === undefined ? plain : chainSentences(chain, shown).flatMap((line) => wrap(line))),
    "",
    ...wrap(`${comparison.scenario}${comparison.invented ? " (invented data)" : ""}`),
    "",
    ...(chain === undefined
      ? []
      : [...chainLines(chain, shown), "", `Year after year, ${chain.asked}`, ...plain, ""]),
    ...caseLines(comparison, shown),
    ...(comparison.differences.length > 0 ? ["", ...differenceLines(comparison, shown)] : []),
    ...more.flatMap((lines) => ["", ...lines]),
    ...(comparison.defaults.length > 0 ? ["", ...defaultLines(comparison.defaults, defaultsTold)] : []),
    "",
    "Method",
    ...methodLines(comparison, shown),
    ...(comparison.notes.length > 0 ? ["", "Noticed", ...bullets(comparison.notes)] : []),
    "",
    "Cautions",
    ...bullets(comparison.cautions),
  ];
  return `${lines.join("\n")}\n`;
}

/** Tables in groups: a heading line, then that group's rows; all rows share their widths. */
interface Group {
  readonly heading: string;
  readonly rows: readonly (readonly string[])[];
}

function groupedLines(head: readonly (readonly string[])[], groups: readonly Group[]): string[] {
  const lines = tableLines({ head, rows: groups.flatMap(({ rows }) => rows) });
  let next = head.length;
  return [
    ...lines.slice(0, head.length),
    ...groups.flatMap(({ heading, rows }) => {
      const from = next;
      next += rows.length;
      return [...wrap(heading), ...lines.slice(from, next)];
    }),
  ];
}

function caseLines({ byRainTotal, cases, method }: Comparison, shown: Formatters): string[] {
  const unit = cases[0]!.yield.unit;
  const yields = spreadColumn(
    byRainTotal.flatMap((at) => at.cases.map((one) => spreadTexts(one.yield, (v) => fixed(v, 0)))),
    method.runs,
  );
  const head = [
    ["", "root", "water", "by", "by", "", "", "stored at", `yield, ${unit}`],
    [`rain, ${shown.length}`, "depth", "use", "crop", "soil", "runoff", "drained", "sowing", yields.head],
  ];
  const groups = cases.map((_, c) => ({
    heading: `"${cases[c]!.name}"`,
    rows: byRainTotal.map((at) => {
      const one = at.cases[c]!;
      return [
        rainCell(at, shown),
        shown.depth(one.finalRootDepthMm),
        shown.water(one.waterUseMm),
        shown.water(one.transpirationMm),
        shown.water(one.evaporationMm),
        shown.water(one.runoffMm),
        shown.water(one.drainageMm),
        shown.water(one.storedAtSowingMm),
        yields.cell(spreadTexts(one.yield, (v) => fixed(v, 0))),
      ];
    }),
  }));
  return [
    ...wrap(
      `The cases, ${shown.length}: ${method.runs === 1 ? "one run" : `a typical year (medians of ${method.runs} runs)`}, from sowing to maturity. Water use is what the crop transpires and the soil evaporates.${method.runs === 1 ? "" : " P10 and P90: one year in ten is below, one above."}`,
    ),
    "",
    ...groupedLines(head, groups),
  ];
}

function differenceLines(comparison: Comparison, shown: Formatters): string[] {
  const { byRainTotal, differences, method } = comparison;
  const unit = differences[0]!.extraYield.unit;
  const digits = differences.map((_, d) => differenceDigits(comparison, d, shown));
  const usedTexts = (one: DifferenceAnswer, d: number) => spreadTexts(one.extraWaterUsedMm, digits[d]!.water);
  const yieldTexts = (one: DifferenceAnswer, d: number) => spreadTexts(one.extraYield, digits[d]!.yield);
  const used = spreadColumn(
    byRainTotal.flatMap((at) => at.differences.map(usedTexts)),
    method.runs,
  );
  const yields = spreadColumn(
    byRainTotal.flatMap((at) => at.differences.map(yieldTexts)),
    method.runs,
  );
  const head = [
    ["", "extra", "1 rule", "2 stored", "3 taken up", `yield, ${unit}`, "how"],
    [`rain, ${shown.length}`, "depth", "of thumb", "there", used.head, yields.head, "often"],
  ];
  const groups = differences.map(({ from, to }, d) => ({
    heading: `"${to}" against "${from}"`,
    rows: byRainTotal.map((at) => {
      const one = at.differences[d]!;
      return [
        rainCell(at, shown),
        shown.depth(one.extraDepthMm),
        digits[d]!.water(one.ruleOfThumbMm),
        digits[d]!.water(one.storedInExtraDepthMm),
        used.cell(usedTexts(one, d)),
        yields.cell(yieldTexts(one, d)),
        percent(one.shareOfSeasonsItMattered),
      ];
    }),
  }));
  return [
    ...wrap(
      `The differences, ${shown.length}: each run against the same run of the first case, same weather, same draws.`,
    ),
    "",
    ...groupedLines(head, groups),
    "",
    ...bullets([
      "1 Rule of thumb: extra depth times available water capacity. 2 Stored there: available water in the extra depth on the morning of sowing. 3 Taken up: what the crop took up more, sowing to maturity; water use counts the soil's evaporation too.",
      `How often: share of the seasons with a difference of ${shown.water(method.matteredFromMm)} ${shown.length} or more in water taken up.`,
      ...differences.flatMap((one) => floweringSaid(one, differences.length > 1)),
    ]),
  ];
}

function floweringSaid(difference: DifferenceAnswer, named: boolean): string[] {
  const { shareAfterFlowering: share, to } = difference;
  if (share === null) return [];
  const whose = named ? ` ("${to}")` : "";
  const what = "of the difference in transpiration, all runs together";
  const much = share > 1 ? "all" : share < 0 ? "none" : percent(share);
  const turned =
    share > 1
      ? "; before it the difference ran the other way"
      : share < 0
        ? "; there the difference ran the other way"
        : "";
  return [`After flowering${whose}: ${much} ${what}${turned}.`];
}

function rainCell({ rainTotalMm }: AnswerAtRain, shown: Formatters): string {
  return rainTotalMm === null ? "as is" : shown.total(rainTotalMm);
}

type ThreeTexts = readonly [p10: string, p50: string, p90: string];

function spreadTexts({ p10, p50, p90 }: Spread, say: (value: number) => string): ThreeTexts {
  return [say(p10), say(p50), say(p90)];
}

/** Spreads as cells of three numbers of equal width; of one run, as the one number that it is. */
function spreadColumn(
  spreads: readonly ThreeTexts[],
  runs: number,
): { head: string; cell: (spread: ThreeTexts) => string } {
  if (runs === 1) return { head: "", cell: ([, only]) => only };
  const width = Math.max(3, ...spreads.flat().map((text) => text.length));
  const join = (cells: readonly string[]) => cells.map((cell) => cell.padStart(width)).join(" ");
  return { head: join(["P10", "P50", "P90"]), cell: join };
}
