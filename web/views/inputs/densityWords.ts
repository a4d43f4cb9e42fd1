import {
  densityHindrance,
  familyClass,
  type FamilyClass,
} from "../../../src/soil/equations/densityFactor.ts";
import { passageWith } from "../../../src/soil/layers/slices.ts";
import type { LayerShown } from "../../worker/protocol.ts";

/** What decides whether a layer holds roots back. */
export type Decides = "density" | "penetrometer" | "nothing";

/** A phrase; what is to stand out in it is strong. */
export interface Phrase {
  readonly text: string;
  readonly isStrong?: boolean;
}

/** What a layer's density means to roots; without a density or a reading, that the model lets them pass. */
export function densitySaid(layer: LayerShown, decides: Decides): Phrase[] {
  const { sandFraction, clayFraction, bulkDensityKgPerM3, openShare } = layer;
  const density = `${(bulkDensityKgPerM3 / 1000).toFixed(2)} g/cm³`;
  if (decides === "nothing")
    return [
      { text: "No density or penetrometer reading: this layer does not hold roots back.", isStrong: true },
      {
        text: ` Type one if it is dense. The ${density} usual for its texture serves only how much water it holds.`,
      },
    ];
  const pace = densityHindrance(sandFraction, clayFraction, bulkDensityKgPerM3);
  const keep = `At ${density} in ${soilSaid(familyClass(sandFraction, clayFraction))} roots keep `;
  const readings =
    pace.strict === pace.lenient
      ? ""
      : ` (${percent(pace.strict)} read strictly, ${percent(pace.lenient)} leniently)`;
  const cracks =
    decides === "density" && pace.usual < 1
      ? `; with those that find cracks (${percent(openShare.middle)}), ${percent(passageWith(openShare.middle, pace.usual))}`
      : "";
  const instead = decides === "penetrometer" ? " The penetrometer reading decides instead." : "";
  return [
    { text: keep },
    { text: percent(pace.usual), isStrong: true },
    { text: ` of their pace${readings}${cracks}.${instead}` },
  ];
}

/** The class that sets where roots slow, as one would say it: its share is of clay. */
function soilSaid(family: FamilyClass): string {
  const [kind, share] = family.split(/ (.*)/);
  return `${kind} soil${share === undefined ? "" : ` (${share} clay)`}`;
}

const percent = (share: number) => `${Math.round(share * 100)} %`;
