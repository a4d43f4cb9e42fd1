import "../../style/field-yield.css";
import type { Reconciled } from "../../../src/answer/comparison/evidenceAnswer.ts";
import { percent } from "../../../src/report/tables/formatters.ts";
import { Field } from "../../forms/field.tsx";
import { MeasuredBeside } from "../../pictures/field/measuredBeside.tsx";
import type { BesideRow } from "../../pictures/field/measuredBesideLayout.ts";
import { answer, busy } from "../../worker/client.ts";
import type { Answer } from "../../worker/protocol.ts";
import { useRoom } from "../answer/room.ts";
import { Contradictions } from "./contradictions.tsx";
import { openLeaf } from "../../state/view.ts";
import { yieldsSaid, type YieldsSaid } from "./counts/yieldsSaid.ts";

/** A measured difference in yield beside the one that water explains. */
export function Reconciliation() {
  const now = answer.value;
  const evidence = now?.comparison.evidence ?? null;
  const said = now === null ? null : yieldsSaid(now);
  if (now === null || evidence === null || said === null || evidence.reconciliations.length === 0)
    return (
      <>
        <p>
          Nothing measured yet: enter strips or counts of two cases. Their difference is then shown beside
          what water alone would explain.
        </p>
        <p>
          <button type="button" onClick={() => (openLeaf.value = "strips")}>
            Enter strips
          </button>{" "}
          <button type="button" onClick={() => (openLeaf.value = "counts")}>
            Enter counts
          </button>
        </p>
      </>
    );
  return <Told now={now} said={said} list={evidence.reconciliations} confidence={evidence.confidence} />;
}

interface ToldProps {
  readonly now: Answer;
  readonly said: YieldsSaid;
  readonly list: readonly Reconciled[];
  readonly confidence: number;
}

function Told({ now, said, list, confidence }: ToldProps) {
  const [room, widthPx] = useRoom<HTMLDivElement>();
  const verdicts = now.field.yields?.verdicts ?? [];
  return (
    <>
      {list.map((one, i) => (
        <p key={i} class="measured-verdict" aria-live="polite">
          {list.length > 1 && <span class="verdict-of">{titleOf(one)}: </span>}
          {verdicts[i]}
        </p>
      ))}
      <Contradictions />
      <div ref={room} class="measured-room">
        <MeasuredBeside
          title="Measured, and explained by water"
          fileName="measured-beside-water"
          rows={besideRows(list, said)}
          unit={said.unit}
          width={widthPx}
          faint={busy.value}
          caption={`A stroke with ends: what was measured, with its ${percent(confidence)} interval. A band: what water explains in ${percent(confidence)} of the seasons, a typical year marked. The strong line is no difference.`}
        />
      </div>
      {now.field.reconciliations.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p class="aside">
        The band of water shows how seasons differ, the interval of a measurement how sure that one season’s
        measurement is: they are two kinds of not knowing. What else is named is to be looked at; nothing here
        says that it was the cause.
      </p>
      <div class="field-grid">
        <Field path="evidence.confidence" label="Confidence of both" />
      </div>
    </>
  );
}

/** A row for each measurement: itself, and the water below it. */
function besideRows(list: readonly Reconciled[], said: YieldsSaid): BesideRow[] {
  return list.map((one) => {
    const { measured, explained, by } = one;
    const of = (kgPerHa: number | null) => (kgPerHa === null ? null : said.of(kgPerHa));
    const range =
      measured.low === null || measured.high === null
        ? ", no interval"
        : ` (${said.moreRange(measured.low, measured.high)})`;
    return {
      title: titleOf(one),
      marks: [
        {
          kind: "measured" as const,
          what: `Measured by ${by}`,
          said: `${said.more(measured.middle)}${range}`,
          middle: said.of(measured.middle),
          low: of(measured.low),
          high: of(measured.high),
        },
        {
          kind: "water" as const,
          what: "Explained by water",
          said: `${said.more(explained.middle)} (${said.moreRange(explained.low, explained.high)})`,
          middle: said.of(explained.middle),
          low: said.of(explained.low),
          high: said.of(explained.high),
        },
      ],
    };
  });
}

function titleOf({ by, from, to, rowPosition }: Reconciled): string {
  return `By ${by}, “${to}” against “${from}”${rowPosition === null ? "" : ` (${rowPosition})`}`;
}
