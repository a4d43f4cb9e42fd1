import type { Problem } from "../problem.ts";
import { isTooLong, shortenIt } from "./longest.ts";
import { splitNumber } from "./numberText.ts";
import { tryQuantity, type ReadingContext } from "./readQuantity.ts";

/** `isTooMuch`: a sum of money it is, but none that can be. */
type Wrong = Pick<Problem, "expected" | "mend"> & { readonly isTooMuch?: true };

/** Money for each kg, each ha, or by itself. */
export type MoneyFor = "mass" | "land" | "whole";

export interface Money {
  readonly amount: number;
  /** `USD`, `EUR`, ... */
  readonly currency: string;
}

/** What is expected of each, and how to write it. */
export const moneyWanted: Readonly<Record<MoneyFor, Wrong>> = {
  mass: {
    expected: 'a price such as "5 USD/bu" or "0.18 EUR/kg"',
    mend: "write amount, currency, and per bu, lb, kg or t",
  },
  land: {
    expected: 'a cost such as "12 USD/ac" or "25 EUR/ha"',
    mend: "write amount, currency, and per ac or ha",
  },
  whole: { expected: 'an amount such as "4000 USD"', mend: "write amount and currency" },
};

/** More than any currency asks, for each kg, each ha, or by itself. Ours. */
const most: Readonly<Record<MoneyFor, { readonly amount: number; readonly says: string }>> = {
  mass: { amount: 1e7, says: "at most 10,000,000 for each kg" },
  land: { amount: 1e10, says: "at most 10,000,000,000 for each ha" },
  whole: { amount: 1e13, says: "at most 10,000,000,000,000" },
};

const signs: Readonly<Record<string, string>> = { $: "USD", "\u20ac": "EUR", "\u00a3": "GBP" };

/**
 * An amount of money; bushels need the crop's test weight.
 * @example tryMoney("5 USD/bu", "mass", { kgPerBushel: 25 }) // { amount: 0.2, currency: "USD" }, for each kg
 */
export function tryMoney(
  found: unknown,
  per: MoneyFor,
  context: ReadingContext = { kgPerBushel: null },
): Money | Wrong {
  const wrong = moneyWanted[per];
  if (typeof found !== "string") return wrong;
  if (isTooLong(found)) return { ...wrong, mend: shortenIt };
  const plain = found.trim();
  const sign = /^([+-]?)\s*([$\u20ac\u00a3])/.exec(plain);
  const split = splitNumber(sign ? `${sign[1]}${plain.slice(sign[0].length).trim()}` : plain);
  if (split === null) return wrong;
  const match = (
    sign ? /^()(?:\s*(?:\/|per\b)\s*(\S.*))?$/i : /^([A-Z]{3}|[$\u20ac\u00a3])(?:\s*(?:\/|per\b)\s*(\S.*))?$/i
  ).exec(split.unit);
  if (match === null) return wrong;
  const [, code = "", each] = match;
  const mark = sign?.[2] ?? code;
  const currency = signs[mark] ?? mark.toUpperCase();
  if ((each === undefined) !== (per === "whole")) return wrong;
  const within = (amount: number): Money | Wrong =>
    Math.abs(amount) <= most[per].amount
      ? { amount, currency }
      : { expected: `${wrong.expected}, ${most[per].says}`, mend: "check the number", isTooMuch: true };
  if (each === undefined) return within(split.value);
  // So many kg/ha (or ha) in one of what the money is for.
  const size =
    per === "mass"
      ? tryQuantity(`1 ${each}/ha`, "yieldPerArea", context)
      : tryQuantity(`1 ${each}`, "area", context);
  return typeof size === "number" && size > 0 ? within(split.value / size) : wrong;
}
