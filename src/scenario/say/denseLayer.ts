import { familyClass, densityThresholds } from "../../soil/equations/densityFactor.ts";
import { centralTexture, readTextureClass } from "../../soil/equations/texture.ts";
import type { LayerOrigin } from "../../soil/layers/layerOrigin.ts";

/** A layer of a scenario file, as written. */
export type WrittenLayer = Readonly<Record<string, string>>;

/** Where roots are held back, as told by someone who has felt it with a probe or seen it in a pit. */
export interface ToldDense {
  /** "6 to 10 in" */
  readonly span: string;
  readonly origin: LayerOrigin;
}

/** What the dense layer is called; a case that loosens it finds it by this name. */
export const denseName = "dense layer";

/**
 * Both ends of a span of depth. The unit may stand at the end only. Null where it is no span.
 * @example depthSpan("6 to 10 in") // ["6 in", "10 in"]
 */
export function depthSpan(text: string): readonly [top: string, bottom: string] | null {
  const parts = text.trim().split(/\s*(?:\.{2,3}|[\u2026\u2013\u2014-]|\bto\b)\s*/);
  const [top = "", bottom = ""] = parts;
  if (parts.length !== 2 || !/^[\d.]/.test(top) || !/^[\d.]/.test(bottom)) return null;
  const unit = bottom.replace(/^[\d.,\s]+/, "");
  return [/[a-z"']/i.test(top) ? top : `${top} ${unit}`.trim(), bottom];
}

/** Topsoil, the dense layer, and the subsoil below it. A span that cannot be read goes in as it is, to be refused where it is read. */
export function layersAround(
  { span, origin }: ToldDense,
  texture: string,
  bottom: string,
): readonly WrittenLayer[] {
  const [top, end] = depthSpan(span) ?? [null, span];
  const density = slowingDensity(texture);
  return [
    // What is dense from the surface down has no topsoil above it.
    ...(top === null || parseFloat(top) === 0 ? [] : [{ name: "topsoil", bottom: top, texture }]),
    { name: denseName, bottom: end, texture, ...(density === null ? {} : { bulkDensity: density }), origin },
    { name: "subsoil", bottom, texture },
  ];
}

/**
 * Density at which the survey's handbook says that restriction begins in a texture: what "dense" means while nobody has weighed
 * a core. Null for a texture that is not known.
 * Source: [NSSH 618] Figure 618-A2, read, by the middle of the texture's class; to take it here is ours.
 */
export function slowingDensity(texture: string): string | null {
  return said(texture, "restrictionBeginsKgPerM3");
}

/** Density up to which roots keep their whole pace: what a loosened layer has while nobody has weighed a core. Source: [Pierce et al. 1983], memory. */
export function looseDensity(texture: string): string | null {
  return said(texture, "unhinderedKgPerM3");
}

function said(texture: string, which: "restrictionBeginsKgPerM3" | "unhinderedKgPerM3"): string | null {
  const known = readTextureClass(texture);
  if (known === null) return null;
  const { sandFraction, clayFraction } = centralTexture(known);
  const kgPerM3 = densityThresholds(familyClass(sandFraction, clayFraction))[which];
  return `${(kgPerM3 / 1000).toFixed(2)} g/cm^3`;
}
