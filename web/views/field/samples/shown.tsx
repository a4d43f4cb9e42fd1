import type { CoreMean, LayerSampled } from "../../../../src/evidence/samples/soilSampled.ts";
import type { SampledCase } from "../../../../src/answer/comparison/evidenceAnswer.ts";
import { fixed, percent, shownIn, type Formatters } from "../../../../src/report/tables/formatters.ts";
import { answer, resolved } from "../../../worker/client.ts";
import { Panel } from "../../answer/panel.tsx";
import { answerClass } from "../../parts.tsx";
import { CoredLayers } from "./coredLayers.tsx";
import { Pushed } from "./pushed.tsx";

/** Pictures, the table by layer and the sentences; where nothing is sampled yet, what to take. */
export function SamplesShown() {
  const now = answer.value;
  const samples = now?.comparison.evidence?.samples ?? [];
  if (now === null || samples.length === 0)
    return (
      <p>
        No samples yet. Take two cores or more from each layer in a ring of known volume, push a probe to
        where it stops, or log a penetrometer a day or two after a soaking.
      </p>
    );
  const shown = shownIn(now.units);
  const confidence = now.comparison.evidence!.confidence;
  return (
    <div class={`panels ${answerClass()}`}>
      {samples.map((one) => (
        <SampledParts
          key={one.case}
          one={one}
          named={samples.length > 1}
          confidence={confidence}
          shown={shown}
        />
      ))}
      <section class="panel samples-said">
        <h2>What the samples say</h2>
        <ul>
          {now.field.samples.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

interface SampledPartsProps {
  readonly one: SampledCase;
  /** Said where more than one case has samples of its own. */
  readonly named: boolean;
  readonly confidence: number;
  readonly shown: Formatters;
}

function SampledParts({ one, named, confidence, shown }: SampledPartsProps) {
  const whose = named ? `, “${one.case}”` : "";
  const layers = resolved.value?.cases.find(({ name }) => name === one.case)?.layers ?? [];
  return (
    <>
      {one.cores !== null && (
        <Panel title={`Water in the cores${whose}`} class="panel-wide">
          {(width) => (
            <>
              <CoredLayers
                sampled={one.cores!}
                layers={layers}
                confidence={confidence}
                width={Math.min(width, 860)}
                shown={shown}
              />
              <CoresTable layers={one.cores!.layers} confidence={confidence} shown={shown} />
            </>
          )}
        </Panel>
      )}
      {one.penetrometer !== null && (
        <Panel title={`Penetrometer${whose}`}>
          {(width) => (
            <Pushed log={one.penetrometer!} layers={layers} width={Math.min(width, 560)} shown={shown} />
          )}
        </Panel>
      )}
    </>
  );
}

interface CoresTableProps {
  readonly layers: readonly LayerSampled[];
  readonly confidence: number;
  readonly shown: Formatters;
}

/** By layer, each figure with its interval under it. */
function CoresTable({ layers, confidence, shown }: CoresTableProps) {
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label="Cores by layer">
      <table class="samples-table">
        <caption class="only-heard">Cores by layer, with {percent(confidence)} intervals</caption>
        <thead>
          <tr>
            <th scope="col">Layer</th>
            <th scope="col">Cores</th>
            <th scope="col">Density, g/cm³</th>
            <th scope="col">By weight</th>
            <th scope="col">By volume</th>
            <th scope="col">Water, {shown.length}</th>
            <th scope="col">Available, {shown.length}</th>
          </tr>
        </thead>
        <tbody>
          {layers.map((layer) => (
            <tr key={layer.name}>
              <th scope="row">{layer.name}</th>
              <td>{layer.cores}</td>
              <MeanCell mean={layer.densityKgPerM3} say={(value) => fixed(value / 1000, 2)} />
              <MeanCell mean={layer.gravimetricPercent} say={(value) => `${fixed(value, 1)} %`} />
              <MeanCell mean={layer.volumeFraction} say={(value) => `${fixed(100 * value, 1)} %`} />
              <MeanCell mean={layer.storedMm} say={shown.fineWater} />
              <MeanCell mean={layer.availableMm} say={shown.fineWater} />
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function MeanCell({ mean, say }: { mean: CoreMean | null; say: (value: number) => string }) {
  if (mean === null) return <td>–</td>;
  return (
    <td>
      {say(mean.mean)}
      {mean.interval !== null && (
        <span class="within">
          {say(mean.interval.low)} to {say(mean.interval.high)}
        </span>
      )}
    </td>
  );
}
