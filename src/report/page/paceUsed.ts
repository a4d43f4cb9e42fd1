import type { DigFitAnswer, FittedCase } from "../../answer/dig/digAnswer.ts";
import { passageFitted } from "../../evidence/dig/hinderBy.ts";
import { passageOf } from "../../soil/layers/slices.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import type { ReportInput } from "./reportInput.ts";

/** The pace that roots keep in a layer of a case, as the runs of the answer have it. */
export interface PaceUsed {
  /** Share of the pace, 0 to 1: the middle one of the runs. */
  readonly share: number;
  readonly byDig: boolean;
}

/** Where the dig decides, its fit stands for what density or penetrometer say; else they do, in the usual reading. */
export function paceUsed({ comparison }: ReportInput, caseName: string, layer: SoilLayer): PaceUsed {
  const fit = comparison.evidence?.dig?.fit ?? null;
  const undug = passageOf(layer, 0);
  const dug = fit === null || !fit.decides ? null : fitOf(fit, caseName);
  if (fit === null || dug === null || !isFitted(fit, layer)) return { share: undug, byDig: false };
  const share = passageFitted(
    layer,
    fit.what === "passage" ? { kind: "passage", layer: fit.layer! } : { kind: "penetration limit" },
    valueOf(dug, fit),
  );
  // Roots that stopped came down no slower than the soil itself lets them.
  return { share: dug.told.reading === "stopped" ? Math.max(share, undug) : share, byDig: true };
}

/** Its own, or that of the case whose dense layer is the very same. */
function fitOf({ cases, undug }: DigFitAnswer, caseName: string): FittedCase | null {
  const as = undug.find((one) => one.case === caseName)?.as ?? caseName;
  return cases.find((one) => one.case === as) ?? null;
}

/** Roots deeper than any value lets them count as through an open layer, those too shallow as above a shut one. */
function valueOf({ verdict, value }: FittedCase, { what }: DigFitAnswer): number {
  if (what !== "passage" || verdict === "meets") return value;
  return verdict === "no passage is open enough" ? 1 : 0;
}

function isFitted({ what, layer: fitted }: DigFitAnswer, layer: SoilLayer): boolean {
  return what === "passage" ? layer.name === fitted : layer.hindrance.resistanceMPa !== undefined;
}
