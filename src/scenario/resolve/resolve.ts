import { InputError } from "../../problem.ts";
import { cropNamed, defaultPlan } from "../../crop/crops.ts";
import { sayMonthDay, sayQuantity, withUnits } from "../../quantity/index.ts";
import { scenarioFileFields, type CasePart, type ScenarioFile } from "../fields/file.ts";
import { mergeCase } from "./mergeCase.ts";
import { complain, openNotebook, type Notebook } from "./notebook.ts";
import { readScenarioFile } from "../read/readFile.ts";
import { newRecordCache, type RecordCache } from "../read/recordCache.ts";
import type { ReadText } from "../read/readText.ts";
import { isDescribed, resolveCrop } from "./resolveCrop.ts";
import { resolveEvidence } from "./evidence/resolveEvidence.ts";
import { readBaseLayers, resolveLayers, type BaseLayers } from "./resolveSoil.ts";
import { withSpread } from "../../soil/equations/availableWaterSpread.ts";
import { resolveOutlook } from "./outlook/resolveOutlook.ts";
import { fromMeasuredDay, refuseOutsideFallow } from "./measuredDay.ts";
import { resolveMoney } from "./resolveMoney.ts";
import { resolveRowPositions } from "./resolveRowPositions.ts";
import { type Sampled } from "./resolveStartingWater.ts";
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
import type { Case, EnsemblePlan, RotationPlan, Scenario } from "../scenario.ts";
import { growsAt, resolveCase } from "./resolveCase.ts";
import { resolveEnsemble } from "./resolveEnsemble.ts";

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
    written.rotation !== undefined,
  );
  const own = sownInItsSpring(written, place, notebook);
  refuseBeside(own, notebook);
  const years = yearsOf(own, place, notebook);
  const asked = years === null || years === undefined ? null : askedYear(years);
  const file = asked === null ? fromMeasuredDay(own, growsAt(place), notebook) : seasonOfYear(own, asked);
  if (asked !== null) {
    refuseOutsideFallow(own, asked, notebook);
    tellSeason(own, asked, notebook);
  }
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
    doubts: [...new Set(notebook.doubts)],
    notes: [...new Set(notebook.notes)],
  };
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

/** A problem of the base met again in another case is told once. */
function unique<T extends { readonly field: string; readonly expected: string }>(
  problems: readonly T[],
): T[] {
  return problems.filter(
    (one, p) =>
      problems.findIndex(({ field, expected }) => field === one.field && expected === one.expected) === p,
  );
}
