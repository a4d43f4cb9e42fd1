import type { Sensitivity, SensitivityOfPair } from "../../answer/sensitivity/sensitivity.ts";
import type { AnswerKind } from "../../answer/sensitivity/settingRuns.ts";
import type { WithInterval } from "../../statistics/varianceShares.ts";
import { bullets, wrap } from "../../wrap.ts";
import { fixed, percent } from "../tables/formatters.ts";
import { answerIn, figureOf, lengthsIn, type AnswerShown } from "../tables/sensitivityShown.ts";
import { tableLines } from "../tables/textTable.ts";
import type { JsonUnits } from "../tables/unitsBeside.ts";
import { mainAnswer, sensitivityLine } from "./sensitivityLine.ts";
import { capital } from "./sentence.ts";

const kindSaid: Readonly<Record<AnswerKind, string>> = {
  extraWaterUsed: "extra water taken up",
  extraYield: "extra yield",
  net: "net gain",
};

/** Letters of the longest bar. */
const barLength = 12;

/** What moves the answer, for people: plain words first, then swings and shares of each pair, in 80 columns. */
export function sensitivityText(
  sensitivity: Sensitivity,
  scenario: { readonly name: string; readonly invented: boolean },
  seed: number,
  units: JsonUnits,
): string {
  const { pairs, factors, leftOut } = sensitivity;
  const alone = pairs.length === 1;
  const lines = [
    ...pairs.flatMap((pair) => {
      const said = sensitivityLine(pair, sensitivity, units);
      return wrap(alone ? said : `"${pair.to}": ${said}`);
    }),
    "",
    ...wrap(`${scenario.name}${scenario.invented ? " (invented data)" : ""}`),
    ...pairs.flatMap((pair) => ["", ...pairLines(pair, sensitivity, units)]),
    "",
    "What was moved",
    ...bullets(factors.map(({ name, range }) => `${capital(name)}: ${range}.`)),
    ...(leftOut.length === 0
      ? []
      : ["", "Left out", ...bullets(leftOut.map(({ name, why }) => `${capital(name)}: ${why}.`))]),
    "",
    "Method",
    ...bullets(methodSaid(sensitivity, seed)),
  ];
  return `${lines.join("\n")}\n`;
}

function pairLines(pair: SensitivityOfPair, sensitivity: Sensitivity, units: JsonUnits): string[] {
  const main = answerIn(mainAnswer(pair), units, lengthsIn(units));
  const say = figureOf(main);
  const widest = Math.max(...main.factors.map(({ swing }) => swing));
  const swings = tableLines({
    head: [["one at a time", "from and to", "low", "high", "swing", bar(0)]],
    rows: main.factors.map(({ name, range, atLow, atHigh, swing }) => [
      name,
      rangeSaid(range),
      say(atLow),
      say(atHigh),
      say(swing),
      bar(widest > 0 ? swing / widest : 0),
    ]),
  });
  const shares = tableLines({
    head: [["share of the variance", "by itself", "with others", bar(0)]],
    rows: main.factors.flatMap(({ name, share }) =>
      share === null ? [] : [[name, shareSaid(share.first), shareSaid(share.total), bar(share.total.value)]],
    ),
  });
  const { years } = sensitivity;
  const spread =
    years === 1
      ? ""
      : `; from ${say(main.leastYear)} to ${say(main.mostYear)} in the ${years} years themselves`;
  return [
    ...wrap(
      `"${pair.to}" against "${pair.from}": ${kindSaid[main.kind]}, ${main.unit}, ${say(main.middle)} with all in the middle${spread}.`,
    ),
    "",
    ...swings,
    ...(sensitivity.rows === 0 ? [] : ["", ...shares]),
    ...otherAnswers(pair, units),
  ];
}

/** What moves the other answers of the pair most, a line. */
function otherAnswers(pair: SensitivityOfPair, units: JsonUnits): string[] {
  const said = pair.answers.slice(0, -1).flatMap((answer) => {
    const other = answerIn(answer, units, lengthsIn(units));
    const moving = other.factors.filter(({ swing }) => swing > 0).slice(0, 3);
    if (moving.length === 0) return [];
    const say = figureOf(other);
    const parts = moving.map(({ name, swing }) => `${name} ${say(swing)}`);
    return [`${capital(kindSaid[other.kind])}, ${other.unit}, swings most by ${parts.join(", ")}.`];
  });
  return said.length === 0 ? [] : ["", ...said.flatMap((line) => wrap(line))];
}

function methodSaid(
  { years, rows, seasons, confidence, rotationNotRun }: Sensitivity,
  seed: number,
): string[] {
  return [
    `The answer is the mean over ${years === 1 ? "one weather year" : `the same ${years} weather years, chosen evenly from dry to wet`}: a comparison shows the middle of all its years, so the figures differ a little.`,
    "One at a time: a factor at the low and high end of its range (one in ten lies beyond either), all others in their middle.",
    ...(rows === 0
      ? []
      : [
          `Share of the variance that all factors leave together: what a factor brings by itself, and with all that it does together with others; in brackets ${percent(confidence)} of bootstrap resamples. ${rows} rows of a Latin hypercube (Saltelli et al. 2010; total shares by Jansen 1999), seed ${seed}. Sums may pass 100 %, small shares 0.`,
        ]),
    `${seasons} seasons were run.`,
    ...(rotationNotRun === null
      ? []
      : [
          `The years in a row of ${rotationNotRun} were not run: each season stands by itself and begins with the water stated.`,
        ]),
  ];
}

/** As many digits as tell the ends apart. */
function rangeSaid({ unit, low, high }: AnswerShown["factors"][number]["range"]): string {
  const width = Math.abs(high - low);
  const digits = unit === "%" || width >= 20 ? 0 : width >= 1 ? 1 : 2;
  const signed = (value: number) => (low < 0 && value > 0 ? "+" : "") + fixed(value, digits);
  return `${signed(low)}..${signed(high)} ${unit}`;
}

function shareSaid({ value, low, high }: WithInterval): string {
  const say = (share: number) => fixed(share * 100, 0);
  return `${say(value)} % (${say(low)}..${say(high)})`;
}

/** Of equal length, so that bars begin below one another. */
function bar(share: number): string {
  const letters = Math.round(Math.min(1, Math.max(0, share)) * barLength);
  return (share > 0 && letters === 0 ? "." : "#".repeat(letters)).padEnd(barLength);
}
