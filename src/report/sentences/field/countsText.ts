import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { CountedGroup, Counts } from "../../../evidence/counts/counts.ts";
import type {
  CountsAnswer,
  CountsDifference,
  GroupYield,
  WeightRange,
} from "../../../evidence/counts/countsAnswer.ts";
import type { Units } from "../../../quantity/kinds.ts";
import { bullets, wrap } from "../../../wrap.ts";
import { countSaid, howManyLines, noIntervalSaid, shareSaid as percentSaid, spots } from "./howManyText.ts";
import { capital } from "../sentence.ts";
import { measuredYield, type MeasuredYield } from "./measuredYield.ts";
import { fixed, percent } from "../../tables/formatters.ts";
import { tableLines } from "../../tables/textTable.ts";

/** Guides ask for at least so many spots: corn, wheat and sorghum alike (read). */
const fewestSpots = 5;

/** A difference that one would want to see, kg/ha, and the chance with which to see it. */
export interface WantedYield {
  readonly kgPerHa: number;
  readonly chance: number;
}

/** Counts in plain words, 80 columns: differences first, then each case, then what to mind. */
export function countsLines(
  counts: Counts,
  answer: CountsAnswer,
  caseNames: readonly string[],
  unit: YieldUnit,
  system: Units,
  wanted: WantedYield | null = null,
): string[] {
  return [
    ...countsSentences(counts, answer, caseNames, unit, system, wanted).flatMap((line) => wrap(line)),
    "",
    ...groupTable(counts, answer, caseNames, measuredYield(unit, system)),
    "",
    ...bullets(countsCautions(counts, answer)),
  ].slice(answer.differences.length === 0 ? 1 : 0);
}

/** The differences alone, a sentence or two each. */
export function countsSentences(
  counts: Counts,
  answer: CountsAnswer,
  caseNames: readonly string[],
  unit: YieldUnit,
  system: Units,
  wanted: WantedYield | null = null,
): string[] {
  const said = measuredYield(unit, system);
  const name = (c: number) => `"${caseNames[c]}"`;
  return answer.differences.flatMap((one) => differenceSentences(counts, answer, one, name, said, wanted));
}

function differenceSentences(
  { confidence }: Counts,
  { groups }: CountsAnswer,
  one: CountsDifference,
  name: (caseIndex: number) => string,
  said: MeasuredYield,
  wanted: WantedYield | null,
): string[] {
  const { difference, layout, byWeight, paired, caseIndex, againstIndex, rowPosition } = one;
  const where = rowPosition === null ? "" : ` (${rowPosition})`;
  const seen = `By counts ${name(caseIndex)}${where} yields ${said.more(difference.value!)} than ${name(againstIndex)}`;
  const lines: string[] = [];
  if (difference.interval === null)
    lines.push(`${seen}, but nothing says how sure: ${noIntervalSaid(difference.why!, spots)}.`);
  else {
    const { low, high } = difference.interval;
    const tells =
      low > 0 || high < 0 ? "the spots tell the cases apart" : "the spots can't tell that from nothing";
    lines.push(
      `${seen}, ${said.moreRange(low, high)} (${percent(confidence)} interval${byWeight === null ? "" : " of the spots alone"}${paired ? ", spots in pairs" : ""}): ${tells}.`,
    );
  }
  if (byWeight !== null)
    lines.push(
      `Kernel weight alone moves the difference from ${said.moreRange(byWeight.lowKgPerHa, byWeight.highKgPerHa)}${shareSaid(byWeight)}; the interval above leaves that out.`,
    );
  if (one.sharedWeight)
    lines.push(
      "Both cases are given the same kernel weight, as none was weighed: if one case filled its kernels better, this difference leaves that out.",
    );
  if (layout !== null) {
    const at = (c: number) =>
      groups.find((group) => group.caseIndex === c && group.rowPosition === rowPosition)!.spread.n;
    lines.push(
      ...howManyLines(
        {
          layout,
          now: Math.min(at(caseIndex), at(againstIndex)),
          reach: (difference.interval!.high - difference.interval!.low) / 2,
          confidence,
          wanted:
            wanted === null
              ? null
              : { difference: wanted.kgPerHa, said: said.plain(wanted.kgPerHa), chance: wanted.chance },
        },
        spots,
      ),
    );
  }
  return lines;
}

function shareSaid({ share }: WeightRange): string {
  return share === null ? "" : `, ${percentSaid(share)} of what is not known`;
}

