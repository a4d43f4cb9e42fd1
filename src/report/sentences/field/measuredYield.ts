import { shownYield } from "../../../answer/comparison/yieldUnits.ts";
import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { Units } from "../../../quantity/kinds.ts";
import { rangeSaid } from "../../tables/rangeSaid.ts";
import { fineYield } from "../../tables/formatters.ts";

/** Yields that were measured, in words: a tenth of a bushel, whole pounds and kilograms. */
export interface MeasuredYield {
  readonly unit: string;
  /** The number alone, without its sign. */
  readonly size: (kgPerHa: number) => string;
  readonly say: (kgPerHa: number) => string;
  /** As a person would ask for it: `5 bu/ac`, not `5.0`. */
  readonly plain: (kgPerHa: number) => string;
  /** `4.6 bu/ac more`, `nothing` where it rounds to 0. */
  readonly more: (kgPerHa: number) => string;
  /** `61.0 to 78.2 bu/ac` */
  readonly range: (low: number, high: number) => string;
  /** `1.1 to 9.3 bu/ac more`, `2.0 less to 11.2 bu/ac more`. */
  readonly moreRange: (low: number, high: number) => string;
}

export function measuredYield(unit: YieldUnit, system: Units): MeasuredYield {
  const shown = shownYield(unit, system);
  const number = (kgPerHa: number) => fineYield(kgPerHa * shown.factor, shown.unit);
  const size = (kgPerHa: number) => number(Math.abs(kgPerHa));
  return {
    unit: shown.unit,
    size,
    say: (kgPerHa) => `${number(kgPerHa)} ${shown.unit}`,
    plain: (kgPerHa) => `${Number(number(kgPerHa))} ${shown.unit}`,
    more: (kgPerHa) =>
      Number(size(kgPerHa)) === 0
        ? `no ${shown.unit} more or less`
        : `${size(kgPerHa)} ${shown.unit} ${kgPerHa < 0 ? "less" : "more"}`,
    range: (low, high) => `${number(low)} to ${number(high)} ${shown.unit}`,
    moreRange(low, high) {
      if (high <= 0) return `${size(high)} to ${size(low)} ${shown.unit} less`;
      const said = rangeSaid({ p10: low, p50: (low + high) / 2, p90: high }, size);
      return said.endsWith("more")
        ? said.replace(/ more$/, ` ${shown.unit} more`)
        : `${said} ${shown.unit} more`;
    },
  };
}
