import { cropNamed } from "../../../crop/crops.ts";
import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { CountedGroup, Counts, GrainWeight } from "../../../evidence/counts/counts.ts";
import { moistureFactor, tradeMoistureOf } from "../../../evidence/counts/countsMoisture.ts";
import {
  givenWeight,
  seedSizeWeight,
  usualGrainPerHead,
  usualKernelWeight,
  weightOfKernelsPerBushel,
  weightOfKernelsPerPound,
} from "../../../evidence/counts/countsWeight.ts";
import { sayNumber } from "../../../quantity/index.ts";
import { caseNamed } from "../../caseNamed.ts";
import type { EvidencePart } from "../../fields/file.ts";
import { countsShape, type CountsPart } from "../../fields/countsFields.ts";
import { complain, type Notebook } from "../notebook.ts";
import { resolveSpot, type SpotKind } from "./resolveSpot.ts";

/** What counts need to know of the rest of the scenario. */
export interface CountsGround {
  readonly confidence: number;
  readonly caseNames: readonly string[];
  /** As the scenario names it. */
  readonly cropName: string;
  /** null where the yield has faults of its own. */
  readonly unit: YieldUnit | null;
}

/** Counts as plain values; null where there are none, or where what is wrong with them has been written down. */
export function resolveCounts(
  written: readonly CountsPart[] | undefined,
  { spotsPaired, countsYear }: Pick<EvidencePart, "spotsPaired" | "countsYear">,
  ground: CountsGround,
  notebook: Notebook,
): Counts | null {
  if (written === undefined) return null;
  const crop = cropNamed(ground.cropName)?.name ?? ground.cropName;
  const groups = written.map((part, g) =>
    resolveGroup(part, `evidence.counts[${g}]`, crop, ground, notebook),
  );
  const paired = spotsPaired ?? countsShape.spotsPaired.byDefault.value;
  const whole = groups.filter((one) => one !== null);
  refuseTwice(whole, notebook);
  if (paired) refuseUnpaired(whole, notebook);
  return whole.length < groups.length
    ? null
    : { groups: whole, paired, year: countsYear ?? null, confidence: ground.confidence, crop };
}

function resolveGroup(
  part: CountsPart,
  field: string,
  crop: string,
  ground: CountsGround,
  notebook: Notebook,
): CountedGroup | null {
  const before = notebook.problems.length;
  const counted = part.crop === undefined ? crop : (cropNamed(part.crop)?.name ?? part.crop);
  if (counted !== crop) {
    // Heads of sorghum are no ears of corn, however alike the numbers look.
    complain(
      notebook,
      `${field}.crop`,
      `counts of ${crop}, the scenario's crop`,
      `"${part.crop}"`,
      "leave these counts out, or name the crop that was counted",
    );
    return null;
  }
  const caseIndex = caseNamed(part.case, ground.caseNames, `${field}.case`, notebook);
  const spots = part.spots.map((spot, s) => resolveSpot(spot, part, `${field}.spots[${s}]`, notebook));
  const kinds = new Set(spots.flatMap((spot) => (spot === null || spot.heads === 0 ? [] : [spot.per.kind])));
  if (kinds.size > 1) {
    complain(
      notebook,
      `${field}.spots`,
      "spots all counted the same way",
      "some with kernels, some without",
      "count kernels (or diameters) at every spot, or at none",
    );
  }
  const kind = [...kinds][0] ?? "kernels";
  const weight = weightOf(part, kind, field, crop, ground, notebook);
  const factor = weight === null ? null : factorOf(part, weight, field, crop, notebook);
  if (notebook.problems.length > before || weight === null || factor === null) return null;
  return {
    field,
    caseIndex,
    rowPosition: part.rowPosition ?? null,
    weight,
    moistureFactor: factor,
    stage: part.stage ?? null,
    spots: spots.filter((spot) => spot !== null),
  };
}

const weightKeys = [
  "kernelWeight",
  "kernelsPerBushel",
  "kernelsPerPound",
  "grainPerHead",
  "seedSize",
] as const;

