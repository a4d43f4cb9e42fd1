import type { DefaultUsed } from "../../scenario/scenario.ts";
import { bullets } from "../../wrap.ts";

/** How much of the defaults is told: all, or the two that decide most. */
export type DefaultsTold = "all" | "deciding";

/**
 * Fields by how much the answer hangs on them, most first. Ours, from trials of one at a time on the quick question: water at
 * the start moves the answer by far the most, then the yield line, then residue and fallow.
 */
const decidingFields: readonly RegExp[] = [
  /startingWater|\.water$|^chain\.warmUp$/,
  /^yield\.(?:line|slope)$/,
  /residueCover$/,
  /^fallow\.length$/,
  /(?:fieldCapacity|availableWater)$/,
  /^crop\.sowing$/,
  /^soil\.hydrologicGroup$/,
];

const mostDeciding = 2;

/** Of what nobody stated, the two that the answer hangs on most; fewer where fewer were left out. */
export function decidingDefaults(defaults: readonly DefaultUsed[]): readonly DefaultUsed[] {
  return decidingFields
    .flatMap((fields) => defaults.find(({ field }) => fields.test(field)) ?? [])
    .slice(0, mostDeciding);
}

export function defaultLines(defaults: readonly DefaultUsed[], told: DefaultsTold): string[] {
  const shown = told === "all" ? defaults : decidingDefaults(defaults);
  const rest = defaults.length - shown.length;
  const heading =
    rest === 0
      ? `Defaults used (${defaults.length})`
      : `Not stated, and decides most (${rest} more defaults: --defaults)`;
  return [heading, ...bullets(shown.map(({ field, value, why }) => `${field}: ${value} (${why})`))];
}
