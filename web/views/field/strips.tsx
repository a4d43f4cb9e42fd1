import "../../style/field-yield.css";
import { Field } from "../../forms/field.tsx";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { StripPairs } from "../../pictures/field/stripPairs.tsx";
import type { StripPairsShown } from "../../pictures/field/stripPairsLayout.ts";
import { editMany, scenario, valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { answer, busy, resolved } from "../../worker/client.ts";
import type { Answer } from "../../worker/protocol.ts";
import { useRoom } from "../answer/room.ts";
import { Contradictions } from "./contradictions.tsx";
import { EntryFirst } from "./entryFirst.tsx";
import { Narrowing } from "./counts/narrowing.tsx";
import { yieldsSaid, type YieldsSaid } from "./counts/yieldsSaid.ts";
import { addPair, firstStrips, stripsPath } from "./strips/edits.ts";
import { PairsTable } from "./strips/pairsTable.tsx";

/** Strips of two cases, harvested side by side: whether they tell the cases apart. */
export function Strips() {
  const now = answer.value;
  const caseNames = now?.comparison.cases.map(({ name }) => name) ?? [];
  if (valueAt(stripsPath) === undefined)
    return (
      <>
        <p>
          Harvest strips of two cases side by side, four pairs or more, and weigh each by itself: pairs show a
          difference that whole fields cannot.
        </p>
        {caseNames.length < 2 && <p>There is one case only: add another in Inputs first.</p>}
        <button
          type="button"
          class="primary"
          disabled={caseNames.length < 2}
          onClick={() => editMany(firstStrips(caseNames), "chosen", "begin with strips")}
        >
          Enter strips
        </button>
      </>
    );
  return <EntryFirst shown={now !== null && <Told now={now} />} entry={<Entered caseNames={caseNames} />} />;
}

function Entered({ caseNames }: { caseNames: readonly string[] }) {
  const unit = units.value === "metric" ? "kg/ha" : (resolved.value?.yieldLine.unit.us ?? "lb/ac");
  return (
    <>
      <h3>Yields strip by strip</h3>
      <div class="field-grid">
        <Field path={`${stripsPath}.cases[0]`} label="First column" choices={caseNames} none={null} />
        <Field path={`${stripsPath}.cases[1]`} label="Second column" choices={caseNames} none={null} />
      </div>
      <PairsTable unit={unit} />
      {[stripsPath, `${stripsPath}.cases`, `${stripsPath}.yields`].map((path) => (
        <ProblemNote key={path} id={`strips-${path}-wrong`} problems={fieldState(path).problems} />
      ))}
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() => editMany(addPair(scenario.value), "chosen", "add a pair of strips")}
        >
          Add a pair
        </button>
        <button
          type="button"
          class="small"
          onClick={() => editMany([[stripsPath, undefined]], "chosen", "remove the strips")}
        >
          Remove all strips
        </button>
      </p>
      <div class="field-grid">
        <Field
          path={`${stripsPath}.detect`}
          label="Smallest difference to detect"
          unit={unit}
          hint={`Such as ${unit === "bu/ac" ? 5 : 300} ${unit}: how many pairs it takes to see it`}
          also={(value) => (value === undefined ? [[`${stripsPath}.chance`, undefined]] : [])}
        />
        <Field path={`${stripsPath}.chance`} label="Power" />
        <Field
          path={`${stripsPath}.year`}
          label="Year of harvest"
          hint="With a station record that holds it, the model's season of that year stands beside the strips"
        />
        <Field path="evidence.confidence" label="Confidence of every interval" />
      </div>
    </>
  );
}

function Told({ now }: { now: Answer }) {
  const [room, widthPx] = useRoom<HTMLDivElement>();
  const said = yieldsSaid(now);
  const strips = now.field.yields?.strips ?? null;
  if (said === null || strips === null) return null;
  const [verdict, ...more] = now.field.strips;
  return (
    <>
      <p class="measured-verdict" aria-live="polite">
        {verdict}
      </p>
      <Contradictions />
      <div ref={room} class="measured-room is-upright">
        {strips.pairsKgPerHa.some(([a, b]) => a !== null || b !== null) && (
          <StripPairs
            shown={stripsDrawn(now, said)}
            caseIndexes={strips.caseIndexes}
            unit={said.unit}
            width={widthPx}
            faint={busy.value}
          />
        )}
      </div>
      {more.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {strips.narrowing !== null && (
        <>
          <h3>How many more</h3>
          <Narrowing
            of="By the spread as now seen"
            noun="Pairs of strips"
            narrowing={strips.narrowing}
            said={said}
          />
        </>
      )}
    </>
  );
}

/** In the unit on show. */
function stripsDrawn({ comparison, field }: Answer, said: YieldsSaid): StripPairsShown {
  const { caseIndexes, pairsKgPerHa } = field.yields!.strips!;
  const { meansKgPerHa, difference } = comparison.evidence!.strips!;
  const of = (kgPerHa: number | null) => (kgPerHa === null ? null : said.of(kgPerHa));
  const { value, interval } = difference;
  return {
    names: [comparison.cases[caseIndexes[0]]!.name, comparison.cases[caseIndexes[1]]!.name],
    pairs: pairsKgPerHa.map(([a, b]) => [of(a), of(b)] as const),
    means: meansKgPerHa === null ? null : [said.of(meansKgPerHa[0]), said.of(meansKgPerHa[1])],
    difference:
      value === null
        ? null
        : {
            value: said.of(value),
            interval: interval === null ? null : { low: said.of(interval.low), high: said.of(interval.high) },
            said:
              interval === null
                ? said.more(value)
                : `${said.more(value)} (${said.moreRange(interval.low, interval.high)})`,
          },
  };
}
