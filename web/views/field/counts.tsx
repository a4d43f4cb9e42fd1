import "../../style/field-yield.css";
import { useComputed } from "@preact/signals";
import { Field } from "../../forms/field.tsx";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { CountedYield } from "../../pictures/field/countedYield.tsx";
import { MeasuredBeside } from "../../pictures/field/measuredBeside.tsx";
import { editMany, scenario, valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { answer, busy } from "../../worker/client.ts";
import type { Answer } from "../../worker/protocol.ts";
import { useRoom } from "../answer/room.ts";
import { addGroup, countsPath, firstCounts, groupsIn } from "./counts/edits.ts";
import type { JsonGroup } from "../../state/json.ts";
import { EntryFirst } from "./entryFirst.tsx";
import { Group } from "./counts/group.tsx";
import { Contradictions } from "./contradictions.tsx";
import { Narrowing } from "./counts/narrowing.tsx";
import { countedGroups, countedDifferences } from "./counts/picture.ts";
import { yieldsSaid } from "./counts/yieldsSaid.ts";

/** Ears, heads and kernels counted in the field: the yield they make, and how sure it is. */
export function Counts() {
  const groups = useComputed(() => groupsIn(scenario.value));
  const now = answer.value;
  const caseNames = now?.comparison.cases.map(({ name }) => name) ?? [];
  const cropName = valueAt("crop.name");
  if (groups.value.length === 0)
    return (
      <>
        <p>
          Count ears or heads along a length of row at five spots or more of each case, and the kernels of a
          few heads at each. That gives a yield before harvest, and how much the cases differ.
        </p>
        <button
          type="button"
          class="primary"
          onClick={() =>
            editMany(
              firstCounts(caseNames, typeof cropName === "string" ? cropName : "", units.value),
              "chosen",
              "begin counting",
            )
          }
        >
          Begin counting
        </button>
        <ProblemNote id="counts-wrong" problems={fieldState(countsPath).problems} />
      </>
    );
  return (
    <EntryFirst
      shown={now !== null && <Told now={now} />}
      entry={
        <Entered
          groups={groups.value}
          cropName={typeof cropName === "string" ? cropName : ""}
          caseNames={caseNames}
        />
      }
    />
  );
}

interface EnteredProps {
  readonly groups: readonly JsonGroup[];
  readonly cropName: string;
  readonly caseNames: readonly string[];
}

function Entered({ groups, cropName, caseNames }: EnteredProps) {
  return (
    <>
      <h3>What was counted</h3>
      {groups.map((group, index) => (
        <Group key={index} index={index} group={group} cropName={cropName} caseNames={caseNames} />
      ))}
      <p class="tools">
        <button
          type="button"
          onClick={() => editMany(addGroup(scenario.value, caseNames), "chosen", "count another case")}
        >
          Count another case or place in the row
        </button>
      </p>
      <ProblemNote id="counts-wrong" problems={fieldState(countsPath).problems} />
      <div class="field-grid">
        <Field
          path="evidence.spotsPaired"
          label="Spots lie side by side"
          hint="The first of one case beside the first of the other, and so on"
        />
        <Field
          path="evidence.countsYear"
          label="Year of harvest"
          hint="With a station record that holds it, the model's season of that year stands beside the counts"
        />
        <Field path="evidence.confidence" label="Confidence of every interval" />
      </div>
    </>
  );
}

function Told({ now }: { now: Answer }) {
  const [room, widthPx] = useRoom<HTMLDivElement>();
  const { evidence, cases } = now.comparison;
  const said = yieldsSaid(now);
  const counts = evidence?.counts ?? null;
  if (counts === null || said === null || now.field.counts.length + counts.groups.length === 0) return null;
  const names = cases.map(({ name }) => name);
  const [first, ...more] = now.field.counts;
  const narrowed = (now.field.yields?.countsNarrowing ?? []).flatMap((narrowing, d) =>
    narrowing === null ? [] : [{ narrowing, one: counts.differences[d]! }],
  );
  return (
    <>
      {first !== undefined && (
        <p class="measured-verdict" aria-live="polite">
          {first}
        </p>
      )}
      <Contradictions />
      <div ref={room} class="measured-room">
        <CountedYield
          groups={countedGroups(counts, names, said)}
          said={said}
          width={widthPx}
          faint={busy.value}
        />
        {counts.differences.length > 0 && (
          <MeasuredBeside
            title="Difference by counts"
            fileName="counted-difference"
            rows={countedDifferences(counts, names, said)}
            unit={said.unit}
            width={widthPx}
            faint={busy.value}
          />
        )}
      </div>
      {more.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {narrowed.length > 0 && (
        <>
          <h3>How many more</h3>
          {narrowed.map(({ narrowing, one }) => (
            <Narrowing
              key={`${one.caseIndex} ${one.rowPosition}`}
              of={`“${names[one.caseIndex]}” against “${names[one.againstIndex]}”${one.rowPosition === null ? "" : `, ${one.rowPosition}`}`}
              noun="Spots of each case"
              narrowing={narrowing}
              said={said}
            />
          ))}
        </>
      )}
      {now.field.countsCautions.length > 0 && (
        <div class="caution counts-cautions">
          {now.field.countsCautions.map((caution) => (
            <p key={caution}>{caution}</p>
          ))}
        </div>
      )}
    </>
  );
}