function weightOf(
  part: CountsPart,
  kind: SpotKind,
  field: string,
  crop: string,
  { unit }: CountsGround,
  notebook: Notebook,
): GrainWeight | null {
  const wanted = { kernels: weightKeys.slice(0, 3), heads: ["grainPerHead"], sunflower: ["seedSize"] }[kind];
  const given = weightKeys.filter((key) => part[key] !== undefined);
  const stray = given.find((key) => !wanted.includes(key)) ?? given[1];
  if (stray !== undefined) {
    const expected = wanted.length > 1 ? `one of ${wanted.join(", ")}` : `${wanted[0]} for spots counted so`;
    complain(notebook, `${field}.${stray}`, expected, given.join(" and "), "leave the others out");
    return null;
  }
  if (part.season !== undefined && (crop !== "corn" || given.length > 0)) {
    complain(
      notebook,
      `${field}.season`,
      crop === "corn" ? "none where kernels are weighed" : "none: it chooses among kernel weights of corn",
      `"${part.season}"`,
      "leave it out",
    );
    return null;
  }
  if (part.kernelWeight !== undefined) return givenWeight(part.kernelWeight, "kernel");
  if (part.grainPerHead !== undefined) return givenWeight(part.grainPerHead, "head");
  if (part.kernelsPerPound !== undefined)
    return givenWeight(weightOfKernelsPerPound(part.kernelsPerPound), "kernel");
  if (part.kernelsPerBushel !== undefined) {
    if (unit === null || unit.us === "bu/ac")
      return givenWeight(weightOfKernelsPerBushel(part.kernelsPerBushel, unit?.kgPerUsUnit ?? 25), "kernel");
    complain(
      notebook,
      `${field}.kernelsPerBushel`,
      `kernelWeight or kernelsPerPound: ${crop} is not counted in bushels`,
      part.kernelsPerBushel,
      "give one of these, or yield.unit and yield.testWeight",
    );
    return null;
  }
  return usualWeightOf(part, kind, field, crop, notebook);
}

function usualWeightOf(
  part: CountsPart,
  kind: SpotKind,
  field: string,
  crop: string,
  notebook: Notebook,
): GrainWeight | null {
  if (kind === "sunflower") return seedSizeWeight(part.seedSize ?? null);
  const key = kind === "heads" ? "grainPerHead" : "kernelWeight";
  const usual = kind === "heads" ? usualGrainPerHead(crop) : usualKernelWeight(crop, part.season ?? null);
  if (usual === null) {
    complain(
      notebook,
      `${field}.${key}`,
      kind === "heads"
        ? 'kernels counted, or the grain of one head such as "0.51 g"'
        : 'the weight of a thousand kernels such as "35 g"',
      undefined,
      `give it: no usual weight of ${crop} is published`,
    );
    return null;
  }
  const say = kind === "heads" ? (g: number) => sayNumber(g, 3) : (g: number) => sayNumber(g * 1000, 1);
  notebook.defaults.push({
    field: `${field}.${key}`,
    value: `${say(usual.middle)} g, from ${say(usual.low)} to ${say(usual.high)} g`,
    why: kind === "heads" ? `usual of a head of ${crop}` : `usual of a thousand kernels of ${crop}`,
  });
  return usual;
}

/** Weight at the trade's moisture for weight as weighed. */
function factorOf(
  { moisture, tradeMoisture }: CountsPart,
  { weighed }: GrainWeight,
  field: string,
  crop: string,
  notebook: Notebook,
): number | null {
  if (moisture === undefined) {
    if (weighed)
      notebook.defaults.push({
        field: `${field}.moisture`,
        value: "the trade's",
        why: "kernels taken as dry as sold",
      });
    return 1;
  }
  if (!weighed) {
    complain(
      notebook,
      `${field}.moisture`,
      "none where kernels are not weighed: usual weights are at the trade's moisture",
      `${sayNumber(moisture * 100, 1)} %`,
      "give kernelWeight, or leave it out",
    );
    return null;
  }
  const trade = tradeMoisture ?? tradeMoistureOf(crop)?.share;
  if (trade === undefined) {
    complain(
      notebook,
      `${field}.tradeMoisture`,
      'the moisture that yield is counted at, such as "14 %"',
      undefined,
      `give it: none is known for ${crop}`,
    );
    return null;
  }
  if (tradeMoisture === undefined)
    notebook.defaults.push({
      field: `${field}.tradeMoisture`,
      value: `${sayNumber(trade * 100, 1)} %`,
      why: `as ${crop} is sold`,
    });
  return moistureFactor(moisture, trade);
}

/** A case and row position is counted in one group. */
function refuseTwice(groups: readonly CountedGroup[], notebook: Notebook): void {
  groups.forEach((group, g) => {
    const earlier = groups.find(
      (one, o) => o < g && one.caseIndex === group.caseIndex && one.rowPosition === group.rowPosition,
    );
    if (earlier === undefined) return;
    complain(
      notebook,
      `${group.field}.case`,
      "each case once for each rowPosition",
      `what ${earlier.field} counts already`,
      "put all its spots into one list",
    );
  });
}

/** Spots in pairs: as many of each case at each row position. */
function refuseUnpaired(groups: readonly CountedGroup[], notebook: Notebook): void {
  groups.forEach(({ rowPosition, spots, field }, g) => {
    const other = groups.find(
      (one, o) => o < g && one.rowPosition === rowPosition && one.spots.length !== spots.length,
    );
    if (other === undefined) return;
    const wanted = other.spots.length;
    complain(
      notebook,
      `${field}.spots`,
      `${wanted} ${wanted === 1 ? "spot" : "spots"}, one for each of ${other.field}, as spots are paired`,
      `${spots.length}`,
      "give each spot its neighbor, or leave out spotsPaired",
    );
  });
}
