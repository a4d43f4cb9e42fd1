import { tryQuantity } from "../../quantity/index.ts";
import { mmPerInch } from "../../quantity/constants.ts";
import { layerOrigins, type LayerOrigin } from "../../soil/layers/layerOrigin.ts";
import { lookUp } from "../../lookUp.ts";
import { cropAskedOf } from "../fields/facts/rotations.ts";
import type { DefaultUsed } from "../scenario.ts";
import { denseName, layersAround, looseDensity } from "./denseLayer.ts";
import { quickScenario, type QuickScenario } from "./quickScenario.ts";

/**
 * A field in five answers, each as written and each of them optional: texture, where it is dense, rain, crop, how much deeper.
 * Text only, so that they can be kept beside the scenario that was made of them.
 */
export interface FiveAnswers {
  readonly texture?: string;
  /** "nowhere", or what made the layer dense. */
  readonly dense?: string;
  /** "6 to 10 in" */
  readonly denseSpan?: string;
  readonly rain?: string;
  /** A weather file in place of a total. */
  readonly record?: string;
  /** "yes" where the file states its station's latitude and elevation. */
  readonly recordPlace?: string;
  /** A crop, or a rotation by its name. */
  readonly crop?: string;
  /** "2 in"; or `asLoose`, or `asDug`. */
  readonly deeper?: string;
  /** What was dug where the layer is dense and where it is not: "24, 27, 21 in". */
  readonly dugDense?: string;
  readonly dugLoose?: string;
  readonly dugOn?: string;
}

/** As deep as the roots go once the dense layer is loosened. */
export const asLoose = "layer loosened";
/** As deep as plants were dug. */
export const asDug = "as I dug";
export const nowhere = "nowhere";

/** What stands in for an answer that is not given yet. Ours: a common soil and crop of the dry plains. */
export const untilAnswered = {
  texture: "silt loam",
  rain: "14 in",
  crop: "grain sorghum",
  deeper: "2 in",
  denseSpan: "6 to 10 in",
} as const;

/** Rotations that can be the answer for the crop. */
export const rotationsAsked: readonly string[] = Object.keys(cropAskedOf);

/**
 * A scenario with nothing in it but the answers and stated defaults; with no answer at all, an empty start. Built on the quick
 * question's own file. Depths that were dug need `loadUnits`, or `withUnits` around it.
 */
export function scenarioOfAnswers(answers: FiveAnswers): QuickScenario {
  const texture = given(answers.texture) ?? untilAnswered.texture;
  const rain = given(answers.rain) ?? untilAnswered.rain;
  const grown = given(answers.crop) ?? untilAnswered.crop;
  const dense = denseOf(answers);
  const apart = apartOf(answers, dense !== null);
  const asked = lookUp(cropAskedOf, grown);
  const { file, assumed } = quickScenario({
    texture,
    rain,
    crop: asked ?? grown,
    deeper: apart.kind === "stated" ? apart.deeper : untilAnswered.deeper,
    ...(asked === undefined ? {} : { rotation: grown }),
  });
  const soil = file["soil"] as { layers: readonly { bottom?: string }[] };
  const hasRecord = given(answers.record) !== undefined;
  const layers =
    dense === null ? soil.layers : layersAround(dense, texture, soil.layers.at(-1)?.bottom ?? "72 in");
  const site = hasRecord && answers.recordPlace === "yes" ? {} : { site: file["site"] };
  const { site: _site, notes: _notes, cases: _cases, name: _name, ...others } = file;
  const whole = {
    ...others,
    name: Object.keys(answers).length === 0 ? nameOfNew : nameOf(grown, texture, hasRecord ? null : rain),
    ...site,
    soil: { ...soil, layers },
    ...(hasRecord ? { weather: { record: answers.record } } : {}),
    cases: casesOf(apart, texture),
    ...(apart.kind === "dug" ? { evidence: { rootDepths: apart.rootDepths } } : {}),
  };
  return { file: inOrder(whole), assumed: assumedOf(answers, assumed, whole) };
}

type Apart =
  | { readonly kind: "stated"; readonly deeper: string }
  | { readonly kind: "loosened" }
  | { readonly kind: "dug"; readonly rootDepths: readonly object[] };

/** How far the two root systems are apart, or what tells it. */
function apartOf(answers: FiveAnswers, isDense: boolean): Apart {
  const deeper = given(answers.deeper);
  if (deeper === undefined || deeper === asLoose)
    return isDense ? { kind: "loosened" } : { kind: "stated", deeper: untilAnswered.deeper };
  if (deeper !== asDug) return { kind: "stated", deeper };
  const [here, there] = [depthsIn(answers.dugDense), depthsIn(answers.dugLoose)];
  const date = given(answers.dugOn);
  if (isDense && date !== undefined && here.length > 0 && there.length > 0)
    return {
      kind: "dug",
      rootDepths: [
        { case: nameAsNow, date, depths: here },
        { case: nameLoosened, date, depths: there },
      ],
    };
  // Without the day or a dense layer to fit, what was dug says how far apart they were.
  const apartMm = mean(there) - mean(here);
  if (Number.isFinite(apartMm))
    return { kind: "stated", deeper: `${Math.round((apartMm / mmPerInch) * 10) / 10} in` };
  return isDense ? { kind: "loosened" } : { kind: "stated", deeper: untilAnswered.deeper };
}

