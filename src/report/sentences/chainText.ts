import type {
  ChainAnswer,
  ChainCase,
  ChainDifference,
  CropChain,
  ExtraOfYears,
} from "../../answer/chain/chainAnswer.ts";
import { bullets, wrap } from "../../wrap.ts";
import { capital } from "./sentence.ts";
import { fixed, percent, type Formatters } from "../tables/formatters.ts";
import { tableLines } from "../tables/textTable.ts";

/** First year and year after year, in words and tables. */

/** From this difference in depth on, roots are called deeper or shallower, mm. */
const tellingDepthMm = 5;
/** Less water than this on average is next to nothing, mm. As in the first sentence of a comparison. */
const hardlyAnyMm = 1;

/** A sentence for each later case, at the middle total; where timing is the difference, one more. */
export function chainSentences(chain: ChainAnswer, shown: Formatters): string[] {
  const asked = chain.byCrop[0]!;
  const mean = chain.rainTotalIs !== undefined ? "a mean of " : "";
  const where =
    chain.rainTotalMm === null
      ? ""
      : `At ${mean}${shown.total(chain.rainTotalMm)} ${shown.length} of rain${mean === "" ? "" : " a year"}, `;
  if (asked.differences.length === 0)
    return [
      capital(
        `${where}${asked.crop} year after year (${chain.rotation}): only one case, nothing to compare it with.`,
      ),
    ];
  return asked.differences.flatMap((one) => {
    const first = capital(`${where}${broughtSaid(one, asked.differences.length === 1, shown)}`);
    return [one.timingDiffers ? `${first} ${timingSaid(one, asked, shown)}` : first];
  });
}

/**
 * `the deeper roots bring 0.30 inches of water in the first year and next to nothing in a year after that, on average: the
 * rain wetted that depth in 1 year of 9.`
 */
function broughtSaid(one: ChainDifference, alone: boolean, shown: Formatters): string {
  const first = one.firstYear.extraWaterUsedMm.mean;
  const after = one.yearAfterYear.extraWaterUsedMm.mean;
  const isPlural = alone && one.onlyRootsDiffer && Math.abs(one.extraDepthMm) >= tellingDepthMm;
  const who = isPlural ? `the ${one.extraDepthMm > 0 ? "deeper" : "shallower"} roots` : `"${one.to}"`;
  const verb = (mm: number) => (mm < 0 ? (isPlural ? "cost" : "costs") : isPlural ? "bring" : "brings");
  const isLittle = (mm: number) => Math.abs(mm) < hardlyAnyMm;
  if (isNothing(one))
    return `${who} took up exactly as much water as "${one.from}" in every year: no difference in water or yield.`;
  const depth = isPlural && one.extraDepthMm > 0 ? "that depth" : "the soil below the shallower roots";
  const wetted = `the rain wetted ${depth} in ${wettedSaid(one.wettedShare)}`;
  if (isLittle(first) && isLittle(after))
    return `${who} ${verb(0)} next to nothing, in the first year and in a year after that: ${wetted}.`;
  const ofWater = ` ${shown.length === "in" ? "inches" : "mm"} of water`;
  const amount = (mm: number, what: string) =>
    isLittle(mm) ? "next to nothing" : `${shown.fineWater(Math.abs(mm))}${what}`;
  const told = isLittle(first) ? after : first;
  const isSame = isLittle(after) || verb(told) === verb(after);
  return `${who} ${verb(told)} ${amount(first, ofWater)} in the first year and ${isSame ? "" : `${verb(after)} `}${amount(after, isLittle(first) ? ofWater : "")} in a year after that, on average: ${wetted}.`;
}

/** Whether every year was the same, first and later, as far as they tell. What the rain wetted is then no reason. */
function isNothing({ firstYear, yearAfterYear }: ChainDifference): boolean {
  return [firstYear, yearAfterYear]
    .flatMap(({ extraWaterUsedMm, extraYield }) => [extraWaterUsedMm, extraYield])
    .every(({ mean, p10, p50, p90 }) => mean === 0 && p10 === 0 && p50 === 0 && p90 === 0);
}

