import { InputError } from "../../problem.ts";
import { isSod, sodTo } from "../../crop/crop.ts";
import { cropNamed, defaultPlan } from "../../crop/crops.ts";
import { sayMonthDay, sayQuantity, withUnits } from "../../quantity/index.ts";
import {
  ensembleFields,
  fallowFields,
  modelFields,
  scenarioFileFields,
  type CasePart,
  type ScenarioFile,
} from "../fields/file.ts";
import { soilFields } from "../fields/soilFields.ts";
import { mergeCase } from "./mergeCase.ts";
import type { MergedCase } from "./mergedCase.ts";
import { complain, openNotebook, orDefault, type Notebook } from "./notebook.ts";
import { readScenarioFile } from "../read/readFile.ts";
import { newRecordCache, type RecordCache } from "../read/recordCache.ts";
import type { ReadText } from "../read/readText.ts";
import type { CropPlace } from "./cropSeason.ts";
import { isDescribed, resolveCrop } from "./resolveCrop.ts";
import { resolveEvidence } from "./evidence/resolveEvidence.ts";
import { resolveGround } from "./resolveGround.ts";
import { readBaseLayers, resolveLayers, type BaseLayers } from "./resolveSoil.ts";
import { spreadSaid, spreads, withSpread } from "../../soil/equations/availableWaterSpread.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import { percent } from "../../soil/layers/layerRanges.ts";
import { resolveOutlook } from "./outlook/resolveOutlook.ts";
import { resolveMoney } from "./resolveMoney.ts";
import { resolveRowPositions } from "./resolveRowPositions.ts";
import { samplesOf } from "./evidence/soilSamples.ts";
import { resolveStartingWater, type Sampled } from "./resolveStartingWater.ts";
import { resolveWeather, type PlaceAndWeather } from "./resolveWeather.ts";
import { resolveYield } from "./resolveYield.ts";
import {
  askedYear,
  refuseBeside,
  resolveRotation,
  seasonOfYear,
  tellSeason,
} from "./rotation/resolveRotation.ts";
import { rotationYears } from "./rotation/rotationYears.ts";
import type { Case, DefaultUsed, EnsemblePlan, RotationPlan, Scenario } from "../scenario.ts";
import { statedDepthMm } from "../statedDepth.ts";

export interface Surroundings {
  /** Of the scenario, for messages. */
  readonly fileName: string;
  readonly readText: ReadText;
  /** Of an earlier reading, where there is one: saves time, changes nothing. */
  readonly recordCache?: RecordCache;
  /** Whether a record with longer gaps than are filled is refused, as usual, or taken with them told. */
  readonly longGaps?: "refused" | "told";
}

/**
 * A scenario file, parsed from JSON, as a scenario with nothing left to decide: units read, files fetched, cases laid over
 * the base, every default filled in and written down.
 *
 * @throws InputError with all problems of the file: first those of shape, units and ranges; then, when there are none, those
 * between fields
 */
export async function resolveScenario(
  raw: unknown,
  { readText, recordCache = newRecordCache(), longGaps = "refused" }: Surroundings,
): Promise<Scenario> {
  return withUnits(() => resolveFile(readScenarioFile(raw), readText, recordCache, longGaps));
}

