import { tryQuantity } from "../../quantity/index.ts";
import { splitNumber } from "../../quantity/numberText.ts";
import { formFacts } from "./facts/formFacts.ts";
import { loose } from "./fields.ts";

/** What kernels weigh, and ground counted over, as people write them. */

const gramsPer: Readonly<Record<string, number>> = {
  mg: 0.001,
  g: 1,
  gram: 1,
  grams: 1,
  oz: 28.349523125,
  lb: 453.59237,
};

/** g of one kernel, from the weight of a thousand: `350 g`; or of one, `350 mg/kernel`. */
export function kernelWeight(means: string) {
  return grams(
    means,
    'the weight of a thousand kernels such as "350 g"',
    /^(m?g|grams?|oz|lb)(?:\s*(?:\/|per)\s*(1,?000|thousand|(?:k\s*)?kernel|seed)s?(?:\s*(?:kernels|seeds))?)?$/i,
    (unit, per) =>
      per !== undefined && /^(kernel|seed)$/i.test(per) ? gramsPer[unit]! : gramsPer[unit]! / 1000,
    { from: 0.0005, to: 1, says: "0.5 to 1000 g for a thousand kernels" },
  );
}

/** g of grain of one head: `0.51 g`. */
export function grainPerHead(means: string) {
  return grams(
    means,
    'the weight of the grain of one head such as "0.51 g"',
    /^(m?g|grams?|oz|lb)(?:\s*(?:\/|per|a)\s*(head|ear))?$/i,
    (unit) => gramsPer[unit]!,
    { from: 0.01, to: 1000, says: "0.01 to 1000 g a head" },
  );
}

interface Gramme {
  readonly from: number;
  readonly to: number;
  readonly says: string;
}

function grams(
  means: string,
  expected: string,
  unitPattern: RegExp,
  inGrams: (unit: string, per: string | undefined) => number,
  within: Gramme,
) {
  return loose((found) => {
    // A bare number could be grams or ounces.
    const split = typeof found === "string" ? splitNumber(found) : null;
    const [, unit, per] = (split === null ? null : unitPattern.exec(split.unit)) ?? [];
    if (split === null || unit === undefined)
      return { fault: { expected, mend: "write the unit as g or oz" } };
    const gram = split.value * inGrams(unit.toLowerCase(), per);
    return gram >= within.from && gram <= within.to
      ? { value: gram }
      : { fault: { expected: within.says, mend: "check the number and its unit" } };
  }).describe(`${means}. Text with its unit; ${within.says}.`);
}

/** Kernels in a bushel or a pound: `90,000` or 90000. */
export function kernelsIn(of: "bushel" | "pound", from: number, to: number) {
  const example = of === "bushel" ? 90_000 : 15_500;
  const range = `${from.toLocaleString("en")} to ${to.toLocaleString("en")} kernels in a ${of}`;
  return loose((found) => {
    const split = typeof found === "string" ? splitNumber(found) : { value: found, unit: "" };
    if (split === null || !/^(kernels|seeds)?$/.test(split.unit))
      return { fault: { expected: `kernels in a ${of} such as ${example}`, mend: "write the number alone" } };
    if (split.value >= from && split.value <= to) return { value: split.value };
    const thousands = split.value * 1000;
    const mend =
      thousands >= from && thousands <= to
        ? `for ${split.value} thousand write ${thousands}`
        : "check the number";
    return { fault: { expected: range, mend } };
  })
    .describe(`Kernels in a ${of}, such as ${example}; ${range}.`)
    .register(formFacts, { isNumber: true });
}

/** Ground counted over, m2: `1 m^2`, `0.001 ac`, `10 ft^2`. */
export function countedArea(means: string) {
  const says = "1 ft^2 to 1 ac (0.09 to 4047 m^2)";
  return loose((found) => {
    // Bare, it could be acres or square feet.
    const ha = typeof found === "number" ? null : tryQuantity(found, "area");
    if (typeof ha !== "number" || !/[a-z]/i.test(String(found)))
      return {
        fault: {
          expected: 'an area such as "0.001 ac" or "1 m^2"',
          mend: "write the unit as ac, ft^2 or m^2",
        },
      };
    const m2 = ha * 10_000;
    return m2 >= 0.09 && m2 <= 4048
      ? { value: m2 }
      : { fault: { expected: says, mend: "check the number and its unit" } };
  }).describe(`${means}. Text with its unit; ${says}.`);
}