/** Shares between a half and a third, and above a half, have no `1 year of` near enough. @example wettedSaid(0.11) // "1 year of 9" */
export function wettedSaid(share: number): string {
  if (share <= 0) return "no year";
  if (share < 0.02) return "hardly any year";
  if (share >= 0.95) return "nearly every year";
  if (share >= 0.55) return `${Math.round(10 * share)} years of 10`;
  if (share >= 0.45) return "1 year of 2";
  if (share >= 0.365) return "2 years of 5";
  return `1 year of ${Math.round(1 / share)}`;
}

function timingSaid(one: ChainDifference, { cases }: CropChain, shown: Formatters): string {
  const [from, to] = [one.from, one.to].map((name) => cases.find((each) => each.name === name)!);
  const mm = one.yearAfterYear.extraWaterUsedMm.mean;
  return `Year after year both take up as much (within ${shown.fineWater(Math.max(Math.abs(mm), 0.3))} ${shown.length}), but not at the same time: "${to!.name}" ${partsSaid(to!)}, "${from!.name}" ${partsSaid(from!)}. Timing, not amount, is the difference.`;
}

function partsSaid({ shareAfterFlowering, demandMetAroundFlowering }: ChainCase): string {
  return `${percent(shareAfterFlowering)} after flowering and ${percent(demandMetAroundFlowering)} of the demand met around it`;
}

/** What was run, and what the two answers are. */
export function chainIntroduction(chain: ChainAnswer): string {
  const crops = chain.crops.map((crop) => crop ?? "fallow").join(", ");
  const start = chain.startsAsStated
    ? `from the water ${chain.startsOn === undefined ? "stated" : `measured on ${chain.startsOn}`} on`
    : chain.warmUpYears === 0
      ? "from half of the available water on"
      : `after ${counted(chain.warmUpYears, "year")} under the first case's roots`;
  return `Years in a row (${crops}; the question is about ${chain.asked}): ${counted(chain.chains, "chain")}, each with a soil of its own draws, ${start}. First year: all cases begin with the same water. Year after year: each has lived with its own roots for more than ${chain.settlingYears} years. Mean, P10 and P90 of the years.`;
}

