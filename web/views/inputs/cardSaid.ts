import { sayQuantity } from "../../../src/quantity/sayQuantity.ts";
import { percent } from "../../../src/report/tables/formatters.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import { passageWith } from "../../../src/soil/layers/slices.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import { casesIn } from "../../forms/edits/caseEdits.ts";
import { caseInWords } from "../../forms/edits/caseWords.ts";
import { layersOf } from "../../forms/edits/layerEdits.ts";
import { listText } from "../../forms/listText.ts";
import { sayDefault } from "../../forms/sayDefault.ts";
import { isGroup, isList, type Json } from "../../state/json.ts";
import { getAt } from "../../state/path.ts";
import type { CardName } from "../../state/view.ts";
import type { ResolvedScenario } from "../../worker/protocol.ts";

/** What is known of a scenario: as written, and as the engine last read it. */
export interface Known {
  readonly written: Json;
  readonly read: ResolvedScenario | null;
  readonly units: Units;
}

/** What stands on a card, in one line. */
export function cardSaid(card: CardName, known: Known): string {
  return typeset(sayings[card](known).filter(Boolean).join(", ")).replaceAll("cm^3", "cm³");
}

type Parts = readonly (string | false | undefined)[];

const sayings: Readonly<Record<CardName, (known: Known) => Parts>> = {
  scenario: ({ written }) => [
    textAt(written, "name") ?? "no name yet",
    getAt(written, "invented") === true && "invented data",
    getAt(written, "notes") !== undefined && "with notes",
  ],
  site: (known) => {
    const given = ["site.latitude", "site.elevation"].flatMap((path) => written(known, path) ?? []);
    return given.length === 0
      ? ["not given: taken as a usual dryland site"]
      : [...given, textAt(known.written, "site.setting")];
  },
  soil,
  start: (known) => {
    const at = (key: string) => textAt(known.written, `soil.startingWater.${key}`);
    const measured = written(known, "soil.waterMeasured");
    const on = measured !== undefined && `measured ${measured}`;
    const [share, depth, below] = ["share", "moistDepth", "shareBelow"].map(at);
    if (share !== undefined) return [`${share} of the available water at every depth`, on];
    if (depth !== undefined)
      return [`moist down to ${depth}`, below !== undefined && `${below} of the available water below`, on];
    if (at("from") !== undefined) return ["from the cores that were weighed", on];
    const byLayer = layersOf(known.written).some((layer) => layer["water"] !== undefined);
    if (byLayer) return ["given layer by layer", on];
    const usual = written(known, "soil.startingWater.share") ?? written(known, "soil.startingWater");
    return ["not measured", usual !== undefined && `taken as ${usual}`];
  },
  weather,
  crop: (known) => {
    const rotation = getAt(known.written, "rotation");
    const crops = isList(rotation)
      ? rotation.map((one) => (isGroup(one) ? listText(one["name"]) : listText(one))).join(", then ")
      : typeof rotation === "string" && rotation;
    const sowing = written(known, "crop.sowing");
    const fallow = written(known, "fallow.length");
    return [
      textAt(known.written, "crop.name") ?? "no crop yet",
      sowing !== undefined && `sown ${sowing}`,
      crops === false ? isSome(fallow) && `after ${fallow} of fallow` : `in the rotation ${crops}`,
    ];
  },
  surface: (known) => {
    const residue = written(known, "surface.residueCover");
    const curve = written(known, "surface.curveNumber");
    return [
      isSome(residue) ? `${residue} of the ground under residue` : "no residue given",
      curve === undefined ? "runoff by the handbook's table" : `curve number ${curve}`,
    ];
  },
  cases: ({ written }) => {
    const cases = casesIn(written);
    const names = cases.map(({ name }, c) => (typeof name === "string" ? name : `case ${c + 1}`));
    const [first, second, ...more] = names;
    if (first === undefined) return ["nothing is compared yet"];
    if (second === undefined) return [`"${first}" alone: nothing is compared yet`];
    const differs = caseInWords(cases[1]!, first).join("; ");
    return [
      `"${first}" against "${second}"${differs === "" ? "" : ` (${differs})`}`,
      more.length > 0 && `and ${more.length} more`,
    ];
  },
  yield: ({ written, read }) => {
    const own = ["slope", "threshold"].some((key) => getAt(written, `yield.${key}`) !== undefined);
    const region = read?.yieldLine.region;
    return [
      own || region === null
        ? "numbers of your own"
        : region === undefined
          ? "the usual line"
          : `line of ${region}`,
    ];
  },
  runs: (known) => {
    const years = written(known, "ensemble.years");
    const isUsual = getAt(known.written, "model") === undefined;
    return [
      years !== undefined && `${years} years of weather`,
      isUsual ? "the usual methods" : "methods of your choice",
    ];
  },
  file: ({ written }) => {
    const held = [
      ["evidence", "measurements"],
      ["money", "costs and prices"],
      ["rowPositions", "rows of the field"],
    ].flatMap(([path, said]) => (getAt(written, path!) === undefined ? [] : [said!]));
    return ["the whole scenario as text", held.length > 0 && `with ${held.join(", ")}`];
  },
};

