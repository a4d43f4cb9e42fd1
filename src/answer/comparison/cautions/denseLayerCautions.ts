import type { Case, Scenario } from "../../../scenario/scenario.ts";
import type { Fitted } from "../../../evidence/dig/dig.ts";
import type { SoilLayer } from "../../../soil/layers/layer.ts";
import { passageOf } from "../../../soil/layers/slices.ts";
import type { Uncautioned } from "../comparison.ts";

/** In other runs than the middle one roots come this much deeper, mm. Ours. */
const beyondMiddleMm = 100;

/** Said only where a density stands in the way of some roots, and its readings differ in what they let through. */
export function densityCaution({ byRainTotal }: Uncautioned, { cases, ensemble }: Scenario): string[] {
  const hindered = cases.some((plan, c) =>
    layersMet(byRainTotal, plan, c).some(
      (layer) => layer.hindrance.basis === "bulk density" && passageOf(layer, -1) !== passageOf(layer, 1),
    ),
  );
  if (!hindered) return [];
  return [
    ensemble.densityReading === "range"
      ? "How much a given bulk density slows roots is not well known, and it moves the answer more than most inputs; the ranges here span a strict to a lenient reading."
      : `How much a given bulk density slows roots is not well known, and it moves the answer more than most inputs; here it is the ${ensemble.densityReading} reading alone, so the ranges are too narrow.`,
  ];
}

/** The layers of a case that roots come to, or might in another run than the middle one. */
function layersMet(byRainTotal: Uncautioned["byRainTotal"], { layers }: Case, c: number): SoilLayer[] {
  const reachMm = Math.max(...byRainTotal.map((at) => at.cases[c]!.finalRootDepthMm)) + beyondMiddleMm;
  return layers.filter(({ topMm }) => topMm < reachMm);
}

/** A layer is named from this loss of pace on, in the usual reading: less is within what densities are measured to. Ours. */
const tellingPace = 0.9;

/** What a dense layer was taken for decides how many roots it lets through: name the choice where nobody made it. */
export function originCaution({ byRainTotal }: Uncautioned, { cases, evidence }: Scenario): string[] {
  const assumed = cases
    .flatMap((plan, c) => layersMet(byRainTotal, plan, c))
    .filter(({ originAssumed, hindrance }) => originAssumed && hindrance.usual < tellingPace)
    .filter((layer) => !(evidence?.dig?.drives === true && isFitted(layer, evidence.dig.fitted)));
  const named = (isNatural: boolean) => [
    ...new Map(
      assumed.filter(({ origin }) => (origin === "natural") === isNatural).map((one) => [one.name, one]),
    ).values(),
  ];
  return [true, false].flatMap((isNatural) => {
    const layers = named(isNatural);
    const first = layers[0];
    if (first === undefined) return [];
    const names = layers.map(({ name }) => `"${name}"`).join(", ");
    const [taken, other] = isNatural
      ? ["natural dense soil", 'a pan or a wheel track, say so (origin "tillage pan" or "wheel track")']
      : ["a pan", 'natural, say so (origin "natural")'];
    const share = Math.round(100 * first.openShare.middle);
    return [
      `${names} ${layers.length === 1 ? "is" : "are"} taken to be ${taken}, in which ${share} % of the roots find cracks and old channels; if ${layers.length === 1 ? "it is" : "they are"} ${other}: that moves the answer.`,
    ];
  });
}

/** What a dig tells of a layer goes before what it is taken for. */
function isFitted({ name }: SoilLayer, fitted: Fitted | null): boolean {
  return fitted?.kind === "passage" && fitted.layer === name;
}

/** Year after year no range is told of roots that a dig leaves undecided: single seasons tell it. */
export function undecidedCaution({ evidence }: Uncautioned): string[] {
  const fit = evidence?.dig?.fit ?? null;
  if (fit === null || !fit.decides) return [];
  const names = fit.cases.filter(({ told }) => told.reading === "either").map((one) => `"${one.case}"`);
  if (names.length === 0) return [];
  return [
    `One day's dig cannot tell whether the roots of ${names.join(" and ")} stopped or go on slowly; here they go on. If they stopped, the difference is another one and returns in later years: "rootfront evidence" gives both for single seasons.`,
  ];
}