/** The two answers side by side, the path between them, and when each case takes up its water. */
export function chainLines(chain: ChainAnswer, shown: Formatters): string[] {
  const asked = chain.byCrop[0]!;
  return [
    ...wrap(chainIntroduction(chain)),
    ...(asked.differences.length === 0 ? [] : ["", ...sideBySide(chain, shown)]),
    ...asked.differences.flatMap((one) => ["", ...pathLines(one, shown)]),
    "",
    ...caseLines(chain, shown),
    ...(chain.byCrop.length > 1 && asked.differences.length > 0 ? ["", ...otherCrops(chain, shown)] : []),
  ];
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

function sideBySide({ byRainTotal, byCrop }: ChainAnswer, shown: Formatters): string[] {
  const unit = byCrop[0]!.differences[0]!.firstYear.extraYield.unit;
  const head = [
    ["", "first", "year", "", "year", "after", "year", "wetted", unit, unit],
    [`rain, ${shown.length}`, "mean", "P10", "P90", "mean", "P10", "P90", "years", "first", "after"],
  ];
  return byCrop[0]!.differences.flatMap(({ from, to }, d) => [
    ...(d > 0 ? [""] : []),
    ...wrap(`Extra water taken up, ${shown.length}, and yield: "${to}" against "${from}"`),
    ...tableLines({
      head,
      rows: byRainTotal.map((at) => {
        const one = at.byCrop[0]!.differences[d]!;
        return [
          at.rainTotalMm === null ? "as is" : shown.total(at.rainTotalMm),
          ...waterCells(one.firstYear, shown),
          ...waterCells(one.yearAfterYear, shown),
          percent(one.wettedShare),
          yieldCell(one.firstYear),
          yieldCell(one.yearAfterYear),
        ];
      }),
    }),
  ]);
}

export function waterCells(
  { extraWaterUsedMm: { mean, p10, p90 } }: ExtraOfYears,
  shown: Formatters,
): string[] {
  return [mean, p10, p90].map(shown.fineWater);
}

export function yieldCell({ extraYield: { mean, unit } }: ExtraOfYears): string {
  return fixed(mean, unit === "bu/ac" ? 1 : 0);
}

/** So many columns fit. */
const mostColumns = 9;

/** What the path is, and why it may have gaps. */
export function pathSaid({ from, to, path }: ChainDifference, shown: Formatters): string {
  const isWhole = path.every(({ year }, i) => year === i + 1);
  return `The path, ${shown.length}: extra water by year since the change, "${to}" against "${from}"${isWhole ? "" : "; a year that is left out has no harvest of this crop"}`;
}

function pathLines(difference: ChainDifference, shown: Formatters): string[] {
  const years = difference.path.slice(0, mostColumns);
  const row = (name: string, of: (year: (typeof years)[number]) => number) => [
    name,
    ...years.map((year) => shown.fineWater(of(year))),
  ];
  return [
    ...wrap(pathSaid({ ...difference, path: years }, shown)),
    ...tableLines({
      head: [["year", ...years.map(({ year }) => String(year))]],
      rows: [
        row("mean", (year) => year.extraWaterUsedMm.mean),
        row("P10", (year) => year.extraWaterUsedMm.p10),
        row("P90", (year) => year.extraWaterUsedMm.p90),
      ],
    }),
  ];
}

/** What the table of the cases holds. */
export function caseTimesSaid({ byCrop }: ChainAnswer): string {
  return `When it is taken up, year after year, ${byCrop[0]!.crop}: medians; stored is the share of the rain between crops that was there at sowing.`;
}

/** A case in numbers: taken up, its share after flowering, demand met around it, root depth, wetted to, at sowing, stored. */
export function caseCells(one: ChainCase, shown: Formatters): string[] {
  return [
    shown.water(one.transpirationMm),
    percent(one.shareAfterFlowering),
    percent(one.demandMetAroundFlowering),
    shown.depth(one.finalRootDepthMm),
    one.depthWettedMm === null ? "-" : shown.depth(one.depthWettedMm),
    shown.water(one.storedAtSowingMm),
    one.fallowStorageShare === null ? "-" : percent(one.fallowStorageShare),
  ];
}

function caseLines(chain: ChainAnswer, shown: Formatters): string[] {
  const { cases } = chain.byCrop[0]!;
  return [
    ...wrap(caseTimesSaid(chain)),
    ...tableLines({
      head: [
        ["", "taken", "after", "demand met", "root", "wetted", "at", ""],
        ["", "up", "flowering", "around it", "depth", "to", "sowing", "stored"],
      ],
      rows: cases.map((one) => [one.name, ...caseCells(one, shown)]),
    }),
  ];
}

/** The other crops of the rotation, a line each crop and difference. */
export function otherCropsSaid({ byCrop }: ChainAnswer, shown: Formatters): string[] {
  return byCrop
    .slice(1)
    .flatMap(({ crop, differences }) =>
      differences.map(
        ({ to, firstYear, yearAfterYear }) =>
          `${crop}, "${to}": ${shown.fineWater(firstYear.extraWaterUsedMm.mean)} and ${shown.fineWater(yearAfterYear.extraWaterUsedMm.mean)} ${shown.length}; yield ${yieldCell(firstYear)} and ${yieldCell(yearAfterYear)} ${firstYear.extraYield.unit}`,
      ),
    );
}

export const otherCropsHead = "The other crops of the rotation, extra water in the first year and after:";

function otherCrops(chain: ChainAnswer, shown: Formatters): string[] {
  return [otherCropsHead, ...bullets(otherCropsSaid(chain, shown))];
}
