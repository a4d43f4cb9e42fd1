import { unitLibrary } from "../src/quantity/readQuantity.ts";
import { kinds } from "../src/quantity/kinds.ts";
import { spellings } from "../src/quantity/unitText.ts";

/** Units that people write as mathjs spells them. */
const spelledAsIs =
  "mm cm dm m km um nm in inch inches ft foot feet yd yard yards mi mile miles g mg kg Mg lb lbm oz ton tons tonne tonnes " +
  "Pa hPa kPa MPa psi bar mbar s second seconds min minute minutes hour hours day days week weeks month months year years K " +
  "degC degF celsius fahrenheit hectare hectares";

const base = ["mass", "length", "time", "current", "temperature", "light", "amount", "angle", "bit"];

/** The library's fractions: what a Fahrenheit degree is worth is five ninths. */
interface Fraction {
  mul(by: number | Fraction): Fraction;
  sub(less: number): Fraction;
  valueOf(): number;
}

/** As mathjs gives a unit that it has read. */
interface Read {
  readonly units: readonly {
    readonly unit: {
      readonly value: number | Fraction;
      readonly offset: number | Fraction;
      readonly dimensions: readonly number[];
    };
    readonly prefix: { readonly value: number };
  }[];
}

/** What is in src/quantity/unitTable.json, by the name that mathjs knows the unit by. */
export async function worthOfUnits(): Promise<Record<string, unknown>> {
  const { unit } = await unitLibrary();
  return Object.fromEntries(
    unitNames().map((name) => {
      const [only] = (unit(1, name) as unknown as Read).units;
      if (only === undefined) throw new Error(`${name} is no unit`);
      const { value, offset, dimensions } = only.unit;
      const powers = dimensions.flatMap((power, d) => (power === 0 ? [] : [[base[d], power]]));
      const worth = {
        value: Number(value),
        prefix: only.prefix.value,
        zero: powers.some(([of]) => of === "temperature") ? zeroC(value, offset) : 0,
        dimensions: Object.fromEntries(powers),
      };
      return [name, worth];
    }),
  );
}

/** Kelvins from 0 C to where a scale of temperature begins, without the rounding of the two that it is the difference of. */
function zeroC(value: number | Fraction, offset: number | Fraction): number {
  const freezingK = 273.15;
  if (typeof value === "number") return value * Number(offset) - freezingK;
  return value.mul(offset).sub(freezingK).valueOf();
}

function unitNames(): string[] {
  const texts = [
    ...Object.values(spellings),
    ...Object.values(kinds).flatMap(({ bare, inside }) => [bare, inside]),
  ];
  const named = texts.flatMap((text) => text?.match(/[a-z]+/gi) ?? []);
  const notUnits = new Set(["C", "plants"]); // of kinds that are more than a dimension
  return [...new Set([...named, ...spelledAsIs.split(" ")])].filter((name) => !notUnits.has(name)).sort();
}