/** The layer that holds roots back most, or that none does. */
function soil({ written, read, units }: Known): Parts {
  const layers = read?.cases[0]?.layers ?? [];
  if (getAt(written, "soil.horizons") !== undefined && layers.length === 0) return ["from a file"];
  const last = layers.at(-1);
  if (last === undefined) return [`${layersOf(written).length} layers`];
  const depth = (mm: number) => sayQuantity(mm, "depth", units);
  const count = layers.length === 1 ? "one layer" : `${layers.length} layers`;
  const paces = layers.map(({ openShare, hindrance }) => passageWith(openShare.middle, hindrance.usual));
  const least = Math.min(...paces);
  const dense = layers[paces.indexOf(least)]!;
  const whole = `${count} to ${depth(last.bottomMm)}`;
  if (least > 0.95) return [`${last.texture} below`, whole, "no layer holds roots back"];
  const reading = dense.hindrance.resistanceMPa;
  return [
    `${dense.name} ${depth(dense.topMm).replace(/ \D+$/, "")} to ${depth(dense.bottomMm)}`,
    reading === undefined
      ? sayQuantity(dense.bulkDensityKgPerM3, "density", units)
      : `penetrometer ${sayQuantity(reading, "resistance", units)}`,
    `roots keep ${percent(least)} of their pace`,
    whole,
  ];
}

function weather(known: Known): Parts {
  const at = (key: string) => textAt(known.written, `weather.${key}`);
  const total = at("annualRain") ?? listOf(known.written, "weather.annualRain");
  const season = at("seasonRain") ?? listOf(known.written, "weather.seasonRain");
  const rain =
    total !== undefined
      ? `${total.replace("..", " to ")} of rain a year`
      : season !== undefined && `${season.replace("..", " to ")} of rain from sowing to maturity`;
  const record = at("record");
  if (record !== undefined)
    return record === ""
      ? ["a record has still to be chosen"]
      : [`record ${record}`, rain === false ? "years as they were" : `scaled to ${rain}`];
  if (getAt(known.written, "weather.monthlyNormals") !== undefined) return ["monthly normals", rain];
  return [rain === false ? "no rain given yet" : rain, at("pattern") && `pattern ${at("pattern")}`];
}

/** As written, else what stands in for it. */
function written({ written: file, read }: Known, path: string): string | undefined {
  const own = textAt(file, path);
  if (own !== undefined) return own;
  const usual = read?.defaults.find(({ field }) => field === path)?.value;
  return usual === undefined ? undefined : sayDefault(usual);
}

function textAt(file: Json, path: string): string | undefined {
  const value = getAt(file, path);
  return typeof value === "string" || typeof value === "number" ? String(value) : undefined;
}

function listOf(file: Json, path: string): string | undefined {
  const value = getAt(file, path);
  return isList(value) ? listText(value) : undefined;
}

const isSome = (text: string | undefined): text is string =>
  text !== undefined && !/^(?:none|0\b)/.test(text);
