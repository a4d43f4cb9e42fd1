import "../style/answer.css";
import { useMemo } from "preact/hooks";
import type { Comparison, DifferenceAnswer } from "../../src/answer/comparison/comparison.ts";
import { spreadOf } from "../../src/statistics/quantiles.ts";
import { rangeMoreOrLess } from "../../src/report/tables/rangeSaid.ts";
import { percent, shownIn, type Formatters } from "../../src/report/tables/formatters.ts";
import { PairedDifference } from "../pictures/answer/pairedDifference.tsx";
import { ShareMattered } from "../pictures/answer/shareMattered.tsx";
import { marksFor } from "../pictures/answer/shareMatteredMarks.ts";
import { ThreeNumbers } from "../pictures/answer/threeNumbers.tsx";
import { YieldRanges } from "../pictures/answer/yieldRanges.tsx";
import { answer, answerId } from "../worker/client.ts";
import type { Answer } from "../worker/protocol.ts";
import { CaseTable } from "./answer/caseTable.tsx";
import { differenceShown } from "./answer/chosenDifference.ts";
import { Fan } from "./answer/fan.tsx";
import { OverOwnRain } from "./answer/overOwnRain.tsx";
import { ownRainOf } from "./answer/ownRain.ts";
import { Panel } from "./answer/panel.tsx";
import { answeredRuns, extraWaterByRun } from "./answer/runs.ts";
import { sentencesOf } from "./answer/sentences.ts";
import { YearsAwaited, YearsPanels } from "./answer/years.tsx";
import { WhichDifference } from "./answer/whichDifference.tsx";
import { answerClass, Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";
import { WayIn } from "./wayIn.tsx";
import { AddWhatYouKnow } from "./wayIn/addWhatYouKnow.tsx";
import { isBlank } from "./wayIn/give.ts";

/** The answer in a sentence, then the numbers it is made of, each in its own picture. */
export function AnswerView() {
  return (
    <>
      <h1 class="only-heard">The answer</h1>
      <WayIn />
      <StaleMark />
      {isBlank() ? (
        <p class="waiting">Answer one question, and what deeper roots are worth stands here.</p>
      ) : (
        <WhenAnswered>{() => <Told now={answer.value!} />}</WhenAnswered>
      )}
    </>
  );
}

function Told({ now }: { now: Answer }) {
  const { comparison, sentences, units } = now;
  const shown = shownIn(units);
  const d = differenceShown.value;
  const difference = comparison.differences[d];
  const { chain } = comparison;
  const inARow = now.inARow === null ? [] : now.inARow.sentences;
  const said = sentencesOf(sentences, comparison.differences.length, d);
  const { chosen, others } =
    inARow.length === 0 ? said : sentencesOf(inARow, comparison.differences.length, d);
  const [first, ...more] = chosen;
  return (
    <article class="answer" data-answer-id={answerId.value}>
      <YearsAwaited />
      <p class={`answer-sentence ${answerClass()}`} aria-live="polite">
        {first}
      </p>
      {more.map((sentence) => (
        <p key={sentence} class="answer-more">
          {sentence}
        </p>
      ))}
      <WhichDifference />
      {others.map((sentence) => (
        <p key={sentence} class="answer-other">
          {sentence}
        </p>
      ))}
      <AddWhatYouKnow />
      {chain !== undefined && (
        <>
          <YearsPanels {...{ chain, d, shown }} />
          <h2 class="answer-part">Year after year, {chain.asked}</h2>
          {said.chosen.map((sentence) => (
            <p key={sentence} class="answer-more">
              {sentence}
            </p>
          ))}
        </>
      )}
      <div class="panels">
        {difference !== undefined && (
          <>
            <ThreePanel difference={difference} c={d + 1} runs={comparison.method.runs} shown={shown} />
            <SharePanel comparison={comparison} d={d} shown={shown} />
            <OverRainPanels now={now} difference={difference} d={d} shown={shown} />
            <PairedPanel now={now} difference={difference} d={d} shown={shown} />
          </>
        )}
        <YieldPanel comparison={comparison} shown={shown} />
      </div>
      <CaseTable comparison={comparison} shown={shown} />
      <Cautions open />
      <Method />
    </article>
  );
}

/** From this difference in depth on, more of it counts as what differs, mm. */
const tellingDepthMm = 5;

interface ThreePanelProps {
  readonly difference: DifferenceAnswer;
  readonly c: number;
  readonly runs: number;
  readonly shown: Formatters;
}

function ThreePanel({ difference, c, runs, shown }: ThreePanelProps) {
  return (
    <Panel title="Three numbers, told apart" lead={threeLead(difference, runs, shown)}>
      {(width) => <ThreeNumbers difference={difference} c={c} runs={runs} width={width} shown={shown} />}
    </Panel>
  );
}

/** What the three numbers are of: depth gained or given up, or none where the cases do not differ in it. */
function threeLead(
  { to, from, extraDepthMm, onlyRootsDiffer }: DifferenceAnswer,
  runs: number,
  { depth, length }: Formatters,
): string {
  const apart = depth(Math.abs(extraDepthMm));
  const season = runs === 1 ? "in the one season run" : "in the middle season";
  if (Number(apart) === 0)
    return `The roots of “${to}” reached about as deep as those of “${from}” ${season}, so the first two numbers are next to nothing. The third is what else differs: how much more or less water the crop took up.`;
  if (extraDepthMm > 0) {
    const ended = `The roots of “${to}” ended ${apart} ${length} deeper ${season}. What that depth could hold, what it held at sowing, and what the crop`;
    return onlyRootsDiffer
      ? `${ended} got out of it are three different things.`
      : `${ended} took up more are three different things. More than the roots differs here, and the third number is of all of it.`;
  }
  const ended = `The roots of “${to}” ended ${apart} ${length} shallower ${season}.`;
  return onlyRootsDiffer
    ? `${ended} What the depth given up could hold, what it held at sowing, and what the crop went without are three different things.`
    : `${ended} The first two numbers are of that depth alone. The third is of all that differs between the cases, so it may be far larger, or go the other way.`;
}

interface SharePanelProps {
  readonly comparison: Comparison;
  readonly d: number;
  readonly shown: Formatters;
}

function SharePanel({ comparison, d, shown }: SharePanelProps) {
  const { method, differences } = comparison;
  const { runs, matteredFromMm } = method;
  const marks = marksFor(runs);
  const share = differences[d]!.shareOfSeasonsItMattered;
  const each =
    marks === runs ? "Each plant is a season" : `${marks} plants in a row stand for the ${runs} seasons`;
  return (
    <Panel
      title="How often it mattered"
      lead={`In ${percent(share)} of the ${runs} seasons the difference in water used was ${shown.fineWater(matteredFromMm)} ${shown.length} or more. ${each}; deep roots where it mattered.`}
    >
      {(width) => <ShareMattered comparison={comparison} d={d} width={width} shown={shown} />}
    </Panel>
  );
}

/** Each year at its own rain where years have their own; where they are scaled to totals, other totals. */
function OverRainPanels({ now, difference, d, shown }: PairedPanelProps) {
  const { comparison } = now;
  const own = useMemo(() => ownRainOf(now, d), [now, d]);
  const isOfDepth = difference.onlyRootsDiffer || difference.extraDepthMm >= tellingDepthMm;
  const title = isOfDepth ? "Where depth starts to matter" : "Where the difference starts to matter";
  return (
    <>
      {own !== null && (
        <OverOwnRain
          title={own.tellsAll ? title : "Each year at its own rain"}
          {...{ own, comparison, d, shown }}
        />
      )}
      {own?.tellsAll !== true && (
        <Fan isByThemselves={comparison.chain !== undefined} title={title} isOfDepth={isOfDepth} />
      )}
    </>
  );
}

interface PairedPanelProps extends Omit<SharePanelProps, "comparison"> {
  readonly now: Answer;
  readonly difference: DifferenceAnswer;
}

function PairedPanel({ now, difference, d, shown }: PairedPanelProps) {
  const runs = answeredRuns(now);
  const extraMm = extraWaterByRun(runs, d);
  const apart = rangeMoreOrLess(difference.extraWaterUsedMm, shown.fineWater, shown.length);
  const alone = spreadOf(runs.cases[0]!.transpirationMm);
  const { water, length } = shown;
  return (
    <Panel
      title="Season by season"
      lead={`From season to season the crop of “${difference.from}” took up anything from ${water(alone.p10)} to ${water(alone.p90)} ${length}. But both cases meet the same seasons, and side by side “${difference.to}” took up ${apart} in 8 of 10 seasons. A dot is a season.`}
    >
      {(width) => (
        <PairedDifference
          difference={difference}
          extraMm={extraMm}
          matteredFromMm={now.comparison.method.matteredFromMm}
          c={d + 1}
          width={width}
          shown={shown}
        />
      )}
    </Panel>
  );
}

function YieldPanel({ comparison, shown }: Omit<SharePanelProps, "d">) {
  const { yieldLine } = comparison.method;
  const { unit } = comparison.cases[0]!.yield;
  const [first] = comparison.differences;
  const what = comparison.differences.every(({ onlyRootsDiffer }) => onlyRootsDiffer)
    ? "the roots do not matter"
    : "the cases do as well as each other";
  const compared =
    first === undefined
      ? ""
      : ` Where the ranges overlap, it is because seasons differ, not because ${what}: the difference has its own range above.`;
  const cap =
    yieldLine.capKgPerHa === null
      ? ""
      : `, at most ${Math.round(yieldLine.capKgPerHa / yieldLine.kgPerHaPerUnit)} ${unit}`;
  return (
    <Panel
      title={first === undefined ? "Yield" : "Yield of each case"}
      lead={`From one season in ten to nine in ten, the middle one marked${cap}.${compared} Yield is a published straight line against water use; see the cautions.`}
    >
      {(width) => <YieldRanges comparison={comparison} width={width} shown={shown} />}
    </Panel>
  );
}
