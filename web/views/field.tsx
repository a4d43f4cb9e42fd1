import { computed } from "@preact/signals";
import { useRef } from "preact/hooks";
import { useHintsInUse } from "../forms/hintsInUse.ts";
import { leafNames, openLeaf, type LeafName } from "../state/view.ts";
import { answer } from "../worker/client.ts";
import { Counts } from "./field/counts.tsx";
import { Dig } from "./field/dig.tsx";
import { Money } from "./field/money.tsx";
import { leafTitles } from "./field/leafTitles.ts";
import { Reconciliation } from "./field/reconciliation.tsx";
import { Rows } from "./field/rows.tsx";
import { Samples } from "./field/samples.tsx";
import { Strips } from "./field/strips.tsx";
import { Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";

const leaves = {
  dig: Dig,
  samples: Samples,
  counts: Counts,
  strips: Strips,
  water: Reconciliation,
  rows: Rows,
  money: Money,
} as const satisfies Record<LeafName, unknown>;

/** At a page's first opening: what was measured comes last. */
const isDue = computed(() => answer.value?.stage === "first runs");

/** What was measured in the field, from the dig to the dollar: entered here, and shown beside what the model makes of it. */
export function FieldView() {
  const Leaf = leaves[openLeaf.value];
  const title = leafTitles[openLeaf.value];
  const room = useRef<HTMLElement>(null);
  useHintsInUse(room);
  return (
    <>
      <h1>In the field</h1>
      <div class="field-leaves" role="group" aria-label="What was measured">
        {leafNames.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={openLeaf.value === name}
            onClick={() => (openLeaf.value = name)}
          >
            {leafTitles[name]}
          </button>
        ))}
      </div>
      <StaleMark />
      <section class="leaf hints-in-use" aria-label={title} ref={room}>
        <h2>{title}</h2>
        <WhenAnswered>
          {() => (isDue.value ? <p class="waiting">Working out what was measured …</p> : <Leaf />)}
        </WhenAnswered>
      </section>
      <Cautions />
      <Method />
    </>
  );
}
