import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { kinds, type QuantityKind } from "../../../src/quantity/kinds.ts";
import { scenarioJsonSchema } from "../../../src/scenario/say/jsonSchema.ts";

/** Every field of the page's forms against the schema of the scenario file: number or text, kind, and the words to choose from. */

interface Part {
  readonly type?: string | readonly string[];
  readonly enum?: readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Part>>;
  readonly items?: Part;
  readonly anyOf?: readonly Part[];
}

/** Where a form that is used in several places writes; elsewhere its path is written out. */
const placesOf: Readonly<Record<string, readonly string[]>> = {
  "field/money/items.tsx": ["money.costs[]"],
  "field/counts/group.tsx": ["evidence.counts[]"],
  "field/dig/table.tsx": ["evidence.rootDepths[]"],
  "field/samples/pushes.tsx": ["soil.penetrometer"],
  "field/samples/start.tsx": ["soil.startingWater"],
  "field/strips.tsx": ["evidence.strips"],
  "inputs/start.tsx": ["soil.startingWater"],
  "inputs/layer.tsx": ["soil.layers[]"],
  "inputs/cropFields.tsx": ["crop"],
  "inputs/surface.tsx": ["surface"],
  "inputs/cases.tsx": ["cases[]", "cases[].soil.layers[]", "cases[].soil.startingWater"],
};

interface FormField {
  readonly where: string;
  readonly tag: string;
  readonly props: string;
  readonly places: readonly string[];
}

const views = new URL("../../../web/views/", import.meta.url);
const fields = readdirSync(views, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".tsx"))
  .flatMap((file) => fieldsIn(file, readFileSync(new URL(file, views), "utf8")));

function fieldsIn(file: string, text: string): FormField[] {
  const tags = /<(QuantityField|TextField|NumberField|ListField|Choice|Toggle)\s((?:[^/]|\/(?!>))*)\/>/g;
  return [...text.matchAll(tags)].flatMap(([, tag = "", props = ""]) => {
    const path = /\bpath=(?:"([^"]+)"|\{`([^`]+)`\}|\{at\("(\w+)"\)\})/.exec(props)?.slice(1).find(Boolean);
    const key = path ?? /\{\.\.\.\w+\("(\w+)"/.exec(props)?.[1];
    if (key === undefined) return [];
    const tail = key.replace(/^\$\{\w+\}\./, "").replace(/\[[^\]]*\]/g, "[]");
    const isWhole = path !== undefined && path.includes(".") && !path.startsWith("${");
    const isTop = path !== undefined && /^[a-z]+$/.test(path) && !(file in placesOf);
    const places = isWhole || isTop ? [tail] : (placesOf[file] ?? []).map((place) => `${place}.${tail}`);
    return [{ where: `${file}: ${key}`, tag, props, places }];
  });
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

test("a good many fields are found", () => expect(fields.length).toBeGreaterThan(120));

/** What a form and the schema say differently of a field; null where they agree. */
function faultOf({ tag, props, places }: FormField): string | null {
  const [part, ...others] = places.map(schemaAt).filter((found) => found.length > 0);
  if (part === undefined || others.length > 0) return `no such place, or several: ${places.join(", ")}`;
  const types = part.flatMap(({ type = [] }) => type);
  switch (tag) {
    case "Toggle":
      return types.includes("boolean") ? null : "no yes or no";
    case "NumberField":
      return types.some((type) => type === "number" || type === "integer") ? null : "no number";
    case "Choice": {
      const listed = /choices=\{(\[[^\]]*\])\}/.exec(props)?.[1];
      const words = part.flatMap((one) => one.enum ?? []);
      const asked = listed === undefined ? words : (JSON.parse(listed) as string[]);
      return types.includes("string") && asked.toSorted().join() === words.toSorted().join()
        ? null
        : `choices ${words.join(", ")}`;
    }
    case "ListField":
      return types.includes("string") || types.includes("array") ? kindFault(part, props, places) : "no list";
    default:
      if (!types.includes("string")) return "a text is refused there";
      return tag === "TextField" ? null : kindFault(part, props, places);
  }
}

function kindFault(part: readonly Part[], props: string, places: readonly string[]): string | null {
  const said = part.map(({ description = "", items }) => `${description} ${items?.description ?? ""}`).join();
  // A length on a tape tells its units by an example.
  if (!/Text with its unit(?:[;.]|, or a bare number)/.test(said) || ownUnits.test(places[0]!)) return null;
  const kind = /\bkind="(\w+)"/.exec(props)?.[1] as QuantityKind | undefined;
  // Stages are told in days or degree days, as the crop's clock has it.
  if (kind === undefined) return /\bkind=\{/.test(props) ? null : "its kind";
  const bare = /bare number in ([^;.]+?)[;.]/.exec(said)?.[1] ?? null;
  const own = kinds[kind].bare === "1" ? "parts of 1" : kinds[kind].bare;
  return bare === own ? null : `a bare number in ${bare}, not ${own}`;
}

test.each(fields.map((field) => [field.where, field] as const))("%s", (_, field) =>
  expect(faultOf(field)).toBeNull(),
);
