import { InputError, refuse, refuseSaying } from "../../problem.ts";
import { availableWaterSd } from "../equations/availableWaterSpread.ts";
import { densityHindrance } from "../equations/densityFactor.ts";
import type { Hindrance, SoilLayer } from "./layer.ts";
import { type LayerDescription, type SoilDefault, layerFieldNames } from "./layerDescription.ts";
import { type LayerOrigin, type ShareRange, assumedOrigin, usualOpenShare } from "./layerOrigin.ts";
import { layerProblems, percent } from "./layerRanges.ts";
import { penetrationHindrance } from "../equations/penetrationFactor.ts";
import { settleLimits } from "./settleLimits.ts";
import { type Texture, centralTexture, textureClass, textureClassNamed } from "../equations/texture.ts";
import {
  drainExponent,
  estimateWaterLimits,
  gPerCm3,
  gravelConductivityShare,
  gravelVolumeFraction,
  particleDensityKgPerM3,
  poreSizeIndex,
  saturatedConductivityMmPerDay,
} from "../equations/waterLimits.ts";

export interface ResolvedLayer {
  readonly layer: SoilLayer;
  readonly defaults: readonly SoilDefault[];
  /** Each begins with the layer's name and a colon. */
  readonly notes: readonly string[];
}

/** Ours: shares of organic matter usual in dryland fields, where nobody measured it; by the depth of the layer's middle. */
export const defaultOrganicMatterPercent = (middleMm: number): number => (middleMm < 300 ? 1.5 : 0.5);

/**
 * Turns a description into a layer with nothing left to decide: what is stated holds, the rest is estimated.
 *
 * Refuses contradictions (InputError naming `path` and the field). Without a density or a reading nothing says that roots are
 * held back, so the layer lets them pass; its normal density serves only the water limits.
 *
 * @param path where the layer stands, such as `soil.layers[1]`
 */
export function resolveLayer(description: LayerDescription, path: string): ResolvedLayer {
  const problems = layerProblems(description, path);
  if (problems.length > 0) throw new InputError(problems);

  const defaults: SoilDefault[] = [];
  const notes: string[] = [];
  const field = (key: keyof LayerDescription): string => `${path}.${layerFieldNames[key]}`;
  const byDefault = (key: keyof LayerDescription, value: string, why: string): void => {
    defaults.push({ field: field(key), value, why });
  };
  const { name } = description;

  const texture = resolveTexture(description, field, byDefault, notes);
  let organicMatterPercent = description.organicMatterPercent;
  if (organicMatterPercent === undefined) {
    organicMatterPercent = defaultOrganicMatterPercent((description.topMm + description.bottomMm) / 2);
    byDefault(
      "organicMatterPercent",
      `${organicMatterPercent} %`,
      "usual in dryland fields at this depth; our judgment",
    );
  }

  const normal = estimateWaterLimits({
    ...texture,
    organicMatterPercent,
    bulkDensityKgPerM3: null,
    gravelVolumeFraction: 0,
  });
  const stones =
    description.gravelVolumeFraction ??
    gravelVolumeFraction(
      description.gravelMassFraction ?? 0,
      description.bulkDensityKgPerM3 ?? normal.normalDensityKgPerM3,
    );
  if (description.gravelVolumeFraction === undefined && description.gravelMassFraction === undefined) {
    byDefault("gravelVolumeFraction", "0 %", "no stones stated");
  }
  const fine = 1 - stones;

  // A stated saturation tells the density, unless that is stated too.
  const fromSaturation =
    description.saturation === undefined
      ? null
      : particleDensityKgPerM3 * (1 - description.saturation / fine);
  if (fromSaturation !== null && fromSaturation < 300) {
    refuseSaying(
      field("saturation"),
      "less water than fits between the stones and the grains",
      percent(description.saturation ?? 0),
      "check saturation and stones",
    );
  }
  const bulkDensityKgPerM3 = description.bulkDensityKgPerM3 ?? fromSaturation ?? normal.normalDensityKgPerM3;
  if (description.bulkDensityKgPerM3 === undefined) {
    const why =
      fromSaturation === null ? "estimated from texture (Saxton & Rawls 2006)" : "from the stated saturation";
    const roots =
      description.penetrationResistanceMPa === undefined
        ? "taken as no hindrance to roots"
        : "the penetrometer reading says what roots meet";
    byDefault("bulkDensityKgPerM3", gPerCm3(bulkDensityKgPerM3), `${why}; ${roots}`);
  }

  const estimate =
    bulkDensityKgPerM3 === normal.normalDensityKgPerM3
      ? normal
      : estimateWaterLimits({
          ...texture,
          organicMatterPercent,
          bulkDensityKgPerM3,
          gravelVolumeFraction: 0,
        });
  const limits = settleLimits(description, estimate, fine, field);
  const said = limits.allStated ? limits.notes : [...estimate.notes, ...limits.notes];
  for (const note of said) notes.push(`${name}: ${note}`);

  const lambda = poreSizeIndex(limits.wiltingPoint, limits.fieldCapacity);
  const conductivity =
    description.saturatedConductivityMmPerDay ??
    saturatedConductivityMmPerDay(limits.fieldCapacity / fine, limits.saturation / fine, lambda) *
      gravelConductivityShare(stones, bulkDensityKgPerM3);

  const origin = description.origin ?? assumedOrigin(description.topMm, description.bottomMm);
  const hindrance = resolveHindrance(description, origin, texture, byDefault, notes);
  const ways = resolveWays(description, origin, hindrance, byDefault);
  return {
    layer: {
      name,
      topMm: description.topMm,
      bottomMm: description.bottomMm,
      ...texture,
      organicMatterPercent,
      bulkDensityKgPerM3,
      gravelVolumeFraction: stones,
      wiltingPoint: limits.wiltingPoint,
      fieldCapacity: limits.fieldCapacity,
      saturation: limits.saturation,
      availableWaterSd: availableWaterSd(description, limits.fieldCapacity - limits.wiltingPoint, fine),
      saturatedConductivityMmPerDay: conductivity,
      conductivityMeasured: description.saturatedConductivityMmPerDay !== undefined,
      drainExponent: drainExponent(lambda),
      hindrance,
      origin,
      ...ways,
    },
    defaults,
    notes,
  };
}

