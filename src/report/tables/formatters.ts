import { mmPerInch } from "../../quantity/constants.ts";
import type { Units } from "../../quantity/kinds.ts";

/** Numbers as people read them in one of the two systems. */
export interface Formatters {
  readonly system: Units;
  /** `in` or `mm`, of water and of soil. */
  readonly length: "in" | "mm";
  /** Water: tenths of an inch, or whole millimetres, as good as the model is. */
  readonly water: (mm: number) => string;
  /** The same, one digit finer, for small differences. */
  readonly fineWater: (mm: number) => string;
  readonly depth: (mm: number) => string;
  /** A rainfall total as asked: `13` for 13 in, `13.5` for 13.5 in. */
  readonly total: (mm: number) => string;
  readonly yield: (value: number, unit: string) => string;
}

export function shownIn(system: Units): Formatters {
  const us = system === "us";
  return {
    system,
    length: us ? "in" : "mm",
    water: us ? (mm) => fixed(mm / mmPerInch, 1) : (mm) => fixed(mm, 0),
    fineWater: us ? (mm) => fixed(mm / mmPerInch, 2) : (mm) => fixed(mm, 1),
    depth: us ? (mm) => fixed(mm / mmPerInch, 1) : (mm) => fixed(mm, 0),
    total: us ? (mm) => trimmed(mm / mmPerInch) : (mm) => fixed(mm, 0),
    yield: (value) => fixed(value, 0),
  };
}

/** Fixed digits without a minus zero. */
export function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
}

/** A yield that is measured, or a difference: a digit finer where the unit is as large as a bushel. */
export function fineYield(value: number, unit: string): string {
  return fixed(value, unit === "bu/ac" ? 1 : 0);
}

/** At most one digit after the point, none where it is 0. */
function trimmed(value: number): string {
  return String(Number(value.toFixed(1)));
}

/** `40 %` of a share 0 to 1. */
export function percent(share: number): string {
  return `${fixed(share * 100, 0)} %`;
}