function resolveFile(
  written: ScenarioFile,
  readText: ReadText,
  recordCache: RecordCache,
  longGaps: "refused" | "told",
): Scenario {
  const notebook = openNotebook();
  const base = readBaseLayers(written, readText, notebook);
  const place = resolveWeather(
    written.weather,
    written.site ?? {},
    readText,
    recordCache,
    notebook,
    longGaps,
  );
  const own = sownInItsSpring(written, place, notebook);
  refuseBeside(own, notebook);
  const years = yearsOf(own, place, notebook);
  const asked = years === null || years === undefined ? null : askedYear(years);
  const file = asked === null ? own : seasonOfYear(own, asked);
  if (asked !== null) tellSeason(own, asked, notebook);
  const parts = casesOf(file, notebook);
  const sampled = base === undefined ? null : sampledSoil(file, base);
  const cases =
    base === undefined
      ? []
      : parts.map((part, c) => resolveCase(file, base, sampled, place, part, c, notebook));
  if (base === undefined) resolveCrop(file.crop, file.crop, growsAt(place), "crop", notebook);
  // What an unknown crop's yield lacks is of no interest before the crop is there.
  const hasCrop = cropNamed(file.crop.name) !== null || isDescribed(file.crop);
  const latitudeDeg = place?.site.latitudeDeg ?? null;
  const yieldLine = hasCrop
    ? resolveYield(file.yield ?? {}, file.crop.name, latitudeDeg, notebook)
    : undefined;
  const caseNames = parts.map(({ name }) => name);
  const unit = yieldLine?.unit ?? null;
  const evidence = resolveEvidence(
    file.evidence,
    { caseNames, cases, cropName: file.crop.name, unit },
    notebook,
  );
  const rowPositions =
    file.rowPositions === undefined ? null : resolveRowPositions(file.rowPositions, caseNames, notebook);
  const money =
    file.money === undefined
      ? null
      : resolveMoney(file.money, unit, rowPositions?.rowsInAll ?? null, notebook);
  const outlook = resolveOutlook(file, parts, cases, notebook);
  const ensemble = resolveEnsemble(
    file.ensemble ?? {},
    cases.flatMap((one) => one?.layers ?? []),
    notebook,
  );

  const rotation =
    years === null || years === undefined || base === undefined || yieldLine === undefined
      ? null
      : resolveRotation(
          own,
          years,
          cases.filter((one) => one !== undefined),
          (season, scratch) =>
            casesOf(season, scratch).map((part, c) =>
              resolveCase(season, base, sampled, place, part, c, scratch),
            ),
          latitudeDeg,
          yieldLine,
          notebook,
        );

  if (notebook.problems.length > 0) throw new InputError(unique(notebook.problems));
  const [first, ...others] = cases.filter((one) => one !== undefined);
  if (
    first === undefined ||
    place === undefined ||
    yieldLine === undefined ||
    rowPositions === undefined ||
    rotation === undefined ||
    money === undefined ||
    others.length + 1 < parts.length
  ) {
    throw new Error("a part of the scenario is missing, and no problem was written down");
  }
  return {
    name: file.name,
    invented: file.invented ?? scenarioFileFields.shape.invented.byDefault.value,
    site: place.site,
    weather: place.weather,
    cases: [spreadAs(ensemble, first), ...others.map((one) => spreadAs(ensemble, one))],
    yieldLine,
    rotation: rotation === null ? null : rotationAs(ensemble, rotation),
    ensemble,
    evidence,
    money,
    rowPositions,
    outlook,
    defaults: notebook.defaults,
    notes: [...new Set(notebook.notes)],
  };
}

function growsAt(place: PlaceAndWeather | undefined): CropPlace {
  return { normals: place?.normals ?? null, latitudeDeg: place?.site.latitudeDeg ?? null };
}

/** A spread given for the whole scenario goes before each layer's own. */
function spreadAs({ availableCapacitySd: share }: EnsemblePlan, plan: Case): Case {
  return share === null ? plan : { ...plan, layers: withSpread(plan.layers, share) };
}

/** A rotation's years as the file tells them; null without one, undefined where it cannot be. */
function yearsOf(
  file: ScenarioFile,
  place: PlaceAndWeather | undefined,
  notebook: Notebook,
): ReturnType<typeof rotationYears> | null {
  if (file.rotation === undefined) return null;
  const spring = (crop: ScenarioFile["crop"]) =>
    sownInItsSpring({ ...file, crop }, place, openNotebook()).crop;
  return rotationYears(file.rotation, file.crop, growsAt(place), spring, notebook);
}

function rotationAs(ensemble: EnsemblePlan, rotation: RotationPlan): RotationPlan {
  return {
    ...rotation,
    entries: rotation.entries.map((entry) =>
      entry === null ? null : { ...entry, cases: entry.cases.map((one) => spreadAs(ensemble, one)) },
    ),
  };
}

function casesOf({ cases }: ScenarioFile, notebook: Notebook): readonly CasePart[] {
  if (cases === undefined) {
    notebook.defaults.push({ field: "cases", value: 'one case, "as described"', why: "nothing is compared" });
    return [{ name: "as described" }];
  }
  // "a" and " A " are one name to the reader of a table.
  const plain = cases.map(({ name }) => name.trim().toLowerCase());
  cases.forEach(({ name, rootingDepth }, c) => {
    const before = plain.indexOf(plain[c]!);
    if (before < c)
      complain(
        notebook,
        `cases[${c}].name`,
        "a name of its own for each case",
        `"${name}" again`,
        "give the cases different names",
      );
    if (c === 0 && rootingDepth?.kind === "relative") {
      complain(
        notebook,
        "cases[0].rootingDepth",
        'a depth such as "34 in": only later cases are told against the first',
        `"${rootingDepth.extraMm < 0 ? "" : "+"}${sayQuantity(rootingDepth.extraMm, "depth", "us")}"`,
        "give its depth, or leave it out",
      );
    }
  });
  return cases;
}

