import type { CaseNow, Outlook } from "../../answer/outlook/outlook.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { bullets, wrap } from "../../wrap.ts";
import { fixed, percent, shownIn, type Formatters } from "../tables/formatters.ts";
import { tableLines } from "../tables/textTable.ts";
import { methodParagraphs } from "./methodText.ts";
import { outlookLines, yieldDigits } from "./outlookLine.ts";

/** The season under way for people: plain words first, then tables, method and cautions, in 80 columns. */
export function outlookText(outlook: Outlook, units: Units): string {
  const shown = shownIn(units);
  const lines = [
    ...outlookLines(outlook, shown).flatMap((line) => wrap(line)),
    "",
    ...wrap(`${outlook.scenario}${outlook.invented ? " (invented data)" : ""}`),
    "",
    ...nowLines(outlook, shown),
    "",
    ...layerLines(outlook, shown),
    "",
    ...endLines(outlook, shown),
    ...(outlook.differences.length > 0 ? ["", ...differenceLines(outlook, shown)] : []),
    "",
    ...wrap(
      `Defaults used: ${outlook.defaults.length}; "rootfront check" tells each and where it comes from.`,
    ),
    "",
    "Method",
    ...methodLines(outlook, shown),
    ...(outlook.notes.length > 0 ? ["", "Noticed", ...bullets(outlook.notes)] : []),
    "",
    "Cautions",
    ...bullets(outlook.cautions),
  ];
  return `${lines.join("\n")}\n`;
}

type Texts = readonly [p10: string, p50: string, p90: string];

const texts = ({ p10, p50, p90 }: Spread, say: (value: number) => string): Texts => [
  say(p10),
  say(p50),
  say(p90),
];

function nowLines({ now, date, method }: Outlook, shown: Formatters): string[] {
  const head = [
    ["", "root", "within", "", "", "below", "usual", "lasts,", "", "", "used", "demand"],
    ["", "depth", "P10", "P50", "P90", "them", "a day", "P10", "P50", "P90", "so far", "met"],
  ];
  const rows = now.map((one) => [
    `"${one.name}"`,
    shown.depth(one.rootFrontMm.p50),
    ...texts(one.availableInRootsMm, shown.water),
    shown.water(one.availableBelowRootsMm.p50),
    shown.fineWater(one.usualDemandMmPerDay),
    ...daysSaid(one),
    shown.water(one.takenUpSoFarMm),
    percent(one.demandMetSoFar),
  ]);
  return [
    ...wrap(
      `Available water on the evening of ${date}, ${shown.length}; medians of ${method.runs} runs where no range is given. It lasts so many days at the usual demand; "ripe": until the crop is ripe.`,
    ),
    "",
    ...tableLines({ head, rows }),
  ];
}

function daysSaid({ lastsDays, daysToMaturity }: CaseNow): Texts {
  if (daysToMaturity.p90 === 0) return ["-", "-", "-"];
  const say = (days: number | null) => (days === null ? "ripe" : String(days));
  return [say(lastsDays.p10), say(lastsDays.p50), say(lastsDays.p90)];
}

function layerLines({ now }: Outlook, shown: Formatters): string[] {
  const head = [["", "from", "to", "available", "within the roots"]];
  const rows = now.flatMap((one) => [
    [`"${one.name}"`, "", "", "", ""],
    ...one.layers.map((layer) => [
      `  ${layer.name}`,
      shown.depth(layer.topMm),
      shown.depth(layer.bottomMm),
      shown.water(layer.availableMm),
      shown.water(layer.inRootsMm),
    ]),
  ]);
  return [...wrap(`By layer, ${shown.length}, medians.`), "", ...tableLines({ head, rows })];
}

function endLines({ end, otherYears }: Outlook, shown: Formatters): string[] {
  const unit = end[0]!.yield.unit;
  const head = [
    ["", "root", "from now", "", "", "in all", "", "", unit, "", ""],
    ["", "depth", "P10", "P50", "P90", "P10", "P50", "P90", "P10", "P50", "P90"],
  ];
  const rows = end.map((one) => [
    `"${one.name}"`,
    shown.depth(one.finalRootDepthMm),
    ...texts(one.takenUpFromNowMm, shown.water),
    ...texts(one.takenUpMm, shown.water),
    ...texts(one.yield, (value) => fixed(value, 0)),
  ]);
  return [
    ...wrap(
      `How the season may end over ${otherYears.count} other years (${otherYears.first} to ${otherYears.last}): root depth, water taken up by the crop, ${shown.length}, and yield. P10 and P90: one end in ten is below, one above.`,
    ),
    "",
    ...tableLines({ head, rows }),
  ];
}

function differenceLines({ differences }: Outlook, shown: Formatters): string[] {
  const head = [["", "P10", "P50", "P90"]];
  const rows = differences.flatMap((one) => [
    [`"${one.to}" against "${one.from}"`, "", "", ""],
    [`  within the roots now, ${shown.length}`, ...texts(one.extraInRootsNowMm, shown.fineWater)],
    [`  taken up from now, ${shown.length}`, ...texts(one.extraWaterFromNowMm, shown.fineWater)],
    [`  taken up in all, ${shown.length}`, ...texts(one.extraWaterUsedMm, shown.fineWater)],
    [`  yield, ${one.extraYield.unit}`, ...texts(one.extraYield, yieldDigits(one))],
  ]);
  return [
    ...wrap("The differences, each run against the same run of the first case: same year, same draws."),
    "",
    ...tableLines({ head, rows }),
  ];
}

function methodLines({ method, end }: Outlook, shown: Formatters): string[] {
  return bullets([
    "The run begins as in a comparison and goes by the record up to this day. Each other year then brings the days that follow this one in it, to maturity; every year is met equally often. The usual demand is Kcb x reference ET of the crop's own course, the mean of those years.",
    "Within the roots: water above wilting point from the surface to the root front.",
    ...methodParagraphs({ method, cases: end }, shown),
  ]);
}
