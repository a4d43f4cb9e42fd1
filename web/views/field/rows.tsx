import "../../style/inputs.css";
import "../../style/answer.css";
import "../../style/field-money.css";
import type { RowPositions } from "../../../src/scenario/rowPositions.ts";
import { moneyCaution, shownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import { percent, shownIn } from "../../../src/report/tables/formatters.ts";
import { FieldAverageDrawn } from "../../pictures/field/rowsOfPassAverage.tsx";
import { RowsOfPass, rowsOfPassSize, type RowKind } from "../../pictures/field/rowsOfPass.tsx";
import { rowsByTyre, rowsSorted, type RowDrawn, type Where } from "../../pictures/field/rowsOfPassLayout.ts";
import { isGroup, isList, type Json } from "../../state/json.ts";
import { edit, valueAt } from "../../state/scenarioStore.ts";
import { answer, busy, resolved } from "../../worker/client.ts";
import { Panel } from "../answer/panel.tsx";
import { EntryFirst } from "./entryFirst.tsx";
import { caseNames, EnterRows, newCount } from "./rows/enter.tsx";
import { tyresIn } from "./rows/edits.ts";
import { Steps } from "./rows/steps.tsx";
import { placeTyres, TyreButtons, TyreGlass } from "./rows/tyres.tsx";

/** Where the rows of the field stand, and what the field comes to. */
export function Rows() {
  const rowPositions = valueAt("rowPositions");
  if (rowPositions === undefined) return <NoRows />;
  return (
    <>
      <EntryFirst shown={<Pass rowPositions={rowPositions} />} entry={<EnterRows />} />
      <Average />
    </>
  );
}

function NoRows() {
  const enough = caseNames().length >= 2;
  return (
    <>
      <p>
        Enter the rows of one pass and where the tires run: the field is the mean of all its rows, not the
        best of them.
      </p>
      {!enough && (
        <p class="aside">
          Rows in the track need one case and the other rows another: add a case in Inputs first.
        </p>
      )}
      <p class="tools">
        <button
          type="button"
          class="primary"
          disabled={!enough}
          onClick={() => edit("rowPositions", newCount(), "chosen", "count the rows of one pass")}
        >
          Count the rows of one pass
        </button>
      </p>
    </>
  );
}

interface Drawn {
  readonly rows: readonly RowDrawn[];
  readonly tyreRows: readonly number[];
  readonly kinds: readonly RowKind[];
  readonly numbered: boolean;
  /** Tyres can be set on it. */
  readonly open: boolean;
  readonly rowsInTrack: number;
}

/** Rows drawn where only shares are known. */
const rowsForShares = 50;

/** What is written wins over what was last resolved, so that the drawing follows the hand. */
function drawnOf(rowPositions: Json, known: RowPositions | null): Drawn | null {
  const names = caseNames();
  if (isList(rowPositions)) {
    if (known === null) return null;
    const rows = rowsSorted(known, rowsForShares);
    return { rows, tyreRows: [], kinds: kindsOf(known, names), numbered: false, open: false, rowsInTrack: 0 };
  }
  if (!isGroup(rowPositions)) return null;
  const { rows: counted, rowsInTrack = 0, inTrack, other, besideTrack = other } = rowPositions;
  const all =
    typeof counted === "number" && Number.isInteger(counted) && counted >= 1 && counted <= 100
      ? counted
      : (known?.rowsInAll ?? null);
  if (all === null) return null;
  const tyreRows = tyresIn(rowPositions).filter((place) => place <= all + 0.5);
  const index = (name: Json | undefined) => {
    const found = names.indexOf(typeof name === "string" ? name : "");
    return found < 0 ? null : found;
  };
  const caseOf: Record<Where, number | null> = {
    inTrack: index(inTrack),
    besideTrack: index(besideTrack),
    other: index(other),
  };
  const inCount = typeof rowsInTrack === "number" ? rowsInTrack : 0;
  const open = tyreRows.length > 0 || inCount === 0;
  const rows = open || known === null ? rowsByTyre(all, tyreRows, caseOf) : rowsSorted(known, all);
  return {
    rows,
    tyreRows,
    kinds: known === null || known.rowsInAll === null ? [] : kindsOf(known, names),
    numbered: open,
    open,
    rowsInTrack: inCount,
  };
}

function kindsOf({ positions }: RowPositions, names: readonly string[]): RowKind[] {
  return positions
    .filter(({ share }) => share > 0)
    .map(({ name, caseIndex, share, rows }) => ({
      name,
      caseIndex,
      caseName: names[caseIndex] ?? "",
      said: rows === null ? percent(share) : `${rows} ${rows === 1 ? "row" : "rows"}, ${percent(share)}`,
    }));
}

function Pass({ rowPositions }: { rowPositions: Json }) {
  const drawn = drawnOf(rowPositions, resolved.value?.rowPositions ?? null);
  if (drawn === null) return <p class="aside">The rows are drawn once they can be read.</p>;
  const { open, numbered, rowsInTrack, rows } = drawn;
  return (
    <Panel
      title={numbered || !isList(rowPositions) ? "One pass, from above" : "The field's rows, by their share"}
      lead={
        open
          ? "Click on a row, or between two, to set a tire there; click again to take it away."
          : isList(rowPositions)
            ? `Each row drawn stands for ${100 / rowsForShares} % of the field.`
            : "It is not said where the tires run: the rows are sorted by kind."
      }
    >
      {(width) => {
        const { layout, height } = rowsOfPassSize({ ...drawn, width });
        return (
          <>
            <div class="pass">
              <RowsOfPass {...drawn} width={width} />
              {open && (
                <div class="pass-over" style={{ aspectRatio: `${width} / ${height}` }}>
                  <TyreGlass rows={rows.length} layout={layout} width={width} height={height} />
                </div>
              )}
            </div>
            {open && <TyreButtons rows={rows.length} />}
            {!open && !isList(rowPositions) && (
              <p class="tools no-print">
                <button type="button" onClick={() => placeTyres(rows.length, rowsInTrack)}>
                  Say where the tires run
                </button>
              </p>
            )}
          </>
        );
      }}
    </Panel>
  );
}

/** Water, yield and money of the field as it is. */
function Average() {
  const now = answer.value;
  const field = now?.comparison.fieldAverage;
  const unit = resolved.value?.yieldLine.unit;
  if (now === null || field == null || unit === undefined) return null;
  const shown = shownIn(now.units);
  const say = shownMoney(field.currency ?? "", unit, shown);
  return (
    <Panel
      title="The field, and a field of one kind of row"
      lead="The bar spans 8 years of 10, the mark is a typical year. Both fields have the same seasons, so the difference is surer than the bars suggest."
    >
      {(width) => (
        <>
          <FieldAverageDrawn field={field} say={say} shown={shown} width={width} />
          <ul class={`field-said ${busy.value ? "is-being-redone" : ""}`}>
            {now.field.rows.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <Steps field={field} say={say} shown={shown} />
          {field.currency === null ? (
            <p class="aside">Enter a price under Money to see this in money too.</p>
          ) : (
            <p class="caution">{moneyCaution}</p>
          )}
        </>
      )}
    </Panel>
  );
}
