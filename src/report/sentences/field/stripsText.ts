import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { MissingYield, Strips, StripsAnswer } from "../../../evidence/strips.ts";
import type { Units } from "../../../quantity/kinds.ts";
import { wrap } from "../../../wrap.ts";
import { capital } from "../sentence.ts";
import { countSaid, howManyLines, noIntervalSaid, stripPairs } from "./howManyText.ts";
import { measuredYield, type MeasuredYield } from "./measuredYield.ts";
import { fixed, percent } from "../../tables/formatters.ts";

/** What guides ask for at least. */
const fewestPairs = 4;

/** Strips in plain words, 80 columns: the verdict first. */
export function stripsLines(
  strips: Strips,
  answer: StripsAnswer,
  caseNames: readonly string[],
  unit: YieldUnit,
  system: Units,
): string[] {
  return stripsSentences(strips, answer, caseNames, unit, system).flatMap((line) => wrap(line));
}

/** The same, a sentence or two each. */
export function stripsSentences(
  strips: Strips,
  answer: StripsAnswer,
  caseNames: readonly string[],
  unit: YieldUnit,
  system: Units,
): string[] {
  const said = measuredYield(unit, system);
  const names = strips.caseIndexes.map((c) => `"${caseNames[c]}"`) as [string, string];
  return [
    stripsVerdict(strips, answer, names, said),
    ...missingLines(answer.missing, names),
    ...measureLines(answer, names, said),
    ...moreLines(strips, answer, said),
  ];
}

/** What the strips tell, in one or two sentences. */
export function stripsVerdict(
  { confidence, detectKgPerHa }: Strips,
  { pairs, difference, tellsApart, leastSignificantKgPerHa }: StripsAnswer,
  [first, second]: readonly [string, string],
  said: MeasuredYield,
): string {
  if (difference.value === null) return "No pair of strips has both yields: there is nothing to compare.";
  const seen = `${second} yields ${said.more(difference.value)} than ${first}`;
  if (difference.interval === null)
    return `In ${countSaid(pairs, stripPairs)} ${seen}, but nothing says how sure: ${noIntervalSaid(difference.why!, stripPairs)}.`;
  const { low, high } = difference.interval;
  const range = `${said.moreRange(low, high)} (${percent(confidence)} interval)`;
  if (tellsApart === true)
    return `${capital(countSaid(pairs, stripPairs))} tell the cases apart: ${seen}, ${range}.`;
  const least = leastSignificantKgPerHa!;
  const asked = detectKgPerHa !== null && detectKgPerHa < least ? detectKgPerHa : Math.abs(difference.value);
  const nothing =
    Number(said.size(asked)) === 0
      ? `${capital(countSaid(pairs, stripPairs))} show no difference here`
      : `${capital(countSaid(pairs, stripPairs))} can't tell ${said.plain(asked)} from nothing here`;
  return `${nothing}: ${seen}, and anything from ${range} fits as well.`;
}

function missingLines(
  missing: readonly MissingYield[],
  [first, second]: readonly [string, string],
): string[] {
  if (missing.length === 0) return [];
  const each = missing.map(({ pair, lacks }) => {
    const whose = lacks === "both" ? "both yields" : `the yield of ${lacks === "first" ? first : second}`;
    return `pair ${pair} (lacks ${whose})`;
  });
  return [
    `Left out: ${each.join(", ")}. If strips were lost where the crop was poor, the rest looks too good.`,
  ];
}

function measureLines(
  { meansKgPerHa, leastSignificantKgPerHa, variation, trust }: StripsAnswer,
  [first, second]: readonly [string, string],
  said: MeasuredYield,
): string[] {
  const lines: string[] = [];
  if (meansKgPerHa !== null)
    lines.push(`Means: ${first} ${said.say(meansKgPerHa[0])}, ${second} ${said.say(meansKgPerHa[1])}.`);
  if (leastSignificantKgPerHa !== null)
    lines.push(
      `Least difference that these strips can tell from nothing: ${said.say(leastSignificantKgPerHa)}.`,
    );
  if (variation !== null && trust !== null)
    lines.push(
      `Strips within a pair vary by ${fixed(variation * 100, 1)} % (coefficient of variation): ${trusted[trust]}.`,
    );
  return lines;
}

/** [Whitney 2012], read. */
const trusted = {
  close: "a close trial, below 10 %",
  acceptable: "acceptable, 10 to 15 %",
  questionable: "questionable, above 15 %",
} as const;

function moreLines(
  { confidence, detectKgPerHa, chance }: Strips,
  { pairs, differenceSdKgPerHa, leastSignificantKgPerHa }: StripsAnswer,
  said: MeasuredYield,
): string[] {
  const guide =
    pairs < fewestPairs ? ["Guides ask for four to six pairs (SARE and NC A&T field guide, read)."] : [];
  if (differenceSdKgPerHa === null) return guide;
  const more = howManyLines(
    {
      layout: { kind: "one set", sd: differenceSdKgPerHa },
      now: pairs,
      reach: leastSignificantKgPerHa!,
      confidence,
      wanted:
        detectKgPerHa === null
          ? null
          : { difference: detectKgPerHa, said: said.plain(detectKgPerHa), chance },
    },
    stripPairs,
  );
  return [...more, ...guide];
}
