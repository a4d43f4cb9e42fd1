import { alternatives } from "../../../../src/scenario/fields/facts/alternatives.ts";
import { takesOut } from "../../../forms/fieldsOf.ts";
import { signal } from "@preact/signals";
import { useId } from "preact/hooks";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { listText } from "../../../forms/listText.ts";
import {
  clampedPlace,
  placeAtShare,
  sayPlace,
  type PassLayout,
} from "../../../pictures/field/rowsOfPassLayout.ts";
import { edit, editMany, endEdit, valueAt } from "../../../state/scenarioStore.ts";
import { tyresFromText, tyresIn, tyreTurned } from "./edits.ts";

/** Where a tyre would be set next, in rows from the left. */
const place = signal(1);

function turn(at: number, rows: number): void {
  const before = valueAt("rowPositions");
  const said = `${tyresIn(before).includes(at) ? "take the tire from" : "set a tire on"} ${sayPlace(at, rows)}`;
  editMany(tyreTurned(before, at), "chosen", said);
}

interface TyresProps {
  readonly rows: number;
  readonly layout: PassLayout;
  readonly width: number;
  readonly height: number;
}

/** Lies over the rows: a click or a finger sets a tyre or takes it away, arrow keys choose the place and Enter does it. */
export function TyreGlass({ rows, layout, width, height }: TyresProps) {
  const hint = useId();
  const at = clampedPlace(place.value, rows);
  const { left, right, top, bottom } = layout;
  const share = (px: number, of: number) => `${((100 * px) / of).toFixed(3)}%`;
  const step: Readonly<Record<string, number>> = {
    ArrowLeft: at - 0.5,
    ArrowDown: at - 0.5,
    ArrowRight: at + 0.5,
    ArrowUp: at + 0.5,
    PageUp: at + 5,
    PageDown: at - 5,
    Home: 0.5,
    End: rows + 0.5,
  };
  return (
    <>
      <div
        class="tyre-glass"
        role="slider"
        tabIndex={0}
        aria-label="Place for a tire"
        aria-describedby={hint}
        aria-valuemin={0.5}
        aria-valuemax={rows + 0.5}
        aria-valuenow={at}
        aria-valuetext={`${sayPlace(at, rows)}${hasTyre(at) ? ", a tire" : ""}`}
        style={{
          left: share(left, width),
          width: share(right - left, width),
          top: share(top, height),
          height: share(bottom - top, height),
        }}
        onPointerMove={(event) => {
          if (event.pointerType === "mouse") place.value = placeOf(event, rows);
        }}
        onClick={(event) => {
          const clicked = placeOf(event, rows);
          place.value = clicked;
          turn(clicked, rows);
        }}
        onKeyDown={(event) => {
          const next = step[event.key];
          if (next !== undefined) place.value = clampedPlace(next, rows);
          else if (event.key === "Enter" || event.key === " ") turn(at, rows);
          else return;
          event.preventDefault();
        }}
      >
        <span
          class={hasTyre(at) ? "tyre-cursor is-set" : "tyre-cursor"}
          style={{ left: share(at - 0.5, rows) }}
          aria-hidden="true"
        />
      </div>
      <p id={hint} class="only-heard">
        Arrow keys go half a row, Page keys five rows, Home and End to the edges; Enter sets a tire or takes
        it away.
      </p>
    </>
  );
}

function placeOf(event: MouseEvent & { currentTarget: HTMLElement }, rows: number): number {
  const { left, width } = event.currentTarget.getBoundingClientRect();
  return placeAtShare((event.clientX - left) / width, rows);
}

function hasTyre(at: number): boolean {
  return tyresIn(valueAt("rowPositions")).includes(at);
}

/** The same for a finger on a small screen, a half row at a time. */
export function TyreButtons({ rows }: { rows: number }) {
  const at = clampedPlace(place.value, rows);
  const go = (by: number) => {
    place.value = clampedPlace(at + by, rows);
  };
  return (
    <p class="tools tyre-buttons no-print">
      <button type="button" onClick={() => go(-0.5)} disabled={at <= 0.5}>
        <span aria-hidden="true">←</span> half a row left
      </button>
      <button type="button" class="tyre-turn" onClick={() => turn(at, rows)}>
        {hasTyre(at) ? `Take the tire from ${sayPlace(at, rows)}` : `Set a tire: ${sayPlace(at, rows)}`}
      </button>
      <button type="button" onClick={() => go(0.5)} disabled={at >= rows + 0.5}>
        half a row right <span aria-hidden="true">→</span>
      </button>
    </p>
  );
}

/** The places as numbers, typed: 6, 11 or 6.5. */
export function TyreList() {
  const id = useId();
  const path = "rowPositions.tyreRows";
  const { value, problems } = fieldState(path, path, true);
  const wrong = problems.length > 0;
  return (
    <div class={`field${wrong ? " is-wrong" : ""}`} data-path={path}>
      <label for={id}>Tires on rows</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={listText(value)}
        aria-invalid={wrong || undefined}
        aria-describedby={wrong ? `${id}-hint ${id}-wrong` : `${id}-hint`}
        onInput={(event) => {
          const list = tyresFromText(event.currentTarget.value);
          editMany([[path, list], ...withoutCounts(list)], "typed", "type the tires");
        }}
        onBlur={endEdit}
      />
      <p class="field-hint" id={`${id}-hint`}>
        Counted from the left: 6, 11; between rows 6 and 7: 6.5
      </p>
      <ProblemNote id={`${id}-wrong`} problems={problems} />
    </div>
  );
}

const withoutCounts = takesOut("rowPositions", "tyreRows", alternatives.countedRows);

/** From numbers of rows alone to tyres on the drawing. */
export function placeTyres(rows: number, rowsInTrack: number): void {
  const count = Math.max(1, Math.min(rowsInTrack, rows));
  const at = Array.from({ length: count }, (_, i) => Math.max(1, Math.round(((i + 0.5) / count) * rows)));
  editMany([["rowPositions.tyreRows", [...new Set(at)]], ...withoutCounts(at)], "chosen", "place the tires");
}

/** All that was said of the rows is taken out. */
export function forgetRows(): void {
  edit("rowPositions", undefined, "chosen", "take out the rows");
}
