import { lookUp } from "../../lookUp.ts";
import { isSod } from "../../crop/crop.ts";
import { cropNamed, defaultPlan } from "../../crop/crops.ts";
import { InputError, refuse, type Problem } from "../../problem.ts";
import { mmPerInch } from "../../quantity/constants.ts";
import { sayBoth, tryQuantity } from "../../quantity/index.ts";
import { deepestSoil } from "../../soil/layers/soilLimits.ts";
import { patternSite, rainPatterns, type RainPattern } from "../../weather/generate/rainPatterns.ts";
import { cropAskedOf, readyRotations } from "../fields/facts/rotations.ts";
import { fallowYear } from "../fields/rotationFields.ts";
import { scenarioFormat } from "../read/format.ts";
import type { DefaultUsed } from "../scenario.ts";

/** The quick question: four answers are needed, the others have defaults. All as written. */
export interface QuickQuestion {
  readonly texture?: string | undefined;
  readonly rain?: string | undefined;
  readonly crop?: string | undefined;
  readonly deeper?: string | undefined;
  readonly pattern?: string | undefined;
  readonly sowing?: string | undefined;
  readonly latitude?: string | undefined;
  readonly elevation?: string | undefined;
  /** A rotation by its name, or crops and fallow with commas between. */
  readonly rotation?: string | undefined;
  /** Ground under dead residue when fallow begins. */
  readonly residue?: string | undefined;
  /** Depth of moist soil by a push probe. */
  readonly moist?: string | undefined;
}

export interface QuickScenario {
  /** A scenario file, to resolve or to save. */
  readonly file: Record<string, unknown>;
  /** What was put into it without being asked; belongs before the scenario's own defaults. */
  readonly assumed: readonly DefaultUsed[];
}

/**
 * A scenario file from the answers on a command line.
 * `loadUnits` is to be awaited before.
 * @throws InputError that names the flags that are missing
 */
export function quickScenario(question: QuickQuestion): QuickScenario {
  const { texture, rain, crop, deeper } = allFour(question);
  const assumed: DefaultUsed[] = [];
  const assume = (field: string, value: string, why: string, told = value): string => {
    assumed.push({ field, value: told, why });
    return value;
  };
  const latitude =
    question.latitude ??
    assume("site.latitude", `${patternSite.latitudeDeg} N`, "mid-latitude dryland; give --latitude");
  const elevation =
    question.elevation ??
    assume(
      "site.elevation",
      `${patternSite.elevationM} m`,
      "of the invented site the rain patterns belong to",
      sayBoth(patternSite.elevationM, "elevation"),
    );
  const pattern =
    question.pattern ??
    assume(
      "weather.pattern",
      usualPattern,
      `how rain falls over the year; or ${otherPatterns.join(", ")}: give --pattern`,
    );
  const topsoil = assume(
    "soil.layers[0].thickness",
    "12 in",
    "topsoil and subsoil of one texture, without a dense layer",
  );
  const bottom = assume(
    "soil.layers[1].bottom",
    `${bottomIn(crop, deeper)} in`,
    "deep enough for the deeper roots; say in a file where rock or caliche begins",
  );
  const isProbed = question.moist !== undefined;
  // Without a probe the water at the start is what the years before left, so that no share has to be guessed.
  const usual = question.rotation === undefined && !isProbed ? usualRotation(crop) : null;
  if (usual !== null)
    assume("rotation", JSON.stringify(usual.rotation), usual.why, [usual.rotation].flat().join(", "));
  const rotation =
    question.rotation === undefined ? (usual?.rotation ?? null) : rotationWritten(question.rotation);
  const inRotation = rotation !== null;
  // A probe goes in before sowing: the run begins there. A rotation tells its fallows itself; sod has neither.
  const ofFallow =
    inRotation || isProbed
      ? {}
      : {
          fallow: {
            length: assume("fallow.length", "8 months", "since the last harvest; common practice, no source"),
          },
        };
  const start = isProbed
    ? {
        moistDepth: question.moist,
        shareBelow: assume(
          "soil.startingWater.shareBelow",
          "10 %",
          `of the available water below the moist soil, as a crop leaves it; ours${inRotation ? "; the probe's depth counts on the day after the last harvest" : ""}`,
        ),
      }
    : inRotation
      ? null
      : {
          share: assume(
            "soil.startingWater.share",
            "30 %",
            "of the available water when fallow begins, after a crop; what the subsoil holds decides: probe it",
          ),
        };
  const residueCover =
    question.residue ??
    (inRotation
      ? null
      : assume(
          "surface.residueCover",
          "30 %",
          "stubble of the last crop, the least that counts as conservation tillage; common practice, no source",
        ));
  const file = {
    format: scenarioFormat,
    name: `Quick question: ${crop} on ${texture}, ${rain} of rain, roots ${amount(deeper)} ${direction(deeper)}`,
    notes:
      "Written from a quick question. Put what you know of the field in place of what was assumed; rootfront check lists the rest.",
    site: { latitude, elevation },
    soil: {
      layers: [
        { name: "topsoil", thickness: topsoil, texture },
        { name: "subsoil", bottom, texture },
      ],
      ...(start === null ? {} : { startingWater: start }),
    },
    weather: { pattern, annualRain: rain },
    crop: question.sowing === undefined ? { name: crop } : { name: crop, sowing: question.sowing },
    ...(rotation === null ? {} : { rotation }),
    ...ofFallow,
    ...(residueCover === null ? {} : { surface: { residueCover } }),
    cases: [
      { name: "as now" },
      {
        name: `${amount(deeper)} ${direction(deeper)}`,
        rootingDepth: /^[+\u2212-]/.test(deeper) ? deeper : `+${deeper}`,
      },
    ],
  };
  return { file, assumed };
}

