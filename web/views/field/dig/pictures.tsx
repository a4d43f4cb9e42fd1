import { useRef } from "preact/hooks";
import type { DigAnswer } from "../../../../src/answer/dig/digAnswer.ts";
import { fitWeatherSaid } from "../../../../src/report/sentences/field/digText.ts";
import { percent, shownIn } from "../../../../src/report/tables/formatters.ts";
import { DugRoots } from "../../../pictures/dig/dugRoots.tsx";
import { FittedValues } from "../../../pictures/dig/fittedValues.tsx";
import { answer, resolved } from "../../../worker/client.ts";
import type { LayerShown } from "../../../worker/protocol.ts";
import { Panel } from "../../answer/panel.tsx";
import { answerClass } from "../../parts.tsx";

/** What is drawn, of one and the same state: the plants come sooner from the engine than what is made of them. */
interface Drawn {
  readonly dig: DigAnswer;
  readonly plantsMm: readonly (readonly number[])[];
  readonly layers: readonly LayerShown[];
  readonly caseNames: readonly string[];
}

/** The pit face, what is fitted, and the sentences. */
export function DigPictures() {
  const kept = useRef<Drawn | null>(null);
  kept.current = drawnNow() ?? kept.current;
  const now = answer.value;
  const drawn = kept.current;
  if (now === null || drawn === null || now.comparison.evidence?.dig == null)
    return <p class="waiting">The pit face is drawn as soon as every plant above has its depth.</p>;
  const shown = shownIn(now.units);
  const { dig } = drawn;
  const assumed = dig.groups.some((one) => one.assumed !== null);
  return (
    <div class={`panels ${answerClass()}`}>
      <Panel
        title="In the pit"
        class="panel-wide"
        lead={`Each root to its depth; the bar is the median of its case with its ${percent(dig.confidence)} interval${assumed ? ", dashed where the spread is assumed" : ""}${dig.fit === null ? "" : `, the broken line the simulated front at the fitted value, ${fitWeatherSaid(dig.fit)} (its depth under the bar); the pit wall shows one season of the runs, so its front may stand elsewhere`}. Right of the face, the difference of the means stands on the same depths.`}
      >
        {(width) => (
          <DugRoots
            dig={dig}
            plantsMm={drawn.plantsMm}
            layers={drawn.layers}
            caseNames={drawn.caseNames}
            width={Math.min(width, 980)}
            shown={shown}
          />
        )}
      </Panel>
      {dig.fit !== null && dig.fit.cases.length > 0 && (
        <Panel
          title={
            dig.fit.what === "passage"
              ? `What “${dig.fit.layer ?? ""}” lets through`
              : "The reading at which roots stop"
          }
          lead="Fitted to the plants, beside what would be taken without them."
        >
          {(width) => (
            <FittedValues
              fit={dig.fit!}
              confidence={dig.confidence}
              caseNames={drawn.caseNames}
              width={Math.min(width, 640)}
            />
          )}
        </Panel>
      )}
      <section class="panel dig-said">
        <h2>What the plants tell</h2>
        <ul>
          {now.field.dig.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        {(dig.fit === null || dig.fit.cases.length === 0) && (
          <p>
            Nothing is fitted, so no root front is drawn. Either no layer slows roots (name the dense layer
            below), or these cases have a stated root depth.
          </p>
        )}
      </section>
    </div>
  );
}

/** Null while plants and answer are of different states. */
function drawnNow(): Drawn | null {
  const dig = answer.value?.comparison.evidence?.dig ?? null;
  const read = resolved.value;
  const plants = read?.evidence?.dig?.groups ?? [];
  if (dig === null || read === null || plants.length !== dig.groups.length) return null;
  const agree = dig.groups.every(
    ({ case: name, depthMm }, g) =>
      read.cases[plants[g]!.caseIndex]?.name === name && plants[g]!.depthsMm.length === depthMm.n,
  );
  if (!agree) return null;
  return {
    dig,
    plantsMm: plants.map(({ depthsMm }) => depthsMm),
    layers: read.cases[plants[0]!.caseIndex]!.layers,
    caseNames: read.cases.map(({ name }) => name),
  };
}