type Field = (key: keyof LayerDescription) => string;
type ByDefault = (key: keyof LayerDescription, value: string, why: string) => void;

/** Stated shares hold; a class fills in what they leave; neither is refused. */
function resolveTexture(
  { name, texture: text, sandFraction, clayFraction }: LayerDescription,
  field: Field,
  byDefault: ByDefault,
  notes: string[],
): Texture {
  const named = text === undefined ? null : textureClassNamed(text, field("texture"));
  if (sandFraction !== undefined && clayFraction !== undefined) {
    const measured = textureClass(sandFraction, clayFraction);
    if (named !== null && named !== measured) {
      notes.push(`${name}: sand and clay make it a ${measured}, not a ${named}; the shares are used`);
    }
    return { sandFraction, clayFraction };
  }
  if (named === null) {
    const key = sandFraction === undefined ? "sandFraction" : "clayFraction";
    const nothing = sandFraction === undefined && clayFraction === undefined;
    return refuse(
      field(nothing ? "texture" : key),
      "a USDA texture class, or both sand and clay",
      undefined,
      'give a class such as "silt loam", or sand and clay in percent',
    );
  }
  const central = centralTexture(named);
  const sand = sandFraction ?? central.sandFraction;
  const clay = clayFraction ?? central.clayFraction;
  if (sand + clay > 1 || textureClass(sand, clay) !== named) {
    const stated = sandFraction === undefined ? "clayFraction" : "sandFraction";
    refuseSaying(
      field(stated),
      `a share usual in a ${named}`,
      percent(sandFraction ?? clayFraction ?? 0),
      "give both sand and clay, or the class alone",
    );
  }
  const why = `middle of the class "${named}" (Saxton & Rawls 2006, Table 3)`;
  if (sandFraction === undefined) byDefault("sandFraction", percent(sand), why);
  if (clayFraction === undefined) byDefault("clayFraction", percent(clay), why);
  return { sandFraction: sand, clayFraction: clay };
}

/** A reading before a density; neither means that nothing is known to hold roots back. */
function resolveHindrance(
  description: LayerDescription,
  origin: LayerOrigin,
  { sandFraction, clayFraction }: Texture,
  byDefault: ByDefault,
  notes: string[],
): Hindrance {
  const { name, penetrationResistanceMPa: resistanceMPa, bulkDensityKgPerM3, structure } = description;
  if (resistanceMPa !== undefined) {
    const usual = origin === "natural" ? "structured" : "tilled";
    if (structure === undefined) {
      byDefault("structure", usual, `of a layer that is ${sayOrigin(origin)}; sets the limit for roots`);
    }
    notes.push(
      `${name}: the penetrometer reading is taken as one at field capacity and stands in place of bulk density`,
    );
    return penetrationHindrance(resistanceMPa, structure ?? usual);
  }
  if (structure !== undefined) {
    notes.push(`${name}: structure counts only beside a penetrometer reading; none is given`);
  }
  if (bulkDensityKgPerM3 === undefined) return { strict: 1, usual: 1, lenient: 1, basis: "bulk density" };
  return densityHindrance(sandFraction, clayFraction, bulkDensityKgPerM3);
}

/** Where roots find a way that the density does not tell of. What was not said matters, and is told, only in a layer that hinders. */
function resolveWays(
  { openShare: stated, origin: said }: LayerDescription,
  origin: LayerOrigin,
  hindrance: Hindrance,
  byDefault: ByDefault,
): { readonly openShare: ShareRange; readonly originAssumed: boolean } {
  const hinders = hindrance.strict < 1;
  const openShare =
    stated === undefined ? usualOpenShare(origin) : { low: stated, middle: stated, high: stated };
  const originAssumed = hinders && said === undefined && stated === undefined;
  if (originAssumed) {
    byDefault(
      "origin",
      origin,
      origin === "natural"
        ? "it begins below 12 in or is thicker than 12 in, more than what tillage and most wheels pack"
        : "its top lies within 12 in and it is no thicker, as what tillage and wheels pack; say natural where they did not",
    );
  }
  if (hinders && stated === undefined) {
    byDefault(
      "openShare",
      percent(openShare.middle),
      `of a layer that is ${sayOrigin(origin)}: roots find cracks and old channels; ${percent(openShare.low)} to ${percent(openShare.high)} in the runs`,
    );
  }
  return { openShare, originAssumed };
}

/** `natural`, `a tillage pan` */
export const sayOrigin = (origin: LayerOrigin): string => (origin === "natural" ? origin : `a ${origin}`);
