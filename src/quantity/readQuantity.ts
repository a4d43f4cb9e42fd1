import { InputError, quoteFound, type Problem } from "../problem.ts";
import { kinds, type QuantityKind } from "./kinds.ts";
import { isTooLong, shortenIt } from "./longest.ts";
import { splitNumber } from "./numberText.ts";
import { convertByTable } from "./unitTable.ts";
import { exactAcre, spellUnit } from "./unitText.ts";

/** What a text alone cannot tell. */
export interface ReadingContext {
  /** Mass of a bushel of this crop, kg; null = the crop is not counted in bushels. */
  readonly kgPerBushel: number | null;
}

type Convert = (value: number, unit: string, inside: string) => number;

let convert: Convert | null = null;

/** The library of units with what it lacks. Large, and slow to start: units of the trade are read without it, see unitTable.ts. */
export async function unitLibrary() {
  const { create, createUnitDependencies, unitDependencies } = await import("mathjs");
  if (createUnitDependencies === undefined || unitDependencies === undefined)
    throw new Error("mathjs has no units");
  const { createUnit, unit } = create({ createUnitDependencies, unitDependencies }, {});
  // The library's acre is rounded to 4046.86 m2, which would show in the fifth figure of a yield.
  createUnit(exactAcre, "43560 ft^2");
  return { unit };
}

/** Fetches the library of units, once: before `readQuantity`, unless that is done within `withUnits`. */
export async function loadUnits(): Promise<void> {
  if (convert !== null) return;
  const { unit } = await unitLibrary();
  convert = (value, from, inside) => unit(value, from).toNumber(inside);
}

/** A unit was met that only the library knows of, or knows not to be one. */
class LibraryWanted extends Error {}

/** Reads; where that meets a unit that the library is needed for, fetches it and reads anew. */
export async function withUnits<T>(read: () => T): Promise<T> {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof LibraryWanted)) throw error;
  }
  await loadUnits();
  return read();
}

/**
 * A quantity as a number in the inside unit of its kind (see `kinds.ts`).
 *
 * @param found text with a unit, or a bare number in the unit the kind names; bare text likewise
 * @param field where it stands, for the error
 * @returns a finite number; the range is for the caller to check
 * @throws InputError where it is no such quantity
 * @example readQuantity("14 in", "depth", "soil.layers[0].thickness") // 355.6
 */
export function readQuantity(
  found: unknown,
  kind: QuantityKind,
  field: string,
  context: ReadingContext = { kgPerBushel: null },
): number {
  const read = tryQuantity(found, kind, context);
  if (typeof read === "number") return read;
  throw new InputError([{ field, ...read, found: quoteFound(found) }]);
}

const tooLarge = "give a smaller number: this one is too large";

/** As `readQuantity`, but says what is wrong instead of throwing. */
export function tryQuantity(
  found: unknown,
  kind: QuantityKind,
  context: ReadingContext = { kgPerBushel: null },
): number | Pick<Problem, "expected" | "mend"> {
  const { expected, mend, bare, inside } = kinds[kind];
  if (typeof found === "number" && Number.isFinite(found) && bare !== null)
    return within(found, bare, inside);
  if (typeof found !== "string") return { expected, mend };
  if (isTooLong(found)) return { expected, mend: shortenIt };
  const split = splitNumber(found);
  if (split === null && Math.abs(parseFloat(found)) === Infinity) return { expected, mend: tooLarge };
  if (split === null) return { expected, mend: "start with a number written with a point, such as 1.5" };
  const { value, unit } = split;
  if (unit === "") return bare === null ? { expected, mend } : within(value, bare, inside);
  const reader = readers[kind];
  const number = reader ? reader(value, unit, context) : byDimension(value, spellUnit(unit), inside);
  if (number === null) return { expected, mend };
  return Number.isFinite(number) ? number : { expected, mend: tooLarge };
}

/** `null` = no such quantity. */
type Reader = (value: number, unit: string, context: ReadingContext) => number | null;

