import * as z from "zod";
import {
  isTooLong,
  kinds,
  latitudeWithin,
  mostLatitudeDeg,
  shortenIt,
  tryDate,
  tryLatitude,
  tryMonthDay,
  tryQuantity,
  tryRainTotals,
  type QuantityKind,
} from "../../quantity/index.ts";
import { lookUp } from "../../lookUp.ts";
import { nearestName } from "../../nearestName.ts";
import { encodeFault, type Fault } from "../read/problems.ts";
import { formFacts } from "./facts/formFacts.ts";
import { mostInList, mostRainTotals, type Within } from "./facts/limits.ts";

// Without this zod tries to compile code, which a page's security policy forbids.
z.config({ jitless: true });

/** What a scenario file is built of: each says what it wants in the words of the trade. */

interface QuantityField {
  readonly means: string;
  /** How it is told while it is left out, where that is no constant; see `withDefault` for one that is. */
  readonly otherwise?: string;
  readonly within: Within;
  readonly mend?: string;
}

/** Text with a unit, or a bare number in the unit of its kind; comes out as a number in the inside unit. */
export function quantity(kind: QuantityKind, { means, otherwise, within, mend }: QuantityField) {
  const note = `${means}. ${howWritten(kind)}; ${within.says}.`;
  return loose((found) => {
    const read = tryQuantity(found, kind);
    if (typeof read !== "number") return { fault: { ...read, mend: mend ?? read.mend } };
    if (isWithin(read, within)) return { value: read };
    const bareShare = kind === "share" && read > 1 && !String(found).includes("%");
    const usual = bareShare ? 'write percent with its sign, such as "35 %"' : "check the number and its unit";
    return { fault: { expected: within.says, mend: mend ?? usual } };
  })
    .describe(otherwise === undefined ? note : `${note} Left out: ${otherwise}.`)
    .register(formFacts, { kind });
}

type KindAsWritten = "yieldPerArea" | "yieldPerWater" | "thermalTime" | "duration";

/** What no field has grown, by far, in the inside units: kg/ha, kg/ha for each mm, C day, days. Ours. */
const mostAsWritten: Readonly<Record<KindAsWritten, { readonly to: number; readonly says: string }>> = {
  yieldPerArea: { to: 100_000, says: "at most 89,000 lb/ac (100 t/ha)" },
  yieldPerWater: { to: 1000, says: "at most 22,000 lb/ac/in (1000 kg/ha/mm)" },
  thermalTime: { to: 10_000, says: "at most 18,000 F day (10,000 C day)" },
  duration: { to: 1100, says: "at most 36 months" },
};

/**
 * A yield, a price or a stage: how to read it is known only with the crop, so it stays as written and is read again then.
 * Here it is refused when it can be none of these kinds, or more than ever was.
 */
export function quantityAsWritten(
  oneOf: readonly [KindAsWritten, ...KindAsWritten[]],
  means: string,
  otherwise?: string,
) {
  const { expected, mend } = kinds[oneOf[0]];
  const note = `${means}. ${howWritten(oneOf[0])}.`;
  return loose((found) => {
    const readings = oneOf.map((kind) => ({ kind, read: tryQuantity(found, kind, { kgPerBushel: 25 }) }));
    const known = readings.find(({ read }) => typeof read === "number");
    if (known === undefined) {
      const [first] = readings;
      return { fault: typeof first!.read === "number" ? { expected, mend } : { ...first!.read, expected } };
    }
    if (Number(known.read) < 0)
      return { fault: { expected: `${expected}, not below 0`, mend: "leave out the minus" } };
    const { to, says } = mostAsWritten[known.kind];
    return Number(known.read) <= to
      ? { value: found }
      : { fault: { expected: `${expected}, ${says}`, mend: "check the number and its unit" } };
  })
    .describe(otherwise === undefined ? note : `${note} Left out: ${otherwise}.`)
    .register(formFacts, { kind: oneOf[0] });
}

function howWritten(kind: QuantityKind): string {
  const { bare } = kinds[kind];
  if (bare === null) return "Text with its unit";
  return `Text with its unit, or a bare number in ${bare === "1" ? "parts of 1" : bare}`;
}

export function latitude(means: string) {
  return loose((found) => {
    const read = tryLatitude(found);
    if (typeof read !== "number") return { fault: read };
    if (Math.abs(read) > mostLatitudeDeg)
      return { fault: { expected: latitudeWithin, mend: "check the number" } };
    return { value: read };
  }).describe(means);
}

export function monthDay(means: string) {
  return text(means).transform(reading(tryMonthDay));
}

export function date(means: string) {
  return text(means).transform(reading(tryDate));
}

/** One total, a range, or a list of totals. */
export function rainTotals(means: string) {
  const wanted = fault(
    'rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"]',
    "give a total, a range or a list",
  );
  return z
    .union([z.string(), z.number(), z.array(z.union([z.string(), z.number()]))], { error: () => wanted })
    .transform((found, context) => {
      if (Array.isArray(found) && found.length > mostRainTotals) {
        const expected = `at most ${mostRainTotals} rainfall totals`;
        complain(context.issues, found, { expected, mend: "take some out" });
        return z.NEVER;
      }
      const read = tryRainTotals(found);
      if (!isFault(read)) {
        if (read.every((mm) => mm >= 25 && mm <= 5003.8)) return read;
        complain(context.issues, found, {
          expected: "rainfall totals from 1 to 197 in (25 to 5000 mm)",
          mend: isBare(found)
            ? 'a number alone counts as mm: write the unit, such as "13 in"'
            : "check the number and its unit",
        });
      } else complain(context.issues, found, read);
      return z.NEVER;
    })
    .describe(means)
    .register(formFacts, { kind: "rain" });
}

