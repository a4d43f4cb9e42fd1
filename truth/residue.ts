/** How every row describes its fallow: by system or by straw rate, one rule for all (data-reference/scoreboard/residue.json). */
import rule from "../data-reference/scoreboard/residue.json" with { type: "json" };
import type { Written } from "./seasons.ts";

export type FallowSystem =
  | "dust mulch"
  | "tilled"
  | "stubble mulch"
  | "no-till"
  | { readonly strawTPerHa: number };

/** When a run begins: at harvest with fallow, or at planting. Straw by rate is laid down then. */
export type RunBegins = "with fallow" | "at planting";

/** Share of the ground under residue on the first day, percent. */
export function coverPercent(system: FallowSystem, begins: RunBegins): number {
  if (typeof system !== "string") return 100 * (1 - Math.exp(-rule.straw.perTHa * system.strawTPerHa));
  const found = rule.systems.find(({ id }) => id === system);
  if (found === undefined) throw new Error(`no fallow system ${system}`);
  return begins === "with fallow" ? found.cover : found.atPlanting;
}

export const surfaceOf = (system: FallowSystem, begins: RunBegins = "with fallow"): Written => ({
  residueCover: `${coverPercent(system, begins).toFixed(1)} %`,
});
