import { useSignal } from "@preact/signals";
import { useEffect, useId, useRef } from "preact/hooks";
import { endEdit } from "../state/scenarioStore.ts";

export interface SliderProps {
  readonly label: string;
  readonly value: number;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** The value for the eye and the ear: "1.62 g/cm³". */
  readonly say: (value: number) => string;
  /** On every move; write to the scenario with `edit(path, ..., "slid")`, so that a whole move is one step of undo. */
  readonly onSlide: (value: number) => void;
  readonly marks?: readonly { readonly at: number; readonly word: string }[];
}

/** A slider whose every move is answered and whose letting go closes the step of undo. */
export function Slider({ label, value, from, to, step, say, onSlide, marks = [] }: SliderProps) {
  const id = useId();
  // The value comes back from the engine; until it has, the thumb stays where the hand put it.
  const held = useSignal<number | null>(null);
  const sliding = useRef(false);
  useEffect(() => {
    if (!sliding.current) held.value = null;
  }, [value]);
  const shown = held.value ?? value;
  return (
    <div class="slider">
      <label for={id}>
        <span class="slider-label">{label}</span>
        <output for={id} class="slider-value">
          {say(shown)}
        </output>
      </label>
      <input
        id={id}
        type="range"
        min={from}
        max={to}
        step={step}
        value={shown}
        aria-valuetext={say(shown)}
        list={marks.length > 0 ? `${id}-marks` : undefined}
        onInput={(event) => {
          const slid = event.currentTarget.valueAsNumber;
          sliding.current = true;
          held.value = slid;
          onSlide(slid);
        }}
        onChange={() => {
          sliding.current = false;
          endEdit();
        }}
      />
      {marks.length > 0 && (
        <datalist id={`${id}-marks`}>
          {marks.map(({ at, word }) => (
            <option key={at} value={at}>
              {word}
            </option>
          ))}
        </datalist>
      )}
    </div>
  );
}
