import { placeInWords } from "../forms/placeWords.ts";
import { scenario } from "../state/scenarioStore.ts";
import type { ComponentChildren } from "preact";
import { typeset } from "../../src/report/tables/typeset.ts";
import { ToMend } from "./toMend.tsx";
import { answer, busy, fault, problems, progress, stale } from "../worker/client.ts";

/** What stands where an answer will be, until there is one; afterwards its children. */
export function WhenAnswered({ children }: { children: () => ComponentChildren }) {
  if (answer.value !== null) {
    return (
      <div class={stale.value ? "is-stale" : undefined}>
        <FirstRunsMark />
        {children()}
      </div>
    );
  }
  if (problems.value.length > 0 || fault.value !== null) {
    return (
      <p class="waiting">
        No answer yet: <ToMend />.
      </p>
    );
  }
  const now = progress.value;
  return (
    <p class="waiting" role="status">
      Working out the seasons{now === null ? "" : `: ${now.done} of ${now.total}`} …
    </p>
  );
}

/** At a page's first opening an answer from few runs stands there for a moment. */
function FirstRunsMark() {
  const now = answer.value;
  if (now?.stage !== "first runs") return null;
  return <p class="waiting">From the first {now.byRun.runs} runs; the others are on their way …</p>;
}

/** Said beside figures of an earlier state. */
export function StaleMark() {
  if (!stale.value) return null;
  return (
    <p class="stale-mark">
      The figures are from before your last change: <ToMend />.
    </p>
  );
}

/** What must be known where digging, yield or money show: the first of them in sight, the rest one tap away. */
export function Cautions({ inSight = 0 }: { inSight?: number }) {
  const list = answer.value?.comparison.cautions ?? [];
  const rest = list.slice(inSight);
  return (
    <>
      {inSight > 0 && <CautionList list={list.slice(0, inSight)} />}
      {rest.length > 0 && (
        <details class="cautions">
          <summary>{inSight > 0 ? `${rest.length} more cautions` : `Cautions (${rest.length})`}</summary>
          <CautionList list={rest} />
        </details>
      )}
    </>
  );
}

function CautionList({ list }: { list: readonly string[] }) {
  return (
    <ul class="caution-list">
      {list.map((caution) => (
        <li key={caution}>{typeset(caution)}</li>
      ))}
    </ul>
  );
}

/** How the answer came about, with its sources: one click away. */
export function Method() {
  const now = answer.value;
  if (now === null) return null;
  const { defaults, notes } = now.comparison;
  return (
    <details class="method">
      <summary>Method and sources</summary>
      <ul>
        {now.method.map((paragraph) => (
          <li key={paragraph}>{paragraph}</li>
        ))}
      </ul>
      {notes.length > 0 && (
        <>
          <h3>Noticed</h3>
          <ul>
            {notes.map((note) => (
              <li key={note}>{typeset(note)}</li>
            ))}
          </ul>
        </>
      )}
      {defaults.length > 0 && (
        <>
          <h3>Defaults used ({defaults.length})</h3>
          <dl class="defaults">
            {defaults.map(({ field, value, why }) => (
              <div key={`${field} ${value}`}>
                <dt>{placeInWords(field, scenario.value)}</dt>
                <dd>
                  {value} <span class="field-why">({why})</span>
                </dd>
              </div>
            ))}
          </dl>
        </>
      )}
    </details>
  );
}

/** For a line that changes with every answer: marks it while a newer one is on its way. */
export function answerClass(): string {
  return busy.value ? "is-being-redone" : "";
}
