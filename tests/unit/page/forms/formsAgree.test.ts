import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { kinds } from "../../../../src/quantity/kinds.ts";
import type { FormField } from "../../../../src/scenario/say/formFields.ts";
import { scenarioJsonSchema } from "../../../../src/scenario/say/jsonSchema.ts";
import table from "../../../../web/forms/formFields.json" with { type: "json" };

/** The table that the page's forms take their controls from, against the schema of the scenario file; and their paths against it. */

const formFields = table as unknown as Readonly<Record<string, FormField>>;

interface Part {
  readonly type?: string | readonly string[];
  readonly enum?: readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Part>>;
  readonly items?: Part;
  readonly anyOf?: readonly Part[];
}

/** A place of the scenario in the schema; the shape of the alternatives that has it. */
function partsAt(part: Part, keys: readonly string[]): Part[] {
  const [key, ...rest] = keys;
  if (part.anyOf !== undefined)
    return part.anyOf.flatMap((one) =>
      partsAt({ ...one, description: one.description ?? part.description ?? "" }, keys),
    );
  if (key === undefined) return [part];
  const next = key === "[]" ? part.items : part.properties?.[key];
  return next === undefined ? [] : partsAt(next, rest);
}

/** Of no kind: a square foot, a thousand kernels and a head are units here only, and a number alone is refused. */
const ownUnits = /\.counts\[\]\.(?:area|kernelWeight|grainPerHead)$/;

const schema = scenarioJsonSchema() as Part;

function schemaAt(place: string): Part[] {
  return partsAt(schema, place.replaceAll("[]", ".[]").split("."));
}

/** What the table and the schema say differently of a field; null where they agree. */
function faultOf(place: string, { as, kind, choices }: FormField): string | null {
  const part = schemaAt(place);
  if (part.length === 0) return "no such place";
  const types = part.flatMap(({ type = [] }) => type);
  switch (as) {
    case "switch":
      return types.includes("boolean") ? null : "no yes or no";
    case "number":
      return types.some((type) => type === "number" || type === "integer") ? null : "no number";
    case "choice": {
      const words = part.flatMap((one) => one.enum ?? []);
      const isSame = words.length === 0 || choices!.toSorted().join() === words.toSorted().join();
      return types.includes("string") && isSame ? null : `choices ${words.join(", ")}`;
    }
    case "list":
      return types.includes("array") ? kindFault(part, kind, place) : "no list";
    case "quantity":
      return types.includes("string") ? kindFault(part, kind, place) : "a text is refused there";
    default:
      return types.includes("string") ? null : "a text is refused there";
  }
}

function kindFault(part: readonly Part[], kind: FormField["kind"], place: string): string | null {
  const said = part.map(({ description = "", items }) => `${description} ${items?.description ?? ""}`).join();
  // A length on a tape tells its units by an example.
  if (!/Text with its unit(?:[;.]|, or a bare number)/.test(said) || ownUnits.test(place)) return null;
  if (kind === undefined) return "its kind";
  const bare = /bare number in ([^;.]+?)[;.]/.exec(said)?.[1] ?? null;
  const own = kinds[kind].bare === "1" ? "parts of 1" : kinds[kind].bare;
  return bare === own ? null : `a bare number in ${bare}, not ${own}`;
}

test("the table holds the whole file", () => expect(Object.keys(formFields).length).toBeGreaterThan(150));

test.each(Object.entries(formFields))("%s", (place, field) => expect(faultOf(place, field)).toBeNull());

const views = new URL("../../../../web/views/", import.meta.url);
const written = readdirSync(views, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".tsx"))
  .flatMap((file) => [
    ...readFileSync(new URL(file, views), "utf8").matchAll(
      /<Field\s+(?:\{\.\.\.\w+\("(\w+)"\)\}|path="([^"]+)")/g,
    ),
  ])
  .map(([, key, path]) => path ?? key!);

test("every field that a view writes out is in it", () => {
  expect(written.length).toBeGreaterThan(60);
  const ends = new Set(Object.keys(formFields).flatMap((place) => [place, place.split(".").at(-1)!]));
  expect(written.filter((path) => !ends.has(path))).toEqual([]);
});
