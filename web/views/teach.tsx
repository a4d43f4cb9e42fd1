import { shownIn } from "../../src/report/shownUnits.ts";
import { Slider } from "../inputs/slider.tsx";
import { edit } from "../state/scenarioStore.ts";
import { units } from "../state/view.ts";
import { answer, understood } from "../worker/client.ts";
import { Cautions, StaleMark, WhenAnswered } from "./parts.tsx";

/** Large type and a slider: compaction, shown live. */
export function TeachView() {
  return (
    <>
      <h1>What does a dense layer cost?</h1>
      <StaleMark />
      <WhenAnswered>{() => <Lesson />}</WhenAnswered>
    </>
  );
}

function Lesson() {
  const shown = shownIn(units.value);
  const layers = understood.value?.cases[0]?.layers ?? [];
  const densest = layers.reduce(
    (best, layer, l) => (layer.bulkDensityKgPerM3 > layers[best]!.bulkDensityKgPerM3 ? l : best),
    0,
  );
  const layer = layers[densest];
  const rainMm = answer.value!.comparison.rainTotalMm;
  return (
    <>
      {layer !== undefined && (
        <Slider
          label={`Density of “${layer.name}”`}
          value={layer.bulkDensityKgPerM3 / 1000}
          from={1.2}
          to={1.8}
          step={0.01}
          say={(value) => `${value.toFixed(2)} g/cm³`}
          onSlide={(value) =>
            edit(
              `soil.layers[${densest}].bulkDensity`,
              `${value.toFixed(2)} g/cm^3`,
              "slid",
              "slide the density",
            )
          }
        />
      )}
      {rainMm !== null && (
        <Slider
          label="Rain in the year"
          value={rainMm / 25.4}
          from={8}
          to={20}
          step={0.1}
          say={(value) => `${shown.total(value * 25.4)} ${shown.length}`}
          onSlide={(value) => edit("weather.annualRain", `${value.toFixed(1)} in`, "slid", "slide the rain")}
        />
      )}
      <p class="answer-sentence">{answer.value?.sentences[0]}</p>
      <Cautions />
    </>
  );
}
