import { sayBoth } from "../../quantity/index.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import { isSod } from "../../crop/crop.ts";
import { maturityOf } from "../../crop/crops.ts";
import { statedDepthMm } from "../../scenario/statedDepth.ts";
import type { Fitted } from "../../evidence/dig/dig.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import { patternSite } from "../../weather/generate/rainPatterns.ts";
import { passageOf } from "../../soil/layers/slices.ts";
import type { Comparison } from "./comparison.ts";
import { atEndMm } from "./rootsOfCases.ts";

type Answer = Omit<Comparison, "cautions">;

/**
 * What has to be said beside a result: first what this very result calls for, then the limits of the model.
 * Each is one plain sentence or two, the same in every way out: a depth is said in both systems.
 */
export function cautionsFor(
  answer: Answer,
  scenario: Scenario,
  years: "single seasons" | "year after year" = "single seasons",
): string[] {
  const subsoil =
    years === "year after year"
      ? { said: yearsCautions(scenario), sendsToTheField: false }
      : subsoilCaution(scenario);
  return [
    ...(scenario.invented ? ["The data of this scenario are invented: it shows the tool, not a place."] : []),
    ...(scenario.rotation !== null && years === "single seasons"
      ? [
          `Seasons by themselves, each from the same starting water: what the rotation (${scenario.rotation.said}) leaves from year to year is told by "rootfront compare".`,
        ]
      : []),
    ...fewRunsCaution(answer),
    ...shortRecordCaution(answer),
    ...patternCaution(scenario),
    ...subsoil.said,
    ...fallowCaution(answer, scenario),
    ...densityCaution(answer, scenario),
    ...originCaution(answer, scenario),
    ...columnCaution(answer),
    ...rootlessCaution(answer, scenario),
    ...statedDepthCaution(answer, scenario),
    ...unripeCaution(answer, scenario),
    ...thresholdCaution(answer),
    ...capCaution(answer),
    ...stripsCapCaution(answer),
    ...starvedCaution(answer, scenario),
    ...afterFloweringCaution(answer),
    `Yield follows a published straight line against water use${regionSaid(answer)}, from another place and other years; rain at the right time can be worth far more or far less than the season's average.`,
    "One-dimensional: no water, roots or nutrients move sideways. Pests, disease, hail, frost, lodging and nutrients are left out.",
    "An estimate to think with, not a basis for insurance or credit; ask a licensed local adviser where local rules want one.",
    ...(scenario.money === null
      ? []
      : [
          "Money leaves out tax, labor not written down, risk and what the money could earn elsewhere; prices are as stated, not a forecast.",
        ]),
    ...(subsoil.sendsToTheField || answer.evidence !== null
      ? [
          "Before digging or coring have buried lines located; a pit wall can fall in, so follow the local excavation rules.",
        ]
      : []),
  ];
}

/** Farther than this from the latitude of the pattern's temperatures it is said. Ours. */
const tellingDegrees = 3;

/** A built-in pattern has the temperatures of one latitude wherever the field lies. */
function patternCaution({ weather: { source }, site }: Scenario): string[] {
  const { latitudeDeg } = patternSite;
  if (source.kind !== "normals" || source.ofPattern !== true) return [];
  if (Math.abs(Math.abs(site.latitudeDeg) - latitudeDeg) <= tellingDegrees) return [];
  const side = site.latitudeDeg < 0 ? "S" : "N";
  return [
    `The field lies at ${Number(Math.abs(site.latitudeDeg).toFixed(2))} ${side}, but the built-in rain pattern has the temperatures of an invented place at ${latitudeDeg} N: give a station record, or the monthly normals of a place near by.`,
  ];
}

/** What an answer of years in a row rests on, and what of the scenario it does not carry through them yet. */
function yearsCautions({ rotation, evidence, money, rowPositions }: Scenario): string[] {
  const start = rotation!.startsAsStated
    ? "Every chain of years begins with the water that the scenario states."
    : "Nothing measured says what the subsoil holds: every chain of years begins with what the years before left. Probe or core it, and this year's answer is surer.";
  const single = [
    ...(evidence === null ? [] : ["what was measured"]),
    ...(rowPositions === null ? [] : ["the row positions"]),
  ];
  return [
    start,
    "Roots stated for a case are those of the crop in question; the other crops of the rotation root as the soil lets them. No field is tilled between crops: residue lies as it was cut, or as stated.",
    ...(money === null
      ? []
      : [
          "Money here counts the gain of the years after the first in every year: what the first year brings beyond that comes once and is left out.",
        ]),
    ...(single.length === 0
      ? []
      : [
          `Not carried through the years yet: ${single.join(" and ")}. ${single.length === 1 ? "It is" : "They are"} answered with the years after the first, as single seasons.`,
        ]),
  ];
}

