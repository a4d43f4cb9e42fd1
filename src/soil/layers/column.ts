import { sayBoth } from "../../quantity/sayQuantity.ts";
import { InputError, type Problem, refuse, refuseSaying } from "../../problem.ts";
import type { SoilLayer } from "./layer.ts";
import { type LayerDescription, type SoilDefault, layerFieldNames } from "./layerDescription.ts";
import { resolveLayer } from "./resolveLayer.ts";

export interface ResolvedColumn {
  readonly layers: readonly SoilLayer[];
  readonly defaults: readonly SoilDefault[];
  readonly notes: readonly string[];
}

/** Depths that differ by less are the same depth written in two units, mm. */
const sameDepthMm = 0.05;

/**
 * Resolves all layers, top first, and checks that they follow one another from the surface down without gap or overlap.
 * Throws one InputError with the problems of every layer.
 *
 * @param path where the list stands, such as `soil.layers`
 */
export function resolveColumn(descriptions: readonly LayerDescription[], path: string): ResolvedColumn {
  if (descriptions.length === 0)
    refuse(path, "at least one layer", descriptions, "give its depths and texture");
  const layers: SoilLayer[] = [];
  const defaults: SoilDefault[] = [];
  // One line for what is said of several layers.
  const byNote = new Map<string, string[]>();
  const problems: Problem[] = [];
  let lastBottomMm = 0;
  for (const [i, description] of descriptions.entries()) {
    const here = `${path}[${i}]`;
    if (Math.abs(description.topMm - lastBottomMm) > sameDepthMm) {
      problems.push({
        field: `${here}.${layerFieldNames.topMm}`,
        expected: i === 0 ? "the surface, 0" : `the bottom of the layer above, ${sayMm(lastBottomMm)}`,
        found: sayMm(description.topMm),
        mend: "layers go from the surface down without gap or overlap",
      });
    }
    try {
      const resolved = resolveLayer(description, here);
      layers.push({ ...resolved.layer, topMm: lastBottomMm });
      defaults.push(...resolved.defaults);
      for (const note of resolved.notes) {
        const text = note.slice(description.name.length + 2);
        byNote.set(text, [...(byNote.get(text) ?? []), description.name]);
      }
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
    }
    lastBottomMm = description.bottomMm;
  }
  if (problems.length > 0) throw new InputError(problems);
  return { layers, defaults, notes: [...byNote].map(([text, names]) => `${names.join(", ")}: ${text}`) };
}

export interface RestrictedColumn {
  readonly layers: readonly SoilLayer[];
  /** What was cut off, in words; null when nothing was. */
  readonly note: string | null;
}

/** What a soil can end on. */
export const restrictionKinds = ["rock", "caliche", "cemented pan", "dense till", "gravel"] as const;

export type RestrictionKind = (typeof restrictionKinds)[number];

/**
 * Ends the column at a depth that neither roots nor, for our purposes, water pass: rock, caliche, a cemented pan.
 *
 * @param depthMm above 0; at or below the column's end it changes nothing
 * @param path of the depth, for the error
 */
export function restrictAt(
  layers: readonly SoilLayer[],
  depthMm: number,
  path = "soil.restriction.depth",
  kind: RestrictionKind = "rock",
): RestrictedColumn {
  if (!(depthMm > 0))
    refuseSaying(path, "a depth below the surface", sayMm(depthMm), "leave it out where nothing restricts");
  const endMm = layers.at(-1)?.bottomMm ?? 0;
  if (depthMm >= endMm) return { layers, note: null };
  const kept = layers
    .filter(({ topMm }) => topMm < depthMm)
    .map((layer) => (layer.bottomMm > depthMm ? { ...layer, bottomMm: depthMm } : layer));
  const lost = layers.length - kept.length;
  const dropped = lost === 0 ? "" : ` and ${lost === 1 ? "one layer is" : `${lost} layers are`} left out`;
  return {
    layers: kept,
    note: `the column ends on the ${kind} at ${sayBoth(depthMm, "depth")}, not at ${sayBoth(endMm, "depth")}${dropped}; water that reaches it drains away`,
  };
}

const sayMm = (mm: number): string => `${Math.round(mm * 10) / 10} mm`;
