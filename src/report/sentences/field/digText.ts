import type { RootWay } from "../../../evidence/dig/dig.ts";
import type {
  DigAnswer,
  DigFitAnswer,
  DugAnswer,
  DugDifference,
  FittedCase,
  FittedPair,
  UndugCase,
} from "../../../answer/dig/digAnswer.ts";
import { usualDifferenceMm } from "../../../answer/dig/digAnswer.ts";
import { tellsApart } from "../../../statistics/interval.ts";
import { bullets, wrap } from "../../../wrap.ts";
import { howManyLines, plants } from "./howManyText.ts";
import { fixed, percent, type Formatters } from "../../tables/formatters.ts";
import { tableLines } from "../../tables/textTable.ts";

/** The dig in words and tables, 80 columns. */
export function digLines(dig: DigAnswer, shown: Formatters): string[] {
  return [
    ...wrap(`Plants dug: depth of the deepest root, ${shown.length}`),
    "",
    ...tableLines({
      head: [["", "dug on", "plants", "median", "mean", "spread (sd)", "range"]],
      rows: dig.groups.map(({ case: name, date, rowPosition, depthMm }) => [
        rowPosition === null ? name : `${name}, ${rowPosition}`,
        date,
        String(depthMm.n),
        shown.depth(depthMm.median!),
        shown.depth(depthMm.mean!),
        depthMm.sd === null ? "-" : shown.depth(depthMm.sd),
        `${shown.depth(depthMm.smallest!)} to ${shown.depth(depthMm.largest!)}`,
      ]),
    }),
    "",
    ...bullets(digSentences(dig, shown, "how many more")),
  ];
}

/** The same without the table, a sentence or two each; for a comparison without how many more it takes. */
export function digSentences(dig: DigAnswer, shown: Formatters, more: "how many more" | "short"): string[] {
  const assumed = dig.groups.filter((group) => group.assumed !== null);
  return [
    ...dig.differences.map((one) => differenceSaid(one, dig, shown)),
    ...dig.groups.flatMap((one) => waysSaid(one, shown)),
    ...(more === "short" ? [] : dig.differences.flatMap((one) => howManySaid(one, dig.paired, shown))),
    ...assumed.map(
      ({ case: name, assumed: why }) =>
        `"${name}": ${why === "one plant" ? "one plant does" : "depths all equal do"} not tell how plants differ. A spread of 20 % of the depth is assumed (a judgment, no published value): ${why === "one plant" ? "dig more" : "measure each plant by itself"}.`,
    ),
    ...(dig.fit === null ? [] : fitSaid(dig, shown)),
  ];
}

/** `"turned", 2024-07-12: of 5 plants 4 turned aside, 1 went straight; they turned at 6.0 in.` */
function waysSaid({ case: name, date, ways, turnedAtMm, depthMm }: DugAnswer, shown: Formatters): string[] {
  const counted = Object.entries(ways ?? {}).map(([way, count]) => `${count} ${waySaid[way as RootWay]}`);
  const turned = turnedAtMm === undefined ? "" : `turned at ${shown.depth(turnedAtMm)} ${shown.length}`;
  if (counted.length === 0)
    return turned === "" ? [] : [`"${name}", ${date}: roots ${turned} (middle of those measured).`];
  return [
    `"${name}", ${date}: of ${depthMm.n} ${depthMm.n === 1 ? "plant" : "plants"} ${counted.join(", ")}${turned === "" ? "" : `; roots ${turned} (middle of those measured)`}.`,
  ];
}

const waySaid: Readonly<Record<RootWay, string>> = {
  straight: "went straight",
  "turned aside": "turned aside",
  stopped: "stopped",
  "through a crack": "went through a crack",
};