function groupTable(
  { groups }: Counts,
  { groups: yields }: CountsAnswer,
  caseNames: readonly string[],
  said: MeasuredYield,
): string[] {
  return tableLines({
    head: [["Yield by counts", "spots", said.unit, "interval", "vary", "by kernel weight"]],
    rows: yields.map((one, g) => {
      const { interval, value } = one.estimate;
      const { caseIndex, rowPosition } = groups[g]!;
      return [
        `${caseNames[caseIndex]}${rowPosition === null ? "" : `, ${rowPosition}`}`,
        `${one.spread.n}`,
        said.size(value!),
        interval === null ? "-" : rangeOfNumbers(Math.max(0, interval.low), interval.high, said),
        one.spread.variation === null ? "-" : `${fixed(one.spread.variation * 100, 0)} %`,
        one.byWeight === null
          ? "weighed"
          : rangeOfNumbers(one.byWeight.lowKgPerHa, one.byWeight.highKgPerHa, said),
      ];
    }),
  });
}

function rangeOfNumbers(low: number, high: number, said: MeasuredYield): string {
  return `${said.size(low)} to ${said.size(high)}`;
}

/** What to mind about these counts. */
export function countsCautions(
  { groups, crop }: Counts,
  { groups: yields, differences }: CountsAnswer,
): string[] {
  const cautions: string[] = [];
  const few = groups.filter((group) => group.spots.length < fewestSpots);
  if (few.length > 0)
    cautions.push(
      `${capital(countSaid(few[0]!.spots.length, spots))} ${few[0]!.spots.length === 1 ? "is" : "are"} few: guides ask for at least five of each case, more in large fields (read).`,
    );
  const firstCase = Math.min(...groups.map(({ caseIndex }) => caseIndex));
  for (const { caseIndex, rowPosition } of groups) {
    const met = differences.some((one) => one.caseIndex === caseIndex && one.rowPosition === rowPosition);
    if (caseIndex !== firstCase && !met)
      cautions.push(
        `Counts ${rowPosition === null ? "without a row position" : `at "${rowPosition}"`} have no match in the first case counted, so they are not compared.`,
      );
  }
  const odd = groups.reduce((sum, group) => sum + oddRowsOf(group), 0);
  if (odd > 0)
    cautions.push(
      `${odd} ${odd === 1 ? "ear has" : "ears have"} an odd number of kernel rows; rows come in pairs, so count again (common practice, no source).`,
    );
  const unripe = groups.some(({ stage }) => stage !== "ripe");
  if (unripe) cautions.push(seedStillSet(crop, groups));
  const usual = groups.filter(({ weight }) => !weight.weighed);
  if (usual.length > 0) {
    const most = yields.reduce<number | null>(
      (best, { byWeight }: GroupYield) =>
        byWeight?.share === null || byWeight === null ? best : Math.max(best ?? 0, byWeight.share),
      null,
    );
    cautions.push(
      `${usual[0]!.weight.per === "seed size" ? "Seed size was judged" : `The weight of a ${usual[0]!.weight.per} is a usual one`}, not weighed${most === null ? "" : `: up to ${percentSaid(most)} of what is not known of a case's yield`}. Source: ${usual[0]!.weight.source}.`,
    );
  }
  if (crop === "corn")
    cautions.push(
      "With care such estimates of corn are within about 20 bu/ac (1250 kg/ha) of the harvest (memory).",
    );
  if (groups.some(({ weight }) => weight.per === "seed size"))
    cautions.push(
      "A survey that went by weight a head came out 29 % above the harvest; counts of heads are reliable, weight a head is not (USDA 1985, read).",
    );
  return cautions;
}

function oddRowsOf({ spots: all }: CountedGroup): number {
  return all.reduce((sum, { per }) => sum + (per.kind === "kernels" ? per.oddRows : 0), 0);
}

function seedStillSet(crop: string, groups: readonly CountedGroup[]): string {
  if (crop === "corn" && groups.some(({ stage }) => stage === "before milk"))
    return "Counted before milk: kernels may still abort, so the estimate is likely too high (Purdue and Ohio State extension, read).";
  if (crop === "grain sorghum")
    return "Seed weight is still being set: at the usual time of such an estimate only 50 to 75 % of it is there (Kansas State Univ. eUpdate 608, read).";
  return "Unless the grain was ripe, its weight was still being set when it was counted: what follows can raise or lower it.";
}
