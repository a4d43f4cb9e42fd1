import type { Case, Scenario } from "../scenario/scenario.ts";
import type { Comparison } from "./comparison.ts";

type Answer = Omit<Comparison, "cautions">;

/** A front within this distance of its end counts as having reached it, mm. */
const atEndMm = 1;

/**
 * What has to be said beside a result: first what this very result calls for, then the limits of the model.
 * Each is one plain sentence or two, without units, the same in every way out.
 */
export function cautionsFor(answer: Answer, scenario: Scenario): string[] {
  const subsoil = subsoilCaution(scenario);
  return [
    ...(scenario.invented ? ["The data of this scenario are invented: it shows the tool, not a place."] : []),
    ...shortRecordCaution(answer),
    ...subsoil.said,
    ...fallowCaution(answer),
    ...densityCaution(scenario),
    ...columnCaution(answer, scenario),
    ...statedDepthCaution(answer, scenario),
    ...thresholdCaution(answer),
    ...afterFloweringCaution(answer),
    "Yield follows a published straight line against water use, from another place and other years; rain at the right time can be worth far more or far less than the season's average.",
    "One-dimensional: no water, roots or nutrients move sideways. Pests, disease, hail, frost, lodging and nutrients are left out.",
    "An estimate to think with, not a basis for insurance or credit; ask a licensed local adviser where local rules want one.",
    ...(subsoil.sendsToTheField
      ? [
          "Before digging or coring have buried lines located; a pit wall can fall in, so follow the local excavation rules.",
        ]
      : []),
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

/** Fallow as simulated stores little: evaporation dries the topsoil before its water sinks. Say so beside the trials. */
function fallowCaution({ cases }: Answer): string[] {
  const shares = cases.flatMap(({ fallowStorageShare }) => fallowStorageShare ?? []);
  if (shares.length === 0 || Math.min(...shares) >= usualFallowShare) return [];
  const percent = (share: number) => Math.round(100 * share);
  const [least, most] = [percent(Math.min(...shares)), percent(Math.max(...shares))];
  return [
    `Over the fallow ${least === most ? least : `${least} to ${most}`} % of the precipitation was stored. Trials at Akron, Colorado, stored 20 % with tillage (8 to 34) and 35 % without (20 to 51) (Nielsen & Vigil 2010), so the subsoil is probably wetter than here: water measured at sowing, without the fallow, makes a surer answer.`,
  ];
}

function densityCaution({ cases, ensemble }: Scenario): string[] {
  const grown = cases.filter(({ rooting }, c) => c === 0 || rooting.kind === "grown");
  const hindered = grown.some(({ layers }) =>
    layers.some(({ hindrance }) => hindrance.strict !== hindrance.lenient),
  );
  if (!hindered) return [];
  return [
    ensemble.densityReading === "range"
      ? "How a bulk density is read as hindrance to roots moves the answer more than most inputs; the ranges here span a strict to a lenient reading."
      : `How a bulk density is read as hindrance to roots moves the answer more than most inputs; here it is the ${ensemble.densityReading} reading alone, so the ranges are too narrow.`,
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

/** Roots that come to the end of the described soil might go on. */
function columnCaution({ byRainTotal }: Answer, { cases }: Scenario): string[] {
  const ended = cases.filter((plan, c) =>
    byRainTotal.some((at) => (at.cases[c]?.finalRootDepthMm ?? 0) >= columnDepthMm(plan) - atEndMm),
  );
  if (ended.length === 0) return [];
  return [
    `The roots of ${named(ended)} came to the bottom of the soil described; unless rock lies there, describe the soil deeper.`,
  ];
}

/** A depth stated for the first case is a limit: the front may never get there. */
function statedDepthCaution({ byRainTotal }: Answer, { cases }: Scenario): string[] {
  const { name, rooting } = cases[0];
  if (rooting.kind !== "absolute") return [];
  const short = byRainTotal.some((at) => (at.cases[0]?.finalRootDepthMm ?? 0) < rooting.depthMm - atEndMm);
  return short
    ? [
        `The roots of "${name}" ended above the depth stated for them: dry soil, a dense layer or the crop's own pace held them.`,
      ]
    : [];
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

function afterFloweringCaution({ differences }: Answer): string[] {
  const late = differences.some(({ shareAfterFlowering }) => (shareAfterFlowering ?? 0) >= 0.5);
  return late
    ? [
        "Half or more of the extra water was used after flowering, where an inch is worth more than the season's average that the yield line takes.",
      ]
    : [];
}

function columnDepthMm({ layers }: Case): number {
  return layers.at(-1)?.bottomMm ?? Infinity;
}

function named(cases: readonly Case[]): string {
  return cases.map(({ name }) => `"${name}"`).join(", ");
}