function differenceSaid(
  { from, to, depthMm, sameDay, date }: DugDifference,
  dig: DigAnswer,
  shown: Formatters,
): string {
  const { value, interval } = depthMm;
  const deeper = (value ?? 0) >= 0 ? "deeper" : "shallower";
  const middle = `By the means "${to}" is ${shown.depth(Math.abs(value ?? 0))} ${shown.length} ${deeper} than "${from}"`;
  const dated = sameDay ? "" : ` (dug on different days, ${date} the later: part of it is time)`;
  if (interval === null)
    return `${middle}${dated}; ${depthMm.why === "all equal" || depthMm.why === "all differences equal" ? "depths all alike" : "so few plants"} give no interval.`;
  const how = `${percent(dig.confidence)} interval ${depthRange(interval, shown)}`;
  const told = tellsApart(depthMm)
    ? "the depths differ by more than chance"
    : "the plants cannot tell that from no difference";
  return `${middle}${dated}, ${how}${dig.paired ? ", plant against its neighbor" : ""}: ${told}.`;
}

/** `3.7 to 6.2 in deeper`, `0.4 in shallower to 2.9 in deeper` */
function depthRange({ low, high }: { low: number; high: number }, shown: Formatters): string {
  const say = (mm: number) => shown.depth(Math.abs(mm));
  if (low >= 0) return `${say(low)} to ${say(high)} ${shown.length} deeper`;
  if (high <= 0) return `${say(high)} to ${say(low)} ${shown.length} shallower`;
  return `${say(low)} ${shown.length} shallower to ${say(high)} ${shown.length} deeper`;
}

function howManySaid(
  { layout, now, to, depthMm }: DugDifference,
  paired: boolean,
  shown: Formatters,
): string[] {
  const { interval, confidence } = depthMm;
  if (layout === null || interval === null) return [];
  const said = `a difference of ${shown.depth(usualDifferenceMm)} ${shown.length}`;
  const wanted = { difference: usualDifferenceMm, said, chance: 0.8 };
  const noun = paired ? { one: "pair", many: "pairs" } : plants;
  const lines = howManyLines(
    { layout, now, reach: (interval.high - interval.low) / 2, confidence, wanted },
    noun,
  );
  return [`How many more ("${to}"): ${lines.join(" ")}`];
}

function fitSaid({ fit, confidence }: DigAnswer, shown: Formatters): string[] {
  if (fit === null) return [];
  const where = fit.ownYear
    ? fitWeatherSaid(fit)
    : `${fitWeatherSaid(fit)}, as that of the dig's own year is not known: the interval spans them`;
  return [
    `${whatSaid(fit.what, fit.layer)} is fitted so that the simulated front meets the depths dug, ${where}.`,
    ...fit.cases.flatMap((one) => [
      fittedSaid(one, fit, confidence, shown),
      ...readingSaid(one, fit, confidence, shown),
    ]),
    ...fit.pairs.map((pair) => pairSaid(pair, fit.what)),
    ...decidesSaid(fit),
  ];
}

/** Which weather a fitted front is of; a caption says it, for a front seen elsewhere is of another. */
export function fitWeatherSaid({ ownYear }: Pick<DigFitAnswer, "ownYear">): string {
  return ownYear ? "in the weather of the dig's own year" : "in other years' weather";
}

function decidesSaid({ decides, undug, layer }: NonNullable<DigAnswer["fit"]>): string[] {
  if (!decides)
    return ["The fit is shown only: in the answer density or penetrometer decide, as the scenario wants it."];
  return [
    "The fit decides in the answer: each run takes its own draw from the interval, so that water, yield and money carry it.",
    ...undug.map((one) => undugSaid(one, layer)),
  ];
}

function undugSaid({ case: name, as }: UndugCase, layer: string | null): string {
  const same = layer === null ? "its readings are the same" : `"${layer}" is the same there`;
  return as === null
    ? `Nothing is fitted of "${name}": there density or penetrometer decide, so part of what sets it apart may be that.`
    : `Nothing is fitted of "${name}", but ${same} as in "${as}": the same draws serve both.`;
}

function whatSaid(what: "passage" | "penetration limit", layer: string | null): string {
  return what === "passage"
    ? `The passage of "${layer}" (the share of its pace that the root front keeps there)`
    : "The penetrometer reading at which roots stop";
}

