import type { CaseNow, Outlook, OutlookDifference } from "../../answer/outlook/outlook.ts";
import { fixed, percent, type Formatters } from "../tables/formatters.ts";
import { rangeMoreOrLess } from "../tables/rangeSaid.ts";

/** Stages as FAO-56 names them, and what a grower sees. */
const stagesSeen: Readonly<Record<string, string>> = {
  initial: "still small",
  development: "growing towards full cover",
  "mid-season": "at full cover, from about flowering on",
  "late season": "ripening",
};

/** Below this a median difference is not worth a number, mm. */
const hardlyAnyMm = 1;

/** Where the crop stands, what its roots reach, and how the season may end: in plain words, a paragraph each. */
export function outlookLines(outlook: Outlook, shown: Formatters): string[] {
  const { now, date, differences } = outlook;
  const first = now[0]!;
  return [
    `On ${date} ${first.crop} sown ${first.sown} is ${stagesSeen[first.stage] ?? first.stage} (day ${first.dayOfSeason}${toMaturity(first)}). ${now.map((one) => reachSaid(one, shown)).join(" ")}`,
    [endSaid(outlook), ...differences.map((one) => differenceSaid(one, outlook, shown))].join(" "),
  ];
}

function toMaturity({ daysToMaturity: { p10, p50, p90 } }: CaseNow): string {
  if (p90 === 0) return ", ripe today";
  const range = p10 === p90 ? "" : ` (${fixed(p10, 0)} to ${fixed(p90, 0)})`;
  return `, about ${fixed(p50, 0)} more${range} until it is ripe`;
}

function reachSaid(one: CaseNow, shown: Formatters): string {
  const { name, rootFrontMm, availableInRootsMm, availableBelowRootsMm } = one;
  const unit = shown.length;
  return (
    `The roots of "${name}" are at ${shown.depth(rootFrontMm.p50)} ${unit} and have ${shown.water(availableInRootsMm.p50)} ${unit} of available water within reach${lastsSaid(one)}; ` +
    `${shown.water(availableBelowRootsMm.p50)} ${unit} lie below them.`
  );
}

/** How long it lasts; nothing on the season's last day. */
function lastsSaid({ lastsDays: { p50 }, daysToMaturity }: CaseNow): string {
  if (daysToMaturity.p90 === 0) return "";
  if (p50 === null) return ", as much as it usually asks for until it is ripe";
  return `, ${p50 === 1 ? "1 day" : `${p50} days`} at the usual demand`;
}

function endSaid({ end, otherYears, now }: Outlook): string {
  const { name, yield: grown } = end[0]!;
  const range = `(P10 ${fixed(grown.p10, 0)} to P90 ${fixed(grown.p90, 0)})`;
  const over = now[0]!.daysToMaturity.p90 === 0;
  const how = over ? "With the season over" : `With the rest of the season from each of ${otherYears.count} other years`;
  return `${how}, "${name}" ends at about ${fixed(grown.p50, 0)} ${grown.unit} ${range}.`;
}

function differenceSaid(difference: OutlookDifference, outlook: Outlook, shown: Formatters): string {
  const { from, to, extraWaterUsedMm: water, extraYield } = difference;
  const zero = [water, extraYield].every(({ p10, p50, p90 }) => p10 === 0 && p50 === 0 && p90 === 0);
  if (zero) return `"${to}" ends exactly as "${from}".`;
  const say = yieldDigits(difference);
  const middle =
    Math.abs(water.p50) < hardlyAnyMm
      ? `"${to}" takes up about as much water as "${from}"`
      : `"${to}" takes up ${shown.fineWater(Math.abs(water.p50))} ${shown.length} ${water.p50 > 0 ? "more" : "less"} than "${from}"`;
  const unit = extraYield.unit;
  const worth =
    Number(say(extraYield.p50)) === 0
      ? "next to nothing in yield"
      : `${say(Math.abs(extraYield.p50))} ${unit} ${extraYield.p50 > 0 ? "more" : "less"}`;
  const range = ` (${rangeMoreOrLess(extraYield, say, unit)})`;
  const starved = outlook.now.find(({ name }) => name === to)!.demandMetSoFar;
  const before = outlook.now.find(({ name }) => name === from)!.demandMetSoFar;
  const soFar =
    Math.abs(starved - before) >= 0.01
      ? ` Up to now it met ${percent(starved)} of its demand, "${from}" ${percent(before)}.`
      : "";
  return `${middle} over the season, ${worth}${range}.${soFar}`;
}

/** A difference in bushels is told to tenths where it is small. */
export function yieldDigits({ extraYield }: OutlookDifference): (value: number) => string {
  const { unit, p10, p90 } = extraYield;
  const digits = unit === "bu/ac" && Math.max(Math.abs(p10), Math.abs(p90)) < 3 ? 1 : 0;
  return (value) => fixed(value, digits);
}