/** The subsoil's water decides: say how it was known, and send to the field where it was only assumed. */
function subsoilCaution({ cases }: Scenario): { said: string[]; sendsToTheField: boolean } {
  const kinds = new Set(cases.map(({ startingWater }) => startingWater.kind));
  const decides = "What the subsoil holds when the run begins decides what depth is worth";
  if (!kinds.has("share")) {
    return {
      said: [`${decides}; here it is as the scenario gives it, below the reach of later rain.`],
      sendsToTheField: false,
    };
  }
  return {
    said: [
      `${decides}: deep soil that is dry, or refills only in wet years, is worth next to nothing. Here it is a stated share, not a measurement: probe or core the subsoil and give what you find.`,
    ],
    sendsToTheField: true,
  };
}

/**
 * Below this share of its precipitation a simulated fallow stored less than measured ones do: the lower ends of tilled and
 * untilled fallow over ten seasons were 8 and 20 %, [Nielsen & Vigil 2010] abstract (read).
 */
const usualFallowShare = 0.2;

/** The trials were on fallows of 14 months: those of fewer than so many days are another thing. Ours. */
const wholeFallowDays = 300;

/** Fallow as simulated may store little, for want of winter storage most of all. Say so beside the trials. */
function fallowCaution({ cases }: Answer, scenario: Scenario): string[] {
  const shares = cases.flatMap(({ fallowStorageShare }, c) =>
    scenario.cases[c]!.fallowDays < wholeFallowDays ? [] : (fallowStorageShare ?? []),
  );
  if (shares.length === 0 || Math.min(...shares) >= usualFallowShare) return [];
  const percent = (share: number) => Math.round(100 * share);
  const [least, most] = [percent(Math.min(...shares)), percent(Math.max(...shares))];
  return [
    `Over the fallow ${least === most ? least : `${least} to ${most}`} % of the precipitation was stored. Trials of 14 months at Akron, Colorado, stored 20 % with tillage (8 to 34) and 35 % without (20 to 51) (Nielsen & Vigil 2010), so the subsoil is probably wetter than here. Water measured at sowing, without the fallow, makes a surer answer.`,
  ];
}

/** In other runs than the middle one roots come this much deeper, mm. Ours. */
const beyondMiddleMm = 100;

/** Said only where a density stands in the way of some roots, and its readings differ in what they let through. */
function densityCaution({ byRainTotal }: Answer, { cases, ensemble }: Scenario): string[] {
  const hindered = cases.some((plan, c) =>
    layersMet(byRainTotal, plan, c).some(
      (layer) => layer.hindrance.basis === "bulk density" && passageOf(layer, -1) !== passageOf(layer, 1),
    ),
  );
  if (!hindered) return [];
  return [
    ensemble.densityReading === "range"
      ? "How a bulk density is read as hindrance to roots moves the answer more than most inputs; the ranges here span a strict to a lenient reading."
      : `How a bulk density is read as hindrance to roots moves the answer more than most inputs; here it is the ${ensemble.densityReading} reading alone, so the ranges are too narrow.`,
  ];
}

/** The layers of a case that roots come to, or might in another run than the middle one. */
function layersMet(byRainTotal: Answer["byRainTotal"], { layers }: Case, c: number): SoilLayer[] {
  const reachMm = Math.max(...byRainTotal.map((at) => at.cases[c]!.finalRootDepthMm)) + beyondMiddleMm;
  return layers.filter(({ topMm }) => topMm < reachMm);
}

/** A layer is named from this loss of pace on, in the usual reading: less is within what densities are measured to. Ours. */
const tellingPace = 0.9;

/** What a dense layer was taken for decides how many roots it lets through: name the choice where nobody made it. */
function originCaution({ byRainTotal }: Answer, { cases, evidence }: Scenario): string[] {
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
      `${names} ${layers.length === 1 ? "is" : "are"} taken for ${taken}, in which ${share} % of the roots find cracks and old channels; if ${layers.length === 1 ? "it is" : "they are"} ${other}: that moves the answer.`,
    ];
  });
}

