import { mmPerInch } from "../../../src/quantity/constants.ts";
import type { Comparison, DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import { differenceDigits } from "../../../src/report/tables/differenceDigits.ts";
import { rangeSaid } from "../../../src/report/tables/rangeSaid.ts";
import { shownIn, type Formatters } from "../../../src/report/tables/formatters.ts";
import { Slider } from "../../forms/slider.tsx";
import { GuessAxis } from "../../pictures/kit/guessAxis.tsx";
import { palette } from "../../pictures/kit/palette.ts";
import { units } from "../../state/view.ts";
import { answer, answerId, resolved } from "../../worker/client.ts";
import type { ResolvedScenario } from "../../worker/protocol.ts";
import { useRoom } from "../answer/room.ts";
import { differenceShown } from "../answer/chosenDifference.ts";
import { answerClass } from "../parts.tsx";
import { useScreenHeight } from "../screenHeight.ts";
import { isPlaying } from "../pit/playhead.ts";
import { paceIn } from "./denseLayer.ts";
import { guessRange, guessSaid, saidMore } from "./guessWords.ts";
import {
  difference,
  guessAgain,
  guessMm,
  isGuessing,
  pair,
  setGuess,
  shownAtId,
  showTruth,
} from "./lesson.ts";
import { endDay, playTheRest } from "./playing.ts";
import { isProjected, leastTextShare } from "./projector.ts";

/** The class guesses, then the truth is drawn beside it. */
export function Guess() {
  const told = difference.value;
  const comparison = answer.value?.comparison;
  if (told === null || comparison === undefined) return null;
  const shown = shownIn(units.value);
  const guessing = isGuessing.value;
  return (
    <section class="guess" aria-label="Guess first">
      {guessing ? (
        <Guessing told={told} shown={shown} />
      ) : (
        <Truth told={told} comparison={comparison} shown={shown} />
      )}
      <p class="only-heard" aria-live="polite">
        {guessing ? "" : truthHeard(told, comparison, shown)}
      </p>
    </section>
  );
}

export function question({ from, to }: Pick<DifferenceAnswer, "from" | "to">): string {
  return `How much more water will the crop of “${to}” use than that of “${from}”?`;
}

function Guessing({ told, shown }: { readonly told: DifferenceAnswer; readonly shown: Formatters }) {
  const us = shown.system === "us";
  const perUnit = us ? mmPerInch : 1;
  const [leastMm, mostMm] = guessRange(otherIsShallower(resolved.value));
  const toUnit = (mm: number) => (us ? Number((mm / perUnit).toFixed(2)) : Math.round(mm));
  return (
    <>
      <h2>Guess first</h2>
      <p class="guess-question">{question(told)}</p>
      <Slider
        label="The class guesses"
        value={toUnit(guessMm.value)}
        from={us ? leastMm / perUnit : Math.round(leastMm / 10) * 10}
        to={us ? mostMm / perUnit : Math.round(mostMm / 10) * 10}
        step={us ? 0.05 : 1}
        say={(value) => saidMore(value * perUnit, us ? shown.fineWater : shown.water, shown.length)}
        onSlide={(value) => setGuess(value * perUnit)}
      />
      <button
        type="button"
        class="primary"
        onClick={() => {
          const from = endDay.peek();
          showTruth();
          playTheRest(from);
        }}
      >
        Show the truth
      </button>
    </>
  );
}

interface TruthProps {
  readonly told: DifferenceAnswer;
  readonly comparison: Comparison;
  readonly shown: Formatters;
}

function Truth({ told, comparison, shown }: TruthProps) {
  const [room, width] = useRoom<HTMLDivElement>();
  const screenPx = useScreenHeight();
  const d = differenceShown.value;
  const say = differenceDigits(comparison, d, shown).water;
  const { runs } = comparison.method;
  const hasMoved = shownAtId.value !== answerId.value;
  return (
    <div class={answerClass()}>
      <h2 class="only-heard">Guess and truth</h2>
      <p class="truth">
        <strong>{saidMore(told.extraWaterUsedMm.p50, say, shown.length)}</strong> water{" "}
        {runs === 1
          ? "in the one season run"
          : `in a typical year (8 years of 10: ${rangeSaid(told.extraWaterUsedMm, say)})`}
      </p>
      <div ref={room}>
        <GuessAxis
          guessMm={guessMm.value}
          difference={told}
          c={d + 1}
          colours={palette()}
          leastTextPx={isProjected.value ? leastTextShare * screenPx * 1.04 : 0}
          {...{ runs, width, shown, say }}
        />
      </div>
      {guessSaid(guessMm.value, truthOf(told, runs), say, shown).map((sentence) => (
        <p key={sentence} class="guess-close">
          {sentence}
        </p>
      ))}
      {hasMoved && <p class="teach-note">Something was changed after that guess.</p>}
      <button
        type="button"
        class={hasMoved ? "primary" : undefined}
        onClick={() => {
          isPlaying.value = false;
          guessAgain();
        }}
      >
        Guess again
      </button>
    </div>
  );
}

function truthOf({ extraWaterUsedMm, ruleOfThumbMm }: DifferenceAnswer, runs: number) {
  return { water: extraWaterUsedMm, ruleOfThumbMm, runs };
}

function truthHeard(told: DifferenceAnswer, comparison: Comparison, shown: Formatters): string {
  const { runs } = comparison.method;
  const say = differenceDigits(comparison, differenceShown.value, shown).water;
  const middle = saidMore(told.extraWaterUsedMm.p50, say, shown.length);
  const range =
    runs === 1 ? "" : ` in a typical year, ${rangeSaid(told.extraWaterUsedMm, say)} in 8 years of 10`;
  const close = guessSaid(guessMm.value, truthOf(told, runs), say, shown).join(" ");
  return `The truth: ${middle} water${range}. ${close}`;
}

/** By what the scenario says of the two cases, not by its answer. */
function otherIsShallower(soil: ResolvedScenario | null): boolean {
  const [first = 0, other] = pair.value;
  const [one, two] = [soil?.cases[first], other === undefined ? undefined : soil?.cases[other]];
  if (one === undefined || two === undefined) return false;
  if (two.rooting.kind === "relative") return two.rooting.extraMm < 0;
  if (one.rooting.kind === "absolute" && two.rooting.kind === "absolute")
    return two.rooting.depthMm < one.rooting.depthMm;
  const [least, otherLeast] = [one, two].map(({ layers }) => Math.min(...layers.map(paceIn)));
  return otherLeast! < least! - 1e-9;
}
