import "../style/answer.css";
import "../style/teach.css";
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { leaveCopy } from "../state/scenarioStore.ts";
import { units } from "../state/view.ts";
import { answer } from "../worker/client.ts";
import { differenceShown } from "./answer/chosenDifference.ts";
import { WhichDifference } from "./answer/whichDifference.tsx";
import { answerClass, Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";
import { Guess } from "./teach/guess.tsx";
import { Handout, isHandoutAsked } from "./teach/handout.tsx";
import { useHeldSeason } from "./teach/heldSeason.ts";
import { difference, isGuessing, subject } from "./teach/lesson.ts";
import { useProjector } from "./teach/projector.ts";
import { Roots } from "./teach/roots.tsx";
import { Sliders } from "./teach/sliders.tsx";
import { titles } from "./teach/subject.ts";
import { ThreeTold } from "./teach/threeTold.tsx";

/** Before a class: two root systems and what sets them apart, in large type. */
export function TeachView() {
  useHeldSeason();
  useProjector();
  // Other views are about the user's own field.
  useEffect(() => leaveCopy, []);
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
  const isNarrow = useNarrow();
  // Read, and gone through by keyboard, in the order in which it is seen: on a phone the roots come first.
  const parts = [<Sliders key="sliders" />, <Roots key="roots" />];
  return (
    <>
      <div class="lesson">
        {isNarrow ? parts.toReversed() : parts}
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

/** One column, as in `style/teach.css`. */
const narrow = matchMedia("(max-width: 56rem)");

function useNarrow(): boolean {
  const isNarrow = useSignal(narrow.matches);
  useEffect(() => {
    const look = () => {
      isNarrow.value = narrow.matches;
    };
    narrow.addEventListener("change", look);
    return () => narrow.removeEventListener("change", look);
  }, []);
  return isNarrow.value;
}

/** The answer in words and its three numbers, once it may be seen. */
function Told() {
  const now = answer.value!;
  const told = difference.value;
  const { comparison } = now;
  const d = differenceShown.value;
  const said = now.told[d]!;
  if (told === null) {
    return (
      <>
        <p class="answer-sentence">
          {said.sentence} {said.besides.join(" ")}
        </p>
        <p class="teach-note">
          Two root systems are set side by side once there is a second case, in Inputs.
        </p>
      </>
    );
  }
  if (isGuessing.value) return null;
  return (
    <div class={`teach-told ${answerClass()}`}>
      {said.range !== null && <p>{said.range}</p>}
      <p class="answer-sentence">{said.sentence}</p>
      {said.odds !== null && <p class="answer-odds">{said.odds}</p>}
      <ThreeTold told={told} comparison={comparison} d={d} shown={shownIn(units.value)} />
    </div>
  );
}