/** Kinds that are more than a dimension. */
const readers: Partial<Record<QuantityKind, Reader>> = {
  share: readShare,
  sharePerDay: (value, unit) => readShare(value, unit.replace(/(?:\/|per|a)\s*d(?:ay)?$/i, "").trimEnd()),
  temperatureDifference: readTemperatureDifference,
  thermalTime: readThermalTime,
  population: readPopulation,
  yieldPerArea: (value, unit, context) => withBushels(value, unit, kinds.yieldPerArea.inside, context),
  yieldPerWater: (value, unit, context) => withBushels(value, unit, kinds.yieldPerWater.inside, context),
  testWeight: readTestWeight,
};

function readShare(value: number, unit: string): number | null {
  if (unit === "") return value;
  const spelt = spellUnit(unit);
  if (spelt === "%") return tidy(value / 100);
  // "0.27 cm3/cm3", "2.1 in/ft"
  return /^(in|ft|[cm]?m)(\^3)?\s*\/\s*(in|ft|[cm]?m)(\^3)?$/.test(spelt)
    ? byDimension(value, spelt, "m/m")
    : null;
}

function readTemperatureDifference(value: number, unit: string): number | null {
  const spelt = spellUnit(unit);
  if (spelt === "degC" || spelt === "K") return value;
  return spelt === "degF" ? value / 1.8 : null;
}

function readThermalTime(value: number, unit: string): number | null {
  const scale = /^(?:GDD\s*)?(?:(?:\u00b0|deg(?:rees?)?)\s*)?([CF])(?:[\s\u00b7*-]*d(?:ays?)?)?$/i.exec(
    unit,
  )?.[1];
  if (scale === undefined || !/d/i.test(unit.replace(/^deg(rees?)?/i, ""))) return null;
  return scale.toUpperCase() === "C" ? value : value / 1.8;
}

function readPopulation(value: number, unit: string): number | null {
  // "16k plants/ac"
  const [, thousand, area] =
    /^(k\b|thousand\b)?\s*(?:plants?|seeds?|heads?|ears?)?\s*(?:\/|per\s|an?\s)\s*(\S.*)$/i.exec(unit) ?? [];
  const areaM2 = area === undefined ? null : byDimension(1, spellUnit(area), "m^2");
  return areaM2 === null ? null : ((thousand === undefined ? 1 : 1000) * value) / areaM2;
}

function readTestWeight(value: number, unit: string): number | null {
  const mass = /^(\w+?)\s*(?:\/|per)\s*(?:bu|bushels?)\.?$/i.exec(unit)?.[1];
  return mass === undefined ? null : byDimension(value, spellUnit(mass), kinds.testWeight.inside);
}

/** Bushels become the crop's mass; everything else is plain mass. */
function withBushels(
  value: number,
  unit: string,
  inside: string,
  { kgPerBushel }: ReadingContext,
): number | null {
  const bushels = /^(?:bu|bushels?)\b\.?/i;
  if (!bushels.test(unit)) return byDimension(value, spellUnit(unit), inside);
  return kgPerBushel === null
    ? null
    : byDimension(value * kgPerBushel, spellUnit(unit.replace(bushels, "kg")), inside);
}

function within(value: number, bare: string, inside: string): number {
  if (bare === inside) return value;
  const number = byDimension(value, bare, inside);
  if (number === null) throw new Error(`a bare number of ${bare} is no ${inside}`);
  return number;
}

function byDimension(value: number, unit: string, inside: string): number | null {
  const number = convertByTable(value, unit, inside);
  if (number !== undefined) return number === null ? null : tidy(number);
  if (convert === null) throw new LibraryWanted(`loadUnits() has not been awaited, to read "${unit}"`);
  try {
    return tidy(convert(value, unit, inside));
  } catch {
    return null; // an unknown unit or another dimension; the caller says so in the words of the trade
  }
}

/** 1.42 g/cm^3 is 1420, not 1419.9999999999998; 99.9 % is 0.999. */
function tidy(value: number): number {
  return Number(value.toPrecision(13));
}