/** What a dig tells of a layer goes before what it is taken for. */
function isFitted({ name }: SoilLayer, fitted: Fitted | null): boolean {
  return fitted?.kind === "passage" && fitted.layer === name;
}

/** Fewer runs than this make no range to speak of: P10 would be the lowest but one. Ours. */
const fewestRuns = 20;

function fewRunsCaution({ method: { runs } }: Answer): string[] {
  if (runs >= fewestRuns) return [];
  return [
    runs === 1
      ? "One run only: it says nothing of how seasons differ. Ask for 20 or more, 200 as usual."
      : `${runs} runs only, so P10 and P90 are rough: ask for ${fewestRuns} or more, 200 as usual.`,
  ];
}

function shortRecordCaution({ method }: Answer): string[] {
  if (method.sowingYears >= Math.min(method.runs, 10)) return [];
  return [
    method.sowingYears === 1
      ? "The record holds one season only, so the ranges show no difference between years: bring more years."
      : `The record holds ${method.sowingYears} seasons only, so the ranges show few of the years that come: bring more years.`,
  ];
}

/** Roots that come to the end of the described soil might go on; not so where rock ends them. */
function columnCaution({ byRainTotal, cases }: Answer): string[] {
  const stoppedBy = (end: "rock" | "described soil") =>
    cases.filter((_, c) => byRainTotal.some((at) => at.cases[c]?.rootsEndAt === end));
  const [rock, described] = [stoppedBy("rock"), stoppedBy("described soil")];
  return [
    ...(described.length === 0
      ? []
      : [
          `The roots of ${named(described)} came to the bottom of the soil described: describe it deeper, or state the rock as soil.restriction where there is some.`,
        ]),
    ...(rock.length === 0
      ? []
      : [
          `The roots of ${named(rock)} came to the rock stated; cracks in it, which some roots and water find, are left out.`,
        ]),
  ];
}

/** A depth told against the first case can leave no roots below the seed. */
function rootlessCaution({ byRainTotal }: Answer, { cases }: Scenario): string[] {
  const rootless = cases.filter(
    ({ crop }, c) =>
      !isSod(crop) && byRainTotal.some((at) => at.cases[c]!.finalRootDepthMm <= crop.sowingDepthMm),
  );
  if (rootless.length === 0) return [];
  return [
    `No roots are left below the seed of ${named(rootless)} in the middle season: give a depth that leaves some.`,
  ];
}

/** From this share of the seasons on it is said that roots ended above the depth stated for them. Ours. */
const tellingShortShare = 0.1;

/** A stated depth is where roots stop; the soil, or the crop's own pace, may not let them get there. */
function statedDepthCaution({ byRainTotal }: Answer, { cases }: Scenario): string[] {
  return cases.flatMap(({ name, rooting }, c) => {
    const statedMm = statedDepthMm(rooting, cases[0].rooting);
    const short = Math.max(...byRainTotal.map((at) => at.cases[c]!.shortOfStatedShare ?? 0));
    if (statedMm === null || short < tellingShortShare) return [];
    const reached = byRainTotal.map((at) => at.cases[c]!.finalRootDepthMm);
    const least = Math.min(...reached);
    const ends = [...new Set([least, Math.max(...reached)].map(sayDepth))].join(" to ");
    const middle = least < statedMm - atEndMm ? `, in the middle one at ${ends}` : "";
    return [
      `The roots of "${name}" ended above the ${sayDepth(statedMm)} stated for them in ${short === 1 ? "every season" : `${Math.round(100 * short)} % of the seasons`}${middle}: dry soil, a dense layer or the crop's own pace held them.`,
    ];
  });
}

function sayDepth(mm: number): string {
  return sayBoth(mm, "depth");
}

/** From this share of unripe seasons on it is said. */
const tellingUnripeShare = 0.1;

function unripeCaution({ byRainTotal }: Answer, { cases }: Scenario): string[] {
  const share = Math.max(...byRainTotal.flatMap(({ cases }) => cases.map(({ unripeShare }) => unripeShare)));
  if (share < tellingUnripeShare) return [];
  // An early type has no earlier one.
  const mend = cases.every(({ crop }) => maturityOf(crop) === "early")
    ? "it is an early type already, so sow earlier, or grow a crop that takes less time here"
    : "sow earlier, or choose an earlier maturity or shorter stage lengths";
  return [
    `In ${Math.round(100 * share)} % of the seasons the crop ran out of time before it was ripe, and the yield is that of a crop that was: ${mend}.`,
  ];
}

