/** How every row describes its fallow: by system or by straw rate, one rule for all (data-reference/scoreboard/residue.json). */
import rule from "../data-reference/scoreboard/residue.json" with { type: "json" };
import type { Written } from "./seasons.ts";

export type FallowSystem =
  | "dust mulch"
  | "tilled"
  | "stubble mulch"
  | "no-till"
  | { readonly strawTPerHa: number };

/** Share of the ground under residue, percent. */
export function coverPercent(system: FallowSystem): number {
  if (typeof system !== "string") return 100 * (1 - Math.exp(-rule.straw.perTHa * system.strawTPerHa));
  const found = rule.systems.find(({ id }) => id === system);
  if (found === undefined) throw new Error(`no fallow system ${system}`);
  return found.cover;
}

export const surfaceOf = (system: FallowSystem): Written => ({
  residueCover: `${coverPercent(system).toFixed(1)} %`,
});
