import "../style/answer.css";
import type { Comparison, DifferenceAnswer } from "../../src/answer/comparison.ts";
import { spreadOf } from "../../src/answer/quantiles.ts";
import { percent, shownIn, type Shown } from "../../src/report/shownUnits.ts";
import { PairedDifference } from "../pictures/pairedDifference.tsx";
import { ShareMattered } from "../pictures/shareMattered.tsx";
import { marksFor } from "../pictures/shareMatteredMarks.ts";
import { ThreeNumbers } from "../pictures/threeNumbers.tsx";
import { YieldRanges } from "../pictures/yieldRanges.tsx";
import { answer, answerId } from "../worker/client.ts";
import type { Answer } from "../worker/protocol.ts";
import { CaseTable } from "./answer/caseTable.tsx";
import { differenceShown } from "./answer/chosenDifference.ts";
import { Fan } from "./answer/fan.tsx";
import { Panel } from "./answer/panel.tsx";
import { extraWaterByRun, middleRuns } from "./answer/runs.ts";
import { sentencesOf } from "./answer/sentences.ts";
import { WhichDifference } from "./answer/whichDifference.tsx";
import { answerClass, Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";

/** The answer in a sentence, then the numbers it is made of, each in its own picture. */
export function AnswerView() {
  return (
    <>
      <h1 class="only-heard">The answer</h1>
      <StaleMark />
      <WhenAnswered>{() => <Told now={answer.value!} />}</WhenAnswered>
    </>
  );
}

function Told({ now }: { now: Answer }) {
  const { comparison, sentences, units } = now;
  const shown = shownIn(units);
  const d = differenceShown.value;
  const difference = comparison.differences[d];
  const { chosen, others } = sentencesOf(sentences, comparison.differences.length, d);
  const [first, ...more] = chosen;
  return (
    <article class="answer" data-answer-id={answerId.value}>
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
      <div class="panels">
        {difference !== undefined && (
          <>
            <ThreePanel difference={difference} c={d + 1} runs={comparison.method.runs} shown={shown} />
            <SharePanel comparison={comparison} d={d} shown={shown} />
            <Fan />
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

interface ThreePanelProps {
  readonly difference: DifferenceAnswer;
  readonly c: number;
  readonly runs: number;
  readonly shown: Shown;
}

function ThreePanel({ difference, c, runs, shown }: ThreePanelProps) {
  const { extraDepthMm } = difference;
  const apart = shown.depth(Math.abs(extraDepthMm));
  const reached =
    Number(apart) === 0
      ? "reached about as deep"
      : `ended ${apart} ${shown.length} ${extraDepthMm > 0 ? "deeper" : "shallower"}`;
  return (
    <Panel
      title="Three numbers, told apart"
      lead={`The roots of “${difference.to}” ${reached} in the middle season. What that depth could hold, what it held at sowing, and what the crop got out of it are three different things.`}
    >
      {(width) => <ThreeNumbers difference={difference} c={c} runs={runs} width={width} shown={shown} />}
    </Panel>
  );
}

interface SharePanelProps {
  readonly comparison: Comparison;
  readonly d: number;
  readonly shown: Shown;
}

function SharePanel({ comparison, d, shown }: SharePanelProps) {
  const { method, differences } = comparison;
  const { runs, matteredFromMm } = method;
  const marks = marksFor(runs);
  const share = differences[d]!.shareOfSeasonsItMattered;
  const each =
    marks === runs ? "Each plant is a season" : `Each plant stands for ${saidCount(runs / marks)} seasons`;
  return (
    <Panel
      title="How often it mattered"
      lead={`In ${percent(share)} of the ${runs} seasons the difference in water used was ${shown.fineWater(matteredFromMm)} ${shown.length} or more. ${each}; deep roots where it mattered.`}
    >
      {(width) => <ShareMattered comparison={comparison} d={d} width={width} shown={shown} />}
    </Panel>
  );
}

interface PairedPanelProps extends Omit<SharePanelProps, "comparison"> {
  readonly now: Answer;
  readonly difference: DifferenceAnswer;
}

function PairedPanel({ now, difference, d, shown }: PairedPanelProps) {
  const runs = middleRuns(now);
  const extraMm = extraWaterByRun(runs, d);
  const { p10, p90 } = difference.extraWaterUsedMm;
  const alone = spreadOf(runs.cases[0]!.transpirationMm);
  const { water, fineWater, length } = shown;
  return (
    <Panel
      title="Season by season"
      lead={`From season to season the crop of “${difference.from}” took up anything from ${water(alone.p10)} to ${water(alone.p90)} ${length}. But both root systems meet the same seasons, and side by side they differ by ${fineWater(p10)} to ${fineWater(p90)} ${length} in eight of ten. A dot is a season.`}
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
  const cap =
    yieldLine.capKgPerHa === null
      ? ""
      : `, at most ${Math.round(yieldLine.capKgPerHa / yieldLine.kgPerHaPerUnit)} ${unit}`;
  return (
    <Panel
      title="Yield of each case"
      lead={`From one season in ten to nine in ten, the middle one marked${cap}. The ranges overlap because seasons differ, not because the roots do not matter: the difference has its own range above. Yield is a published straight line against water use; see the cautions.`}
    >
      {(width) => <YieldRanges comparison={comparison} width={width} shown={shown} />}
    </Panel>
  );
}

function saidCount(count: number): string {
  return String(Number(count.toFixed(1)));
}
