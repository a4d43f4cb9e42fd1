import { lineChoiceNames } from "../../src/crop/yield/yieldLines.ts";
import { cropNamed, cropNames } from "../../src/crop/crops.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import { textureClass } from "../../src/soil/equations/texture.ts";
import type { ResolvedScenario } from "./protocol.ts";

/** What the page is told of a scenario: everything but the days of its record. */
export function resolvedOf(scenario: Scenario): ResolvedScenario {
  const { source, ...plan } = scenario.weather;
  const record = source.kind === "record" ? source.record : null;
  const { name: crop } = scenario.cases[0].crop;
  return {
    ...scenario,
    cases: scenario.cases.map((one) => ({
      ...one,
      layers: one.layers.map((layer) => ({
        ...layer,
        texture: textureClass(layer.sandFraction, layer.clayFraction),
      })),
    })),
    weather: {
      ...plan,
      source: source.kind,
      station: record?.station ?? null,
      recordFirstDay: record?.firstDay ?? null,
      recordDays: record?.days ?? null,
    },
    choices: {
      crops: cropNames,
      yieldLines: cropNamed(crop) === null ? [] : lineChoiceNames(crop, scenario.site.latitudeDeg),
    },
  };
}