/** South of the equator a crop's usual day of sowing, which is a northern one, is half a year later. */
function sownInItsSpring(
  file: ScenarioFile,
  place: PlaceAndWeather | undefined,
  notebook: Notebook,
): ScenarioFile {
  const known = cropNamed(file.crop.name);
  if (known === null || file.crop.sowing !== undefined || (place?.site.latitudeDeg ?? 0) >= 0) return file;
  const { month, day } = defaultPlan(known).sowing;
  const sowing = { month: ((month + 5) % 12) + 1, day: Math.min(day, 28) };
  notebook.defaults.push({
    field: "crop.sowing",
    value: sayMonthDay(sowing),
    why: "half a year after the usual day in the north",
  });
  return { ...file, crop: { ...file.crop, sowing } };
}

/** The file's own soil without any case; null where it has faults, which the cases then tell. */
function sampledSoil(file: ScenarioFile, base: BaseLayers): Sampled | null {
  const scratch = openNotebook();
  const merged = mergeCase(file, base.layers, base.paths, { name: "" }, "soil", scratch);
  const soil = resolveLayers(merged, base.restrictedAtMm, scratch);
  if (soil === undefined || scratch.problems.length > 0) return null;
  return { layers: soil.layers, waters: (merged.soil.layers ?? []).map(({ water }) => water) };
}

function resolveCase(
  file: ScenarioFile,
  base: BaseLayers,
  sampled: Sampled | null,
  place: PlaceAndWeather | undefined,
  part: CasePart,
  c: number,
  notebook: Notebook,
): Case | undefined {
  const merged = mergeCase(file, base.layers, base.paths, part, `cases[${c}]`, notebook);
  const own: Notebook = c === 0 ? notebook : { ...notebook, defaults: [] };
  const soil = resolveLayers(merged, base.restrictedAtMm, own);
  const crop = resolveCrop(merged.crop, file.crop, growsAt(place), merged.cropPath, own);
  const startingWater = soil && resolveStartingWater(merged, soil.layers, sampled, own);
  const below = soil && { ...soil, group: merged.soil.hydrologicGroup };
  const standing = {
    cropName: merged.crop.name,
    isSod: crop !== undefined && isSod(crop),
    hasFallow: (merged.fallowLength ?? 0) > 0,
  };
  const ground = below && resolveGround(merged.surface, standing, below, merged.surfacePath, own);
  const sliceThicknessMm = orDefault(
    own,
    merged.soil.sliceThickness,
    soilFields.shape.sliceThickness.byDefault,
    "soil.sliceThickness",
  );
  const fallow = orDefault(own, merged.fallowLength, fallowFields.shape.length.byDefault, "fallow.length");
  const rule = orDefault(own, merged.model.uptake, modelFields.shape.uptake.byDefault, "model.uptake");
  const evaporation = orDefault(
    own,
    merged.model.evaporation,
    modelFields.shape.evaporation.byDefault,
    "model.evaporation",
  );
  if (c > 0) tellOwnDefaults(own.defaults, merged, base.paths, notebook);
  if (soil === undefined || crop === undefined || startingWater === undefined || ground === undefined)
    return undefined;
  const bottomMm = soil.layers.at(-1)?.bottomMm ?? 0;
  const endsOnRock = soil.restrictedAtMm !== null && soil.restrictedAtMm <= bottomMm;
  const firstDepth = file.cases?.[0]?.rootingDepth;
  const seedMm = isSod(crop) ? 0 : crop.sowingDepthMm;
  const rooting = rootingOf(merged, firstDepth, seedMm, bottomMm, endsOnRock, part, notebook);
  const statedMm = statedDepthMm(rooting, firstDepth ?? grown);
  return {
    name: merged.name,
    layers: soil.layers,
    endsOnRock,
    sliceThicknessMm,
    startingWater,
    ground,
    crop: statedMm !== null && isSod(crop) ? sodTo(statedMm, crop) : crop,
    fallowDays: Math.round(fallow),
    rooting,
    uptake: {
      rule,
      sharePerDay: crop.uptakeSharePerDay,
      denseRootsMm: crop.denseRootsMm,
      halvingMm: crop.uptakeHalvingMm,
      depletionFraction: crop.depletionFraction,
    },
    evaporation,
    samples: samplesOf(merged, soil.layers.length),
  };
}