const usualPattern: RainPattern = "summer-peak";
const otherPatterns = rainPatterns.filter((pattern) => pattern !== usualPattern);
/** Names with commas between are a list. */
function rotationWritten(text: string): string | string[] {
  return text.includes(",") ? text.split(",").map((name) => name.trim()) : text.trim();
}

/** The flag that a field of a quick scenario comes from. */
const flagOfField: Readonly<Record<string, string>> = {
  "soil.layers[0].texture": "--texture",
  "soil.layers[1].texture": "--texture",
  "weather.annualRain": "--rain",
  "weather.pattern": "--pattern",
  "crop.name": "--crop",
  "crop.sowing": "--sowing",
  "cases[1].rootingDepth": "--deeper",
  "site.latitude": "--latitude",
  "site.elevation": "--elevation",
  rotation: "--rotation",
  "surface.residueCover": "--residue",
  "soil.startingWater.moistDepth": "--moist",
};

/** Problems of a quick scenario, told of the flags that they come from, each once. */
export function inFlags(problems: readonly Problem[]): InputError {
  const told = problems
    // Names are made of the answers: what is wrong with those is told beside them.
    .filter(({ field }) => field !== "name" && !/^cases\[\d\]\.name$/.test(field))
    .map((problem) => ({ ...problem, field: flagOf(problem.field) }));
  const once = told.filter(({ field }, p) => told.findIndex((other) => other.field === field) === p);
  return new InputError(once.length > 0 ? once : problems);
}

/** Every crop of a rotation comes from the one flag. */
function flagOf(field: string): string {
  return lookUp(flagOfField, field.replace(/^rotation\[.*$/, "rotation")) ?? field;
}

function allFour({ texture, rain, crop, deeper }: QuickQuestion) {
  const examples = { texture: '"silt loam"', rain: '"12..14 in"', crop: '"grain sorghum"', deeper: '"2 in"' };
  const given = { texture, rain, crop, deeper };
  for (const [name, example] of Object.entries(examples)) {
    const found = given[name as keyof typeof given];
    if (found === undefined || found.trim() === "")
      refuse(`--${name}`, `an answer such as ${example}`, found, `add --${name} ${example}`);
  }
  return {
    texture: texture?.trim() ?? "",
    rain: rain?.trim() ?? "",
    crop: crop?.trim() ?? "",
    deeper: deeper?.trim() ?? "",
  };
}

/** The rotation in which the crop usually stands on dry land; null for sod, which no rotation has. */
function usualRotation(crop: string): { rotation: string | string[]; why: string } | null {
  const known = cropNamed(crop);
  if (known === null) return { rotation: "every year", why: `this crop every year; ${startsItself}` };
  if (isSod(defaultPlan(known))) return null;
  const ready = readyRotations.find((name) => cropNamed(cropAskedOf[name] ?? "")?.name === known.name);
  if (ready !== undefined) return { rotation: ready, why: `usual on dry land; ${startsItself}` };
  if (known.values.dormantBelowC.value === null)
    return { rotation: "every year", why: `this crop every year; ${startsItself}` };
  return { rotation: [known.name, fallowYear], why: `a summer of fallow between; ${startsItself}` };
}

const startsItself =
  "common practice, no source: give --rotation. Its first years run before, so no share of water at the start is guessed";

const usualBottomIn = 72;
/** What a scenario may describe, in whole feet. */
const deepestBottomIn = 12 * Math.floor(deepestSoil.mm / (12 * mmPerInch));

/** Soil down to the deepest that the crop can root and the extra depth, in whole feet; 72 in at least. */
function bottomIn(crop: string, deeper: string): number {
  const known = cropNamed(crop);
  const extraMm = tryQuantity(deeper, "depth");
  // What is wrong with either is told when the scenario is read.
  if (known === null || typeof extraMm !== "number") return usualBottomIn;
  const neededIn = (defaultPlan(known).maxRootDepthMm + Math.max(0, extraMm)) / mmPerInch;
  return Math.min(Math.max(usualBottomIn, 12 * Math.ceil(neededIn / 12)), deepestBottomIn);
}

function amount(deeper: string): string {
  return deeper.replace(/^[+\u2212-]\s*/, "");
}

function direction(deeper: string): string {
  return /^[\u2212-]/.test(deeper) ? "less deep" : "deeper";
}