function isBare(found: string | number | readonly (string | number)[]): boolean {
  return Array.isArray(found) ? found.some(isBare) : !/[a-z"']/i.test(String(found));
}

/** A plain number. */
export function number(means: string, within: Within) {
  return z
    .number({
      error: ({ input }) =>
        fault(`a number, ${within.says}`, tooLarge(input) ?? "write it without quotes or unit"),
    })
    .refine((value) => isWithin(value, within), {
      error: () => fault(`a number, ${within.says}`, "check the number"),
    })
    .describe(`${means}; ${within.says}.`);
}

export function wholeNumber(means: string, from: number, to: number) {
  const wanted = `a whole number from ${from} to ${to}`;
  return z
    .number({ error: ({ input }) => fault(wanted, tooLarge(input) ?? "write it without quotes") })
    .refine((value) => Number.isInteger(value) && value >= from && value <= to, {
      error: () => fault(wanted, "check the number"),
    })
    .describe(`${means}; ${wanted}.`);
}

/** JSON takes 1e400, which no number of ours can hold. */
function tooLarge(input: unknown): string | null {
  return typeof input === "number" && Math.abs(input) === Infinity ? "give a smaller number" : null;
}

export function yesOrNo(means: string) {
  return z
    .boolean({ error: () => fault("true or false", "write true or false without quotes") })
    .describe(means);
}

/** One of a few words. */
export function choice<const T extends readonly [string, ...string[]]>(
  words: T,
  means: string,
  alsoCalled: Readonly<Record<string, T[number]>> = {},
) {
  return z
    .enum(words, {
      error: ({ input }) => {
        const near =
          typeof input === "string"
            ? (lookUp(alsoCalled, input.trim().toLowerCase().slice(0, 60)) ?? nearestName(input, words))
            : null;
        return fault(
          `one of ${words.map((word) => `"${word}"`).join(", ")}`,
          near === null ? "choose one of these" : `did you mean "${near}"?`,
        );
      },
    })
    .describe(means);
}

export function text(means: string, longest = 120) {
  const wanted = `text of 1 to ${longest} letters`;
  return z
    .string({
      error: ({ input }) => fault(wanted, input === undefined ? "give it" : "write it between quotes"),
    })
    .refine((found) => found.length <= longest && found.trim() !== "", {
      // No pattern sees a text that is too long.
      abort: true,
      error: ({ input }) => fault(wanted, String(input).trim() === "" ? "write something" : "shorten it"),
    })
    .describe(means);
}

export function list<T extends z.ZodType>(of: T, means: string, { atLeast = 1, atMost = mostInList } = {}) {
  const count = atLeast === atMost ? `${atLeast}` : `${atLeast} to ${atMost}`;
  const wanted = `a list of ${count} in brackets`;
  const counted = () =>
    fault(wanted, atLeast === atMost ? `give ${atLeast} of them` : "check how many there are");
  return z
    .array(of, { error: () => fault(wanted, "write it between [ and ]") })
    .min(atLeast, { error: counted })
    .max(atMost, { error: counted })
    .describe(means);
}

/** A group of named fields; any other key is refused, with the nearest of its own. */
export function group<T extends z.core.$ZodLooseShape>(shape: T, means: string) {
  const keys = Object.keys(shape);
  return z
    .strictObject(shape, {
      error: (issue) =>
        issue.code === "unrecognized_keys"
          ? encodeFault({ kind: "keys", known: keys })
          : fault(`a group of keys in braces, such as { "${keys[0]}": ... }`, "write it between { and }"),
    })
    .describe(means);
}

export function fault(expected: string, mend: string): string {
  return encodeFault({ kind: "wrong", expected, mend });
}

/** What a check across fields found wrong; `path` within the group being checked. */
export function faultAt(path: (string | number)[], found: string, expected: string, mend: string) {
  return { code: "custom" as const, path, message: encodeFault({ kind: "wrong", expected, mend, found }) };
}

type Wrong = Pick<Extract<Fault, { kind: "wrong" }>, "expected" | "mend">;
type Read<T> = { value: T; fault?: never } | { fault: Wrong; value?: never };

export function loose<T>(read: (found: string | number) => Read<T>) {
  return z
    .union([z.string(), z.number()], {
      // A list or a group in its place: say the same as for a text that cannot be read.
      error: () =>
        fault(
          read("").fault?.expected ?? "text or a number",
          read("").fault?.mend ?? "write text or a number",
        ),
    })
    .transform((found, context) => {
      const { value, fault: wrong } = isTooLong(found) ? tooLong(read("")) : read(found);
      if (wrong === undefined) return value as T;
      complain(context.issues, found, wrong);
      return z.NEVER;
    });
}

/** A text that no pattern is to see: told as one that cannot be read, and to be shortened. */
function tooLong<T>({ fault: wrong }: Read<T>): Read<T> {
  return { fault: { expected: wrong?.expected ?? "a shorter text", mend: shortenIt } };
}

function reading<T>(read: (found: unknown) => T | Wrong) {
  return (found: string, context: z.core.$RefinementCtx): T => {
    const value = read(found);
    if (!isFault(value)) return value;
    complain(context.issues, found, value);
    return z.NEVER;
  };
}

function isFault<T>(read: T | Wrong): read is Wrong {
  return typeof read === "object" && read !== null && "mend" in read;
}

function complain(issues: z.core.$ZodRawIssue[], input: unknown, { expected, mend }: Wrong): void {
  issues.push({ code: "custom", input, message: fault(expected, mend) });
}

function isWithin(value: number, { from, to, above = false }: Within): boolean {
  return value <= to && (above ? value > from : value >= from);
}
