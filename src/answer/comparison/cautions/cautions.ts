import type { Scenario } from "../../../scenario/scenario.ts";
import type { Uncautioned } from "../comparison.ts";
import { patternCaution, fewRunsCaution, shortRecordCaution } from "./weatherCautions.ts";
import { yearsCautions, subsoilCaution, fallowCaution } from "./waterCautions.ts";
import { densityCaution, originCaution, undecidedCaution } from "./denseLayerCautions.ts";
import { columnCaution, rootlessCaution, statedDepthCaution } from "./rootCautions.ts";
import {
  unripeCaution,
  thresholdCaution,
  capCaution,
  stripsCapCaution,
  regionSaid,
  starvedCaution,
  afterFloweringCaution,
} from "./yieldCautions.ts";

/**
 * What has to be said beside a result: first what this very result calls for, what matters most for it in front, then the limits
 * of the model. A page may show the first two and fold the rest.
 * Each is one plain sentence or two, the same in every way out: a depth is said in both systems.
 */
export function cautionsFor(
  answer: Uncautioned,
  scenario: Scenario,
  years: "single seasons" | "year after year" = "single seasons",
): string[] {
  const subsoil =
    years === "year after year"
      ? { said: yearsCautions(scenario), sendsToTheField: false }
      : subsoilCaution(scenario);
  return [
    ...(scenario.rotation !== null && years === "single seasons"
      ? [
          `Single seasons, each from the same starting water: what the rotation (${scenario.rotation.said}) leaves from year to year is in "rootfront compare".`,
        ]
      : []),
    // What makes the answer hold less than it says.
    ...fewRunsCaution(answer),
    ...shortRecordCaution(answer),
    ...rootlessCaution(answer, scenario),
    ...unripeCaution(answer, scenario),
    ...thresholdCaution(answer),
    ...capCaution(answer),
    ...(years === "year after year" ? undecidedCaution(answer) : []),
    // What moves it most.
    ...subsoil.said,
    ...densityCaution(answer, scenario),
    ...originCaution(answer, scenario),
    ...columnCaution(answer),
    ...statedDepthCaution(answer, scenario),
    ...starvedCaution(answer, scenario),
    ...patternCaution(scenario),
    ...fallowCaution(answer, scenario),
    ...stripsCapCaution(answer),
    ...afterFloweringCaution(answer),
    // The limits of the model, and of its use.
    ...(scenario.invented ? ["The data of this scenario are invented: it shows the tool, not a place."] : []),
    `Yield follows a published straight line against water use${regionSaid(answer)}, from another place and other years; rain at the right time can be worth far more or far less than the season's average.`,
    "One-dimensional: no water, roots or nutrients move sideways. Pests, disease, hail, frost, lodging and nutrients are left out.",
    "An estimate to think with, not a basis for insurance or credit; ask a licensed local adviser where local rules require one.",
    ...(scenario.money === null
      ? []
      : [
          "Money leaves out taxes, labor not entered, risk and what the money could earn elsewhere; prices are as stated, not a forecast.",
        ]),
    ...(subsoil.sendsToTheField || answer.evidence !== null
      ? [
          "Before digging or coring, have buried lines located. A pit wall can fall in: follow the local excavation rules.",
        ]
      : []),
  ];
}
