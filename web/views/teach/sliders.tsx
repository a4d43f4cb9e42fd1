import { useId, useRef } from "preact/hooks";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { Slider } from "../../forms/slider.tsx";
import { scenario, valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { answer, resolved } from "../../worker/client.ts";
import type { LayerShown, ResolvedScenario } from "../../worker/protocol.ts";
import { boundaryStepMm } from "../pit/boundaryEdit.ts";
import { densityPath, movedTo, paceIn, topRange, type DenseLayer } from "./denseLayer.ts";
import { denseLayer, fitted, keepDenseLayer, nameDenseLayer } from "./lesson.ts";
import { CopyNote, tryOut } from "./onCopy.tsx";
import { ownRain, rainSlid, sayRain } from "./rainSlid.ts";

/** The three things that are slid in the lesson. */
export function Sliders() {
  const soil = resolved.value;
  const dense = denseLayer.value;
  const layer = dense === null ? undefined : soil?.cases[dense.caseIndex]?.layers[dense.index];
  return (
    <section class="teach-sliders" aria-label="What may be changed">
      {soil !== null && dense !== null && layer !== undefined && (
        <>
          <DensitySlider {...{ soil, dense, layer }} />
          <DepthSlider {...{ soil, dense, layer }} />
        </>
      )}
      {soil !== null && <RainSlider soil={soil} />}
      {soil !== null && layer !== undefined && <WhichLayer soil={soil} layer={layer} />}
      <CopyNote />
    </section>
  );
}

interface OfLayer {
  readonly soil: ResolvedScenario;
  readonly dense: DenseLayer;
  readonly layer: LayerShown;
}

/** g/cm³: from loose to denser than any root gets through. */
const densities = { from: 1.1, to: 1.9, step: 0.01 } as const;

function DensitySlider({ soil, dense, layer }: OfLayer) {
  const path = densityPath(scenario.value, dense, layer.name);
  if (path === null) return <FromFile />;
  const density = layer.bulkDensityKgPerM3 / 1000;
  const byReading = layer.hindrance.basis === "penetration resistance";
  const { name } = soil.cases[dense.caseIndex]!;
  // Then sliding the density would not move the roots of this case.
  const dug = fitted.value?.layer === layer.name ? fitted.value.byCase.get(dense.caseIndex) : undefined;
  return (
    <>
      <Slider
        label={`Density of “${layer.name}”`}
        value={density}
        from={Math.min(densities.from, density)}
        to={Math.max(densities.to, density)}
        step={densities.step}
        say={(value) => `${value.toFixed(2)} g/cm³`}
        onSlide={(value) => {
          keepDenseLayer();
          tryOut([[path, `${value.toFixed(2)} g/cm^3`]], "slid", `slide the density of ${layer.name}`);
        }}
      />
      <p class="teach-note">
        {byReading
          ? "A penetrometer reading sets how fast roots grow here; density only changes how much water the layer holds."
          : dug === undefined
            ? `Roots grow through it at ${percentOf(paceIn(layer))} of their usual speed.`
            : `By its density roots would grow through it at ${percentOf(paceIn(layer))} of their usual speed.`}
        {path.startsWith("cases") && ` Only in “${name}”.`}
      </p>
      {dug !== undefined && (
        <p class="teach-note">
          But the plants dug in “{name}” say {percentOf(dug)}, and the dig goes before the density.{" "}
          <button
            type="button"
            class="small"
            onClick={() => tryOut([["evidence.digDecides", false]], "chosen", "let the density decide")}
          >
            Let the density decide
          </button>
        </p>
      )}
    </>
  );
}

/** `46 %` */
function percentOf(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function DepthSlider({ soil, dense, layer }: OfLayer) {
  const { layers } = soil.cases[dense.caseIndex]!;
  const system = units.value;
  const range = topRange(layers, dense.index, system);
  const canMove = movedTo(scenario.value, layers, dense, layer.topMm, system) !== null;
  if (range === null || !canMove) {
    return densityPath(scenario.value, dense, layer.name) === null ? null : (
      <p class="teach-note">“{layer.name}” has no room above and below it to be moved in.</p>
    );
  }
  const shown = shownIn(system);
  const perUnit = system === "us" ? mmPerInch : 1;
  const thickMm = layer.bottomMm - layer.topMm;
  const inUnit = (mm: number) => Number((mm / perUnit).toFixed(2));
  return (
    <Slider
      label={`Depth of “${layer.name}”`}
      value={inUnit(layer.topMm)}
      from={inUnit(range.fromMm)}
      to={inUnit(range.toMm)}
      step={boundaryStepMm(system) / perUnit}
      say={(value) => {
        const topMm = value * perUnit;
        return `${shown.total(topMm)} to ${shown.total(topMm + thickMm)} ${shown.length}`;
      }}
      onSlide={(value) => {
        keepDenseLayer();
        const changes = movedTo(scenario.peek(), layers, dense, value * perUnit, system);
        if (changes !== null) tryOut(changes, "slid", `move ${layer.name}`);
      }}
    />
  );
}

function FromFile() {
  return (
    <p class="teach-note">
      The layers come from a file of horizons: change them there, or type layers in Inputs.
    </p>
  );
}

function RainSlider({ soil }: { readonly soil: ResolvedScenario }) {
  const now = answer.value;
  const own = useRef<{ readonly over: string; readonly mm: readonly [number, number] } | null>(null);
  if (now === null) return null;
  const system = units.value;
  const { rainTotalOver } = soil.weather;
  if (own.current?.over !== rainTotalOver)
    own.current = { over: rainTotalOver, mm: ownRain(soil, now.comparison) };
  const pattern = valueAt("weather.pattern") !== undefined;
  const { path, over, value, from, to, step, isAsItCame, canBeAsItCame, totals } = rainSlid(
    { weather: soil.weather, pattern },
    now.comparison,
    own.current.mm,
    system,
  );
  return (
    <>
      <Slider
        label={over === "year" ? "Rain in the year" : "Rain in the season"}
        value={value}
        from={from}
        to={to}
        step={step}
        say={(slid) => `${sayRain(slid, system)}${isAsItCame && slid === value ? ", as it came" : ""}`}
        onSlide={(slid) => tryOut([[path, sayRain(slid, system)]], "slid", "slide the rain")}
      />
      {isAsItCame && (
        <p class="teach-note">The years as they came. Moving the slider scales every {over} to that total.</p>
      )}
      {totals > 1 && <p class="teach-note">The middle of your {totals} totals.</p>}
      {!isAsItCame && canBeAsItCame && (
        <button
          type="button"
          class="small"
          onClick={() => tryOut([[path, undefined]], "chosen", "take the rain as it came")}
        >
          As it came
        </button>
      )}
    </>
  );
}

/** Another layer may be the lesson's. */
function WhichLayer({ soil, layer }: Omit<OfLayer, "dense">) {
  const id = useId();
  const names = [...new Set(soil.cases.flatMap(({ layers }) => layers.map(({ name }) => name)))];
  if (names.length < 2) return null;
  return (
    <p class="teach-which">
      <label for={id}>Layer to change</label>{" "}
      <select id={id} value={layer.name} onChange={(event) => nameDenseLayer(event.currentTarget.value)}>
        {names.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </p>
  );
}
