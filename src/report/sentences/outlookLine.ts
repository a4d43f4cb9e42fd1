import type { CaseNow, Outlook, OutlookDifference } from "../../answer/outlook/outlook.ts";
import { fixed, percent, type Formatters } from "../tables/formatters.ts";
import { rangeMoreOrLess } from "../tables/rangeSaid.ts";
import { capital } from "./sentence.ts";

/** Stages as FAO-56 names them, and what a grower sees. */
const stagesSeen: Readonly<Record<string, string>> = {
  initial: "still small",
  development: "growing toward full cover",
  "mid-season": "at full cover, from about flowering on",
  "late season": "ripening",
};

/** Below this a median difference is not worth a number, mm. */
const hardlyAnyMm = 1;

/** What the roots have in reach, how far the crop is, and how the season may end: in plain words, a paragraph each. */
export function outlookLines(outlook: Outlook, shown: Formatters): string[] {
  const { now, date, differences } = outlook;
  const [first, ...others] = now;
  const unit = shown.length;
  const reach = [
    `On ${date} the roots of "${first!.name}" are at ${shown.depth(first!.rootFrontMm.p50)} ${unit} and have ${shown.water(first!.availableInRootsMm.p50)} ${unit} of available water within reach${lastsSaid(first!)}, with ${shown.water(first!.availableBelowRootsMm.p50)} ${unit} below them`,
    ...others.map(
      (one) =>
        `those of "${one.name}" are at ${shown.depth(one.rootFrontMm.p50)} ${unit}: ${shown.water(one.availableInRootsMm.p50)} ${unit}${lastsSaid(one)}, ${shown.water(one.availableBelowRootsMm.p50)} ${unit} below`,
    ),
  ];
  return [
    `${reach.join("; ")}.`,
    stagesSaid(now),
    [endSaid(outlook), ...differences.map((one) => differenceSaid(one, outlook, shown))].join(" "),
  ];
}

/** Cases of one crop that stand alike are told once. */
function stagesSaid(now: readonly CaseNow[]): string {
  const said = now.map((one) => ({
    name: one.name,
    text: `${one.crop} sown ${one.sown} is ${stagesSeen[one.stage] ?? one.stage} (day ${one.dayOfSeason}${toMaturity(one)})`,
  }));
  const alike = said.every(({ text }) => text === said[0]!.text);
  return alike ? `${capital(said[0]!.text)}.` : said.map(({ name, text }) => `"${name}": ${text}.`).join(" ");
}

function toMaturity({ daysToMaturity: { p10, p50, p90 } }: CaseNow): string {
  if (p90 === 0) return ", ripe today";
  const range = p10 === p90 ? "" : `, ${fixed(p10, 0)} to ${fixed(p90, 0)}`;
  return `; about ${fixed(p50, 0)} more until it is ripe${range}`;
}

/** How long it lasts; nothing on the season's last day. */
function lastsSaid({ lastsDays: { p50 }, daysToMaturity }: CaseNow): string {
  if (daysToMaturity.p90 === 0) return "";
  if (p50 === null) return ", all that it usually asks for until it is ripe";
  if (p50 === 0) return ", less than a day at the usual demand";
  return `, ${p50 === 1 ? "1 day" : `${p50} days`} at the usual demand`;
}

function endSaid({ end, otherYears, now }: Outlook): string {
  const { name, yield: grown } = end[0]!;
  const range = `(P10 ${fixed(grown.p10, 0)} to P90 ${fixed(grown.p90, 0)})`;
  const over = now[0]!.daysToMaturity.p90 === 0;
  const how = over
    ? "With the season over"
    : `With the rest of the season from each of ${otherYears.count} other years`;
  return `${how}, "${name}" ends at about ${fixed(grown.p50, 0)} ${grown.unit} ${range}.`;
}

function differenceSaid(difference: OutlookDifference, outlook: Outlook, shown: Formatters): string {
  const { from, to, extraWaterUsedMm: water, extraYield } = difference;
  const zero = [water, extraYield].every(({ p10, p50, p90 }) => p10 === 0 && p50 === 0 && p90 === 0);
  // A range leaves out the outer tenths: in them the two may differ.
  if (zero) return `"${to}" ends as "${from}" does in nearly every year.`;
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
  const isNothing = [extraYield.p10, extraYield.p50, extraYield.p90].every(
    (value) => Number(say(value)) === 0,
  );
  const range = isNothing ? "" : ` (${rangeMoreOrLess(extraYield, say, unit)})`;
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