function fittedSaid(
  one: FittedCase,
  { what, ownYear }: Pick<DigFitAnswer, "what" | "ownYear">,
  confidence: number,
  shown: Formatters,
): string {
  const value = valueSaid(what);
  const depth = (mm: number) => `${shown.depth(mm)} ${shown.length}`;
  const { low, high, observedMm, openMm, shutMm } = one;
  const fitted = `"${one.case}": ${value(one.value)} (${percent(confidence)} interval ${value(low)} to ${value(high)}); ${what === "passage" ? "its density or reading would say" : "usual for a pan without pores:"} ${value(one.otherwise)}.`;
  switch (one.verdict) {
    case "meets":
      return fitted;
    case "no passage is open enough":
      return `"${one.case}": ${explainsSaid(one, ownYear)} roots at ${depth(observedMm)}: through an open layer the front would be at ${depth(openMm)} that day, in the middle of them. It counts as open (${value(one.high)} at most), not as its density says. Suspect first the model's own pace for this crop, and its days to flowering; then an earlier sowing, the layer's place, another layer that holds the front in the model but not there, a crack or worm channel, the date or unit of the reading.`;
    case "no passage is shut enough":
      return `"${one.case}": ${explainsSaid(one, ownYear)} roots at only ${depth(observedMm)}: with the layer shut the front would still stand at ${depth(shutMm)}, in the middle of them. It counts as shut (${value(one.low)} at least), not as its density says. What else could be wrong: roots broke off in washing, the layer begins higher, the soil above was dry or wet to the brim, seedlings came late, the date or unit of the reading.`;
  }
}

/** Whether the roots stopped, and what tells so; nothing of roots that simply go on. */
function readingSaid(
  { case: name, told, stop }: FittedCase,
  { what, layer, decides }: DigFitAnswer,
  confidence: number,
  shown: Formatters,
): string[] {
  const { reading, by, stoppedShare } = told;
  const unit = shown.length;
  const where = `${shown.depth(stop.depthMm)} ${unit} (${percent(confidence)} interval ${shown.depth(stop.low)} to ${shown.depth(stop.high)})`;
  const dates = `the dates they were dug on (stopped: ${percent(stoppedShare ?? 0)} likely)`;
  const how = by === "two dates" ? `by ${dates}` : "as seen when they were dug";
  switch (reading) {
    case "stopped":
      return [
        `The roots of "${name}" stopped at ${where}, ${how}${decides ? ": in the answer they stay there" : ""}.`,
      ];
    case "slowed":
      return by === "two dates" ? [`The roots of "${name}" went on after the first dig, ${how}.`] : [];
    case "either": {
      const turned = by === "what was seen" ? "turned aside" : "were held back";
      const at = what === "passage" ? ` by "${layer ?? ""}"` : "";
      const cannot =
        stoppedShare === null
          ? "Whether they stopped there or go on slowly one day's dig cannot tell: dig again some weeks later, or say what was seen (roots)."
          : `Neither can ${dates}.`;
      return [`The roots of "${name}" ${turned}${at} at ${where}. ${cannot}`];
    }
  }
}

/** Years differ: in some a passage may explain what it does not in most. */
function explainsSaid({ tried, tooDeepShare, tooShallowShare }: FittedCase, ownYear: boolean): string {
  const meets = Math.round(tried * (1 - tooDeepShare - tooShallowShare));
  const of = `the ${tried} ${ownYear ? "soils drawn" : "years tried"}`;
  return meets === 0
    ? `in none of ${of} does any passage explain`
    : `in only ${meets} of ${of} does a passage explain`;
}

function pairSaid(
  { from, to, easierShare, toldApart }: FittedPair,
  what: "passage" | "penetration limit",
): string {
  const easier = what === "passage" ? "an easier way through the layer" : "a higher limit";
  return toldApart
    ? `${what === "passage" ? "The layer itself differs" : "The limit itself differs"}: ${easierShare > 0.5 ? `"${to}" has ${easier} than "${from}"` : `"${from}" has ${easier} than "${to}"`}.`
    : `Whether ${what === "passage" ? "that layer is the cause" : "that limit is what differs"} is not sure: in ${percent(easierShare)} of the draws "${to}" has ${easier} than "${from}".`;
}

export function valueSaid(what: "passage" | "penetration limit"): (value: number) => string {
  return what === "passage" ? percent : (mPa) => `${fixed(mPa, 1)} MPa`;
}
