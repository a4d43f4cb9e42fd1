import { densityThresholds, familyClass } from "../../../../src/soil/equations/densityFactor.ts";
import type { LayerShown } from "../../../worker/protocol.ts";
import { edit, endEdit } from "../../../state/scenarioStore.ts";
import { useId } from "preact/hooks";
import { densitySaid, type Decides } from "../densityWords.ts";

/** Span of the ruler, g/cm³: loose topsoil to the densest that any texture stands at. */
const [from, to] = [1.0, 2.0];

/**
 * Where roots slow in soil of this texture, as marks on a ruler of bulk density. A mark can be taken as the density; so can any
 * place of the ruler.
 *
 * @param path of the density
 * @param decides what holds roots back there: a penetrometer reading may stand in for it, or nothing is known
 */
export function DensityRuler({
  layer,
  path,
  decides,
}: {
  layer: LayerShown;
  path: string;
  decides: Decides;
}) {
  const id = useId();
  const { sandFraction, clayFraction, bulkDensityKgPerM3, name } = layer;
  const family = familyClass(sandFraction, clayFraction);
  const at = densityThresholds(family);
  const density = bulkDensityKgPerM3 / 1000;
  const marks = [
    { at: at.unhinderedKgPerM3 / 1000, word: "no hindrance up to" },
    { at: at.restrictionBeginsKgPerM3 / 1000, word: "half pace at" },
    { at: at.rootLimitingKgPerM3 / 1000, word: "nearly stopped from" },
  ];
  const write = (value: number, how: "slid" | "chosen") =>
    edit(path, `${value.toFixed(2)} g/cm^3`, how, `set the density of ${name}`);
  const place = (value: number) => `${((Math.min(to, Math.max(from, value)) - from) / (to - from)) * 100}%`;
  return (
    <div class={`ruler${decides === "penetrometer" ? " is-idle" : ""}`}>
      <p class="ruler-said" id={`${id}-said`}>
        {densitySaid(layer, decides).map(({ text, isStrong }) =>
          isStrong === true ? <strong key={text}>{text}</strong> : text,
        )}
      </p>
      <div class="ruler-bar">
        <div class="ruler-zones" aria-hidden="true" style={zones(marks.map((mark) => place(mark.at)))}>
          {marks.map((mark) => (
            <span key={mark.word} class="ruler-tick" style={{ left: place(mark.at) }} />
          ))}
        </div>
        <input
          type="range"
          aria-label={`Bulk density of ${name}, g/cm³`}
          aria-describedby={`${id}-said`}
          min={from}
          max={to}
          step={0.01}
          value={Math.min(to, Math.max(from, density))}
          aria-valuetext={`${density.toFixed(2)} g/cm³`}
          onInput={(event) => write(event.currentTarget.valueAsNumber, "slid")}
          onChange={endEdit}
        />
      </div>
      <ul class="ruler-marks">
        {marks.map((mark) => (
          <li key={mark.word}>
            <button type="button" class="small" onClick={() => write(mark.at, "chosen")}>
              {mark.word} {mark.at.toFixed(2)}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Loose to dense as the marks part them; hatching tells the last two apart without colour. */
function zones([first, second, third]: string[]) {
  return {
    background: `linear-gradient(to right, var(--ruler-open) 0 ${first}, var(--ruler-slow) ${second}, var(--ruler-shut) ${third} 100%)`,
  };
}