/** Of a later case's defaults, those that are not the first's as well, each told at the case's own place. */
function tellOwnDefaults(
  defaults: readonly DefaultUsed[],
  merged: MergedCase,
  basePaths: readonly string[],
  notebook: Notebook,
): void {
  const told = new Set(notebook.defaults.map(({ field, value }) => `${field} ${value}`));
  const places = merged.layerPaths.map((here, l) => [`${here}.`, `${basePaths[l]}.`] as const);
  for (const one of defaults) {
    const [here, there] = places.find(([from]) => one.field.startsWith(from)) ?? [`${merged.path}.`, ""];
    const inBase = one.field.startsWith(here) ? there + one.field.slice(here.length) : one.field;
    if (told.has(`${inBase} ${one.value}`)) continue;
    // What follows from a case's own soil is noted at the base's place, where another value stands already.
    const isOfCase = one.field.startsWith(`${merged.path}.`);
    notebook.defaults.push(isOfCase ? one : { ...one, field: `${merged.path}.${one.field}` });
  }
}

const grown = { kind: "grown" } as const;

function rootingOf(
  { name, rootingDepth, path }: MergedCase,
  firstDepth: CasePart["rootingDepth"],
  sowingDepthMm: number,
  bottomMm: number,
  endsOnRock: boolean,
  { soil }: CasePart,
  notebook: Notebook,
): Case["rooting"] {
  if (rootingDepth === undefined) return grown;
  const depthMm = statedDepthMm(rootingDepth, firstDepth ?? grown);
  if (depthMm === null) {
    const hindrances = (soil?.layers ?? []).some(
      (layer) =>
        (layer.bulkDensity ??
          layer.cores ??
          layer.penetrationResistance ??
          layer.origin ??
          layer.openShare) !== undefined,
    );
    if (hindrances) {
      notebook.notes.push(
        `${path} tells its rooting depth against the first case's roots, so its own dense layers let fewer roots through but do not slow them.`,
      );
    }
    return rootingDepth;
  }
  const found =
    sayQuantity(depthMm, "depth", "us") +
    (rootingDepth.kind === "absolute" ? "" : ", told against the depth of the first case");
  if (depthMm <= sowingDepthMm) {
    complain(
      notebook,
      `${path}.rootingDepth`,
      `a depth below the seed of "${name}", ${sayQuantity(sowingDepthMm, "depth", "us")}`,
      found,
      "give a depth that leaves it roots",
    );
  }
  if (depthMm > bottomMm + 0.1) {
    complain(
      notebook,
      `${path}.rootingDepth`,
      endsOnRock
        ? `a depth above the rock that soil.restriction states, ${sayQuantity(bottomMm, "depth", "us")}`
        : `a depth within the soil described, ${sayQuantity(bottomMm, "depth", "us")}`,
      found,
      endsOnRock
        ? "roots end there: give a smaller depth, or mend soil.restriction"
        : "describe the soil deeper, or give a smaller depth",
    );
  }
  return rootingDepth;
}

function resolveEnsemble(
  part: NonNullable<ScenarioFile["ensemble"]>,
  layers: readonly SoilLayer[],
  notebook: Notebook,
): EnsemblePlan {
  const usual = ensembleFields.shape;
  if (part.availableCapacitySpread === undefined && layers.length > 0) {
    notebook.defaults.push({
      field: "ensemble.availableCapacitySpread",
      value: `${spreadSaid(layers)}, layer by layer`,
      why: `standard deviation: ${percent(spreads.estimated)} where field capacity and wilting point are estimated from texture, ${percent(spreads.fieldCapacityMeasured)} where field capacity is measured, ${percent(spreads.measured)} where both are (Saxton & Rawls 2006 and open laboratory and survey horizons); field capacity moves, the wilting point stays`,
    });
  }
  return {
    years: orDefault(notebook, part.years, usual.years.byDefault, "ensemble.years"),
    seed: orDefault(notebook, part.seed, usual.seed.byDefault, "ensemble.seed"),
    availableCapacitySd: part.availableCapacitySpread ?? null,
    deepWaterSd: orDefault(
      notebook,
      part.deepWaterSpread,
      usual.deepWaterSpread.byDefault,
      "ensemble.deepWaterSpread",
    ),
    deepUptakeSpread: orDefault(
      notebook,
      part.deepUptakeSpread,
      usual.deepUptakeSpread.byDefault,
      "ensemble.deepUptakeSpread",
    ),
    deepBelowMm: orDefault(notebook, part.deepBelow, usual.deepBelow.byDefault, "ensemble.deepBelow"),
    densityReading: orDefault(notebook, part.density, usual.density.byDefault, "ensemble.density"),
  };
}

/** A problem of the base met again in another case is told once. */
function unique<T extends { readonly field: string; readonly expected: string }>(
  problems: readonly T[],
): T[] {
  return problems.filter(
    (one, p) =>
      problems.findIndex(({ field, expected }) => field === one.field && expected === one.expected) === p,
  );
}
