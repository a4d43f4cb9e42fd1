import "../style/answer.css";
import { useMemo } from "preact/hooks";
import type { Comparison, DifferenceAnswer } from "../../src/answer/comparison/comparison.ts";
import { spreadOf } from "../../src/statistics/quantiles.ts";
import { seasonSaid } from "../../src/report/sentences/differenceSaid.ts";
import { doubtLines, type DifferenceTold } from "../../src/report/sentences/firstLine.ts";
import { rangeMoreOrLess } from "../../src/report/tables/rangeSaid.ts";
import { differenceDigits } from "../../src/report/tables/differenceDigits.ts";
import { typeset } from "../../src/report/tables/typeset.ts";
import { percent, shownIn, type Formatters } from "../../src/report/tables/formatters.ts";
import { PairedDifference } from "../pictures/answer/pairedDifference.tsx";
import { ShareMattered } from "../pictures/answer/shareMattered.tsx";
import { marksFor } from "../pictures/answer/shareMatteredMarks.ts";
import { ThreeNumbers } from "../pictures/answer/threeNumbers.tsx";
import { YieldRanges } from "../pictures/answer/yieldRanges.tsx";
import { answer, answerId, stale } from "../worker/client.ts";
import type { Answer } from "../worker/protocol.ts";
import { CaseTable } from "./answer/caseTable.tsx";
import { differenceShown } from "./answer/chosenDifference.ts";
import { Fan } from "./answer/fan.tsx";
import { OverOwnRain } from "./answer/overOwnRain.tsx";
import { ownRainOf } from "./answer/ownRain.ts";
import { Panel } from "./answer/panel.tsx";
import { answeredRuns, extraWaterByRun } from "./answer/runs.ts";
import { WhatIsShown } from "./answer/whatIsShown.tsx";
import { YearsAwaited, YearsPanels } from "./answer/years.tsx";
import { WhichDifference } from "./answer/whichDifference.tsx";
import { answerClass, Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";
import { WayIn } from "./wayIn.tsx";
import { AddWhatYouKnow } from "./wayIn/addWhatYouKnow.tsx";
import { isBlank, isExample } from "./wayIn/give.ts";

/** The answer in a sentence, then the numbers it is made of, each in its own picture. */
export function AnswerView() {
  return (
    <>
      <h1 class="only-heard">The answer</h1>
      <WhatIsShown />
      {isExample() ? <Said /> : null}
      <WayIn />
      {isExample() ? null : <Said />}
      {!isBlank() && answer.value !== null && <Told now={answer.value} />}
    </>
  );
}

/** The answer in words. Under the questions of one's own field; above them while they would only replace an example. */
function Said() {
  if (isBlank())
    return <p class="waiting">Answer one question, and what deeper roots are worth stands here.</p>;
  return (
    <>
      <StaleMark />
      <WhenAnswered>{() => <InWords now={answer.value!} />}</WhenAnswered>
    </>
  );
}

function InWords({ now: { comparison, told, inARow } }: { now: Answer }) {
  const d = differenceShown.value;
  const others = told.filter((_, i) => i !== d);
  return (
    <div class="answer-words">
      {doubtLines(comparison).map((doubt) => (
        <p key={doubt} class="answer-more">
          {typeset(doubt)}
        </p>
      ))}
      {inARow === null ? (
        <DifferenceInWords told={told[d]!} isFirst />
      ) : (
        <p class={`answer-sentence ${answerClass()}`} aria-live="polite">
          {inARow.sentences[d]}
        </p>
      )}
      <WhichDifference />
      {others.map(({ sentence }, i) => (
        <p key={sentence} class="answer-other">
          {inARow === null ? sentence : inARow.sentences.filter((_, o) => o !== d)[i]}
        </p>
      ))}
    </div>
  );
}

/** The sentence, its range, and what it must not be read without. */
function DifferenceInWords({ told, isFirst = false }: { told: DifferenceTold; isFirst?: boolean }) {
  return (
    <>
      {told.range !== null && <p class="answer-more">{told.range}</p>}
      <p
        class={isFirst ? `answer-sentence ${answerClass()}` : "answer-more"}
        aria-live={isFirst ? "polite" : undefined}
      >
        {told.sentence}
      </p>
      {told.odds !== null && <p class="answer-odds">{told.odds}</p>}
      {told.besides.map((one) => (
        <p key={one} class="answer-besides">
          {one}
        </p>
      ))}
      {told.otherTotals !== null && <p class="answer-more answer-totals">{told.otherTotals}</p>}
    </>
  );
}

function Told({ now }: { now: Answer }) {
  const { comparison, told, units } = now;
  const shown = shownIn(units);
  const d = differenceShown.value;
  const difference = comparison.differences[d];
  const { chain } = comparison;
  return (
    <article class={stale.value ? "answer is-stale" : "answer"} data-answer-id={answerId.value}>
      <YearsAwaited />
      <AddWhatYouKnow />
      {chain !== undefined && (
        <>
          <YearsPanels {...{ chain, d, shown }} />
          <h2 class="answer-part">Year after year, {chain.asked}</h2>
          <DifferenceInWords told={told[d]!} />
        </>
      )}
      <div class="panels">
        {difference !== undefined && (
          <>
            <ThreePanel comparison={comparison} d={d} shown={shown} />
            <SharePanel comparison={comparison} d={d} shown={shown} />
            <OverRainPanels now={now} difference={difference} d={d} shown={shown} />
            <PairedPanel now={now} difference={difference} d={d} shown={shown} />
          </>
        )}
        <YieldPanel comparison={comparison} shown={shown} />
      </div>
      <CaseTable comparison={comparison} shown={shown} />
      <h2 class="only-heard">Cautions</h2>
      <Cautions inSight={2} />
      <Method />
    </article>
  );
}

/** From this difference in depth on, more of it counts as what differs, mm. */
const tellingDepthMm = 5;

function ThreePanel({ comparison, d, shown }: SharePanelProps) {
  const difference = comparison.differences[d]!;
  const { runs } = comparison.method;
  const { water } = differenceDigits(comparison, d, shown);
  return (
    <Panel title="Three numbers for deeper roots" lead={threeLead(difference, runs, shown)}>
      {(width) => (
        <ThreeNumbers {...{ difference, runs, width }} c={d + 1} say={water} length={shown.length} />
      )}
    </Panel>
  );
}

/** How much deeper, and what the third number is of where more than the roots differs. */
function threeLead(
  { to, from, extraDepthMm, onlyRootsDiffer }: DifferenceAnswer,
  runs: number,
  { depth, length }: Formatters,
): string {
  const apart = depth(Math.abs(extraDepthMm));
  const season = seasonSaid({ runs });
  const also = onlyRootsDiffer
    ? ""
    : " The cases differ in more than their roots, and the third number counts all of it.";
  if (Number(apart) === 0)
    return `The roots of “${to}” reached about as deep as those of “${from}” ${season}, so the first two numbers are next to nothing.${also}`;
  return `The roots of “${to}” ended ${apart} ${length} ${extraDepthMm > 0 ? "deeper" : "shallower"} ${season}.${also}`;
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
      lead={`In ${percent(share)} of the ${runs} seasons the difference in water taken up was ${shown.water(matteredFromMm)} ${shown.length} or more. ${each}, with deep roots where it mattered.`}
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
  const { water: say } = differenceDigits(now.comparison, d, shown);
  const apart = rangeMoreOrLess(difference.extraWaterUsedMm, say, shown.length);
  const alone = spreadOf(runs.cases[0]!.transpirationMm);
  const { water, length } = shown;
  return (
    <Panel
      title="Season by season"
      lead={`The crop of “${difference.from}” alone took up ${water(alone.p10)} to ${water(alone.p90)} ${length} in 8 years of 10. In the same season “${difference.to}” took up ${apart}. Each dot is a season.`}
    >
      {(width) => (
        <PairedDifference
          difference={difference}
          extraMm={extraMm}
          matteredFromMm={now.comparison.method.matteredFromMm}
          c={d + 1}
          width={width}
          shown={shown}
          say={say}
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
      : ` The ranges overlap because seasons differ, not because ${what}: the difference has its own range above.`;
  const cap =
    yieldLine.capKgPerHa === null
      ? ""
      : `, at most ${Math.round(yieldLine.capKgPerHa / yieldLine.kgPerHaPerUnit)} ${unit}`;
  return (
    <Panel
      title={first === undefined ? "Yield" : "Yield of each case"}
      lead={`The bar spans 8 years of 10, the mark is a typical year${cap}.${compared}`}
    >
      {(width) => <YieldRanges comparison={comparison} width={width} shown={shown} />}
    </Panel>
  );
}