function thresholdCaution({ byRainTotal, method }: Answer): string[] {
  const { thresholdMm } = method.yieldLine;
  const below = byRainTotal.some((at) => at.cases.some(({ waterUseMm }) => waterUseMm <= thresholdMm));
  return below
    ? [
        "In the middle season a case uses no more water than the yield line asks for before the first grain: the line gives nothing there, however much water is added below that.",
      ]
    : [];
}

/** At the line's cap more water gives no more yield: a difference of nothing there is the line's doing. */
function capCaution({ byRainTotal, cases, method: { yieldLine } }: Answer): string[] {
  const { capKgPerHa, kgPerHaPerUnit } = yieldLine;
  if (capKgPerHa === null) return [];
  const capped = cases.filter((_, c) =>
    byRainTotal.some((at) => at.cases[c]!.yield.p50 * kgPerHaPerUnit >= 0.999 * capKgPerHa),
  );
  if (capped.length === 0) return [];
  return [
    `In the middle season ${named(capped)} ${capped.length === 1 ? "is" : "are"} at the line's cap, ${sayCap(cases, capKgPerHa, kgPerHaPerUnit)}: more water is worth nothing on the line there.`,
  ];
}

/** Strips above the cap are beyond what the line can give. */
function stripsCapCaution({ evidence, cases, method: { yieldLine } }: Answer): string[] {
  const { capKgPerHa, kgPerHaPerUnit } = yieldLine;
  const means = evidence?.strips?.meansKgPerHa ?? null;
  if (capKgPerHa === null || means === null || Math.max(...means) <= capKgPerHa) return [];
  return [
    `The strips yielded more than the line's cap, ${sayCap(cases, capKgPerHa, kgPerHaPerUnit)}: the line cannot say what water was worth there; give yield.cap if this field does better.`,
  ];
}

function sayCap(cases: Answer["cases"], capKgPerHa: number, kgPerHaPerUnit: number): string {
  return `${Math.round(capKgPerHa / kgPerHaPerUnit)} ${cases[0]!.yield.unit}`;
}

function regionSaid({ method: { yieldLine } }: Answer): string {
  return yieldLine.region === null ? "" : ` (for: ${yieldLine.region})`;
}

/** From this share of starved seasons on it is said. Ours. */
const tellingStarvedShare = 0.1;

/** A crop starved around flowering is outside what a line of whole seasons knows. */
function starvedCaution({ byRainTotal, cases, method }: Answer, scenario: Scenario): string[] {
  // Sod has no flowering that decides, and no grain.
  const shares = cases.map((_, c) =>
    isSod(scenario.cases[c]!.crop) ? 0 : Math.max(...byRainTotal.map((at) => at.cases[c]!.starvedShare)),
  );
  const starved = cases.filter((_, c) => shares[c]! >= tellingStarvedShare);
  if (starved.length === 0) return [];
  const most = Math.round(100 * Math.max(...shares));
  const taken =
    method.yieldLine.floweringLoss === null
      ? "no published loss stands in our sources for this crop, so none is taken off"
      : "a loss published for corn stressed around silking is taken off, its form between fed and starved is ours";
  return [
    `In up to ${most} % of the seasons the crop of ${named(starved)} met a quarter or less of its demand in the six weeks around flowering. Such a crop may set no grain, which a yield line does not know: ${taken}.`,
  ];
}

function afterFloweringCaution({ differences }: Answer): string[] {
  const late = differences.filter(
    ({ shareAfterFlowering, extraWaterUsedMm }) =>
      extraWaterUsedMm.p50 > 0 && (shareAfterFlowering ?? 0) >= 0.5,
  );
  return late.length === 0
    ? []
    : [
        `Half or more of the extra water of ${named(late.map(({ to }) => ({ name: to })))} was used after flowering, where an inch is worth more than the season's average that the yield line takes.`,
      ];
}

function named(cases: readonly Pick<Case, "name">[]): string {
  return cases.map(({ name }) => `"${name}"`).join(", ");
}
