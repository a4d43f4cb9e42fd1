import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { depthY, type Window } from "../../pictures/kit/box.ts";
import type { PitWallLayout } from "../../pictures/pit/pitWallLayout.ts";
import { editMany, endEdit, scenario } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import type { LayerShown } from "../../worker/protocol.ts";
import { boundaryAt, boundaryChanges, boundaryStepMm, canMove } from "./boundaryEdit.ts";
import { sharesOf } from "./overlay.ts";

interface BoundariesProps {
  readonly layers: readonly LayerShown[];
  readonly caseIndex: number;
  readonly layout: PitWallLayout;
  readonly window: Window;
  /** While a boundary is held the depth axis must not move under it. */
  readonly onHold: (isHeld: boolean) => void;
}

/** The edges of the layers, to be moved with the hand or by arrow keys. */
export function Boundaries({ layers, caseIndex, layout, window, onHold }: BoundariesProps) {
  const movable = layers
    .map((layer, index) => ({ layer, index }))
    .filter(
      ({ layer, index }) =>
        layer.bottomMm <= window.depthMm + 0.5 && canMove(scenario.value, caseIndex, layers, index),
    );
  const { soil } = layout;
  const edges = movable.map(({ layer }) => depthY(soil, window, layer.bottomMm));
  const centres = apart(
    edges,
    edges.map(() => targetPx),
    soil.y - targetPx / 2,
    soil.y + soil.height + targetPx / 2,
  );
  return (
    <>
      {movable.map(({ layer, index }, m) => (
        <Boundary
          key={index}
          {...{ layer, index, layers, caseIndex, layout, window, onHold }}
          asidePx={centres[m]! - edges[m]!}
        />
      ))}
    </>
  );
}

interface BoundaryProps extends BoundariesProps {
  readonly layer: LayerShown;
  readonly index: number;
  /** How far the handle stands below its edge, so as not to lie on the next one. */
  readonly asidePx: number;
}

/** Room for a finger, and a little for rounding, CSS pixels: 24 by WCAG 2.2, success criterion 2.5.8 (memory). */
const targetPx = 24.5;

/** A run of key presses counts as one step of undo until the keys have rested this long. */
const keysRestMs = 900;
/** The engine's reading of a moved edge is waited for this long. */
const longestWaitMs = 1500;

function Boundary(props: BoundaryProps) {
  const { layer, index, layers, caseIndex, layout, window, onHold, asidePx } = props;
  const { soil, width, height } = layout;
  const shown = shownIn(units.value);
  // The depth comes back from the engine; until it has, the edge stays where the hand put it.
  const held = useSignal<number | null>(null);
  const grip = useRef<{ readonly y: number; readonly fromMm: number; readonly mmPerPx: number } | null>(null);
  const resting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  // An answer to an earlier step does not take the edge back.
  const followEngine = () => {
    const asked = held.peek();
    if (grip.current === null && asked !== null && Math.abs(layer.bottomMm - asked) < 0.05) held.value = null;
  };
  useEffect(followEngine, [layer.bottomMm]);
  const written = scenario.value;
  const mine = useRef<typeof written | null>(null);
  useEffect(() => {
    // Undone, or changed elsewhere: what the hand did no longer holds. Effects come late, so the newest is looked at.
    if (grip.current === null && scenario.peek() !== mine.current) held.value = null;
  }, [written]);
  useEffect(
    () => () => {
      clearTimeout(resting.current);
      clearTimeout(waiting.current);
    },
    [],
  );
  const nowMm = held.value ?? layer.bottomMm;
  const below = layers[index + 1];

  const moveTo = (wantedMm: number) => {
    const mm = boundaryAt(layers, index, wantedMm, units.peek());
    if (Math.abs(mm - (held.peek() ?? layer.bottomMm)) < 0.01) return;
    const changes = boundaryChanges(scenario.peek(), caseIndex, layers, index, mm, units.peek());
    if (changes === null) return;
    held.value = mm;
    editMany(changes, "slid", `move the bottom of ${layer.name}`);
    mine.current = scenario.peek();
  };
  // Where the scenario cannot be read that depth never comes back.
  const letBack = () => {
    clearTimeout(waiting.current);
    waiting.current = setTimeout(() => {
      if (grip.current === null) held.value = null;
    }, longestWaitMs);
  };
  const drop = () => {
    if (grip.current === null) return;
    grip.current = null;
    endEdit();
    onHold(false);
    followEngine();
    letBack();
  };
  const step = boundaryStepMm(units.value);
  const keys: Readonly<Record<string, number>> = {
    ArrowDown: step,
    ArrowRight: step,
    ArrowUp: -step,
    ArrowLeft: -step,
    PageDown: 4 * step,
    PageUp: -4 * step,
  };
  const at = sharesOf({ ...soil, y: depthY(soil, window, nowMm), height: 0 }, width, height);
  return (
    <div
      class="boundary"
      role="slider"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label={`Bottom of ${layer.name}`}
      aria-valuemin={0}
      aria-valuemax={Math.round(below?.bottomMm ?? window.depthMm)}
      aria-valuenow={Math.round(nowMm)}
      aria-valuetext={`${shown.depth(nowMm)} ${shown.length}`}
      title={`Bottom of ${layer.name}: drag, or use the arrow keys`}
      style={{ left: at.left, top: at.top, width: at.width, "--aside": `${asidePx.toFixed(1)}px` }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.preventDefault();
        event.currentTarget.focus();
        event.currentTarget.setPointerCapture(event.pointerId);
        const px = event.currentTarget.parentElement!.getBoundingClientRect().height * (soil.height / height);
        grip.current = { y: event.clientY, fromMm: nowMm, mmPerPx: window.depthMm / px };
        onHold(true);
      }}
      onPointerMove={(event) => {
        const from = grip.current;
        if (from !== null) moveTo(from.fromMm + (event.clientY - from.y) * from.mmPerPx);
      }}
      onPointerUp={drop}
      onPointerCancel={drop}
      onKeyDown={(event) => {
        const by = keys[event.key];
        if (by === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
        event.preventDefault();
        moveTo((held.peek() ?? layer.bottomMm) + by);
        letBack();
        clearTimeout(resting.current);
        resting.current = setTimeout(endEdit, keysRestMs);
      }}
      onBlur={endEdit}
    >
      <span class="boundary-grip" aria-hidden="true" />
      {held.value !== null && (
        <span class="boundary-depth" aria-hidden="true">
          {shown.depth(nowMm)} {shown.length}
        </span>
      )}
    </div>
  );
}