const nameOfNew = "A new field";
const nameAsNow = "as now";
const nameLoosened = "dense layer loosened";
const nameDeeper = "deeper roots";

function casesOf(apart: Apart, texture: string): readonly object[] {
  if (apart.kind === "stated") {
    const { deeper } = apart;
    const signed = /^[+\u2212-]/.test(deeper) ? deeper : `+${deeper}`;
    const name = /^[\u2212-]/.test(deeper) ? "shallower roots" : nameDeeper;
    return [{ name: nameAsNow }, { name, rootingDepth: signed }];
  }
  const bulkDensity = looseDensity(texture);
  const loose = { name: denseName, ...(bulkDensity === null ? {} : { bulkDensity }) };
  return [{ name: nameAsNow }, { name: nameLoosened, soil: { layers: [loose] } }];
}

/** @example depthsIn("24, 27 in") // ["24 in", "27 in"] */
function depthsIn(text: string | undefined): readonly string[] {
  const parts = (text ?? "").split(/[,;]\s*/).filter((one) => /\d/.test(one));
  const unit = parts.at(-1)?.replace(/^[\d.\s]+/, "") ?? "";
  return parts.map((one) => (/[a-z"']/i.test(one) ? one.trim() : `${one.trim()} ${unit}`.trim()));
}

function mean(depths: readonly string[]): number {
  const read = depths.map((one) => tryQuantity(one, "depth"));
  return read.reduce<number>((sum, one) => sum + (typeof one === "number" ? one : NaN), 0) / read.length;
}

function denseOf({ dense, denseSpan }: FiveAnswers) {
  const origin = layerOrigins.find((one) => one === dense);
  return origin === undefined
    ? null
    : { origin: origin satisfies LayerOrigin, span: given(denseSpan) ?? untilAnswered.denseSpan };
}

function given(answer: string | undefined): string | undefined {
  const text = answer?.trim();
  return text === "" ? undefined : text;
}

function nameOf(grown: string, texture: string, rain: string | null): string {
  return `My field: ${grown} on ${texture}${rain === null ? "" : `, ${rain} of rain`}`;
}

/** As a reader looks for them in a file. */
function inOrder(file: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const first = ["format", "name", "site", "soil", "weather", "crop"];
  const keys = [
    ...first.filter((key) => key in file),
    ...Object.keys(file).filter((key) => !first.includes(key)),
  ];
  return Object.fromEntries(keys.map((key) => [key, file[key]]));
}

/** What nobody said: the quick question's own assumptions, answers not given, and the density of a layer felt and not weighed. */
function assumedOf(
  answers: FiveAnswers,
  ofQuestion: readonly DefaultUsed[],
  file: {
    readonly soil: { readonly layers: readonly object[] };
    readonly weather?: unknown;
    readonly site?: unknown;
  },
): readonly DefaultUsed[] {
  const isDense = denseOf(answers) !== null;
  const places = file.soil.layers as readonly { readonly name?: string; readonly bulkDensity?: string }[];
  const d = places.findIndex(({ name }) => name === denseName);
  const untold = (field: string, value: string) => ({ field, value, why: "not answered yet; ours" });
  const hasRecord = given(answers.record) !== undefined;
  const kept = ofQuestion.filter(
    ({ field }) =>
      !(isDense && field.startsWith("soil.layers[")) &&
      !(hasRecord && field.startsWith("weather.")) &&
      !(file.site === undefined && field.startsWith("site.")),
  );
  const bottom = ofQuestion.find(({ field }) => field === "soil.layers[1].bottom");
  return [
    ...(given(answers.texture) === undefined
      ? [untold("soil.layers[0].texture", untilAnswered.texture)]
      : []),
    ...(!hasRecord && given(answers.rain) === undefined
      ? [untold("weather.annualRain", untilAnswered.rain)]
      : []),
    ...(given(answers.crop) === undefined ? [untold("crop.name", untilAnswered.crop)] : []),
    ...(isDense && bottom !== undefined
      ? [{ ...bottom, field: `soil.layers[${places.length - 1}].bottom` }]
      : []),
    ...(d >= 0 && places[d]?.bulkDensity !== undefined
      ? [
          {
            field: `soil.layers[${d}].bulkDensity`,
            value: places[d].bulkDensity,
            why: "where the survey's handbook says that roots begin to be restricted; weigh a core",
          },
        ]
      : []),
    ...kept,
  ];
}
