import "../style/answer.css";
import "../style/teach.css";
import { shownIn } from "../../src/report/shownUnits.ts";
import { units } from "../state/view.ts";
import { answer } from "../worker/client.ts";
import { differenceShown } from "./answer/chosenDifference.ts";
import { sentencesOf } from "./answer/sentences.ts";
import { WhichDifference } from "./answer/whichDifference.tsx";
import { answerClass, Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";
import { Guess } from "./teach/guess.tsx";
import { Handout, isHandoutAsked } from "./teach/handout.tsx";
import { difference, isGuessing, subject } from "./teach/lesson.ts";
import { Roots } from "./teach/roots.tsx";
import { Sliders } from "./teach/sliders.tsx";
import { titles } from "./teach/subject.ts";
import { ThreeTold } from "./teach/threeTold.tsx";

/** Before a class: two root systems and what sets them apart, in large type. */
export function TeachView() {
  return (
    <>
      <div class="teach-head">
        <h1>{titles[subject.value]}</h1>
        <WhichDifference />
      </div>
      <StaleMark />
      <WhenAnswered>{() => <Lesson />}</WhenAnswered>
      <Handout />
    </>
  );
}

function Lesson() {
  return (
    <>
      <div class="lesson">
        <Sliders />
        <Roots />
        <Guess />
      </div>
      <Told />
      <p class="teach-print no-print">
        <button
          type="button"
          onClick={() => {
            isHandoutAsked.value = true;
          }}
        >
          Print the handout
        </button>{" "}
        <span class="teach-note">One page for each of the class, with the answer below a fold.</span>
      </p>
      <Cautions />
      <Method />
    </>
  );
}

/** The answer in words and its three numbers, once it may be seen. */
function Told() {
  const now = answer.value!;
  const told = difference.value;
  const { sentences, comparison } = now;
  const d = differenceShown.value;
  const [first] = sentencesOf(sentences, comparison.differences.length, d).chosen;
  if (told === null) {
    return (
      <>
        <p class="answer-sentence">{first}</p>
        <p class="teach-note">
          Two root systems are set side by side once there is a second case, in Inputs.
        </p>
      </>
    );
  }
  if (isGuessing.value) return null;
  return (
    <div class={`teach-told ${answerClass()}`}>
      <p class="answer-sentence">{first}</p>
      <ThreeTold told={told} comparison={comparison} d={d} shown={shownIn(units.value)} />
    </div>
  );
}
