import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { demoAsWritten, demoNames, resolved } from "../../support/demos.ts";

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Every place of a scenario where a number with a unit stands. */
function quantitiesIn(found: Json, path = ""): (readonly [path: string, text: string])[] {
  if (typeof found === "string")
    return /^[+-]?[\d.]+(?:\.\.[\d.]+)? ?[A-Za-z%]/.test(found) ? [[path, found]] : [];
  if (Array.isArray(found)) return found.flatMap((one: Json, i) => quantitiesIn(one, `${path}[${i}]`));
  if (typeof found !== "object" || found === null) return [];
  return Object.entries(found).flatMap(([key, one]) =>
    quantitiesIn(one, path === "" ? key : `${path}.${key}`),
  );
}

function withAt(found: Json, path: string, value: Json): Json {
  const [, key = "", rest = ""] = /^\.?([^.[\]]+|\[\d+\])(.*)$/.exec(path) ?? [];
  const here = key.replace(/[[\]]/g, "");
  const inner = (one: Json) => (rest === "" ? value : withAt(one, rest, value));
  if (Array.isArray(found)) return found.with(Number(here), inner((found as Json[])[Number(here)]!));
  const group = found as { readonly [key: string]: Json };
  return { ...group, [here]: inner(group[here]!) };
}

async function problemsOf(scenario: Json): Promise<readonly string[]> {
  return resolved(scenario).then(
    () => [],
    (error: unknown) => {
      if (!(error instanceof InputError)) throw error;
      return error.problems.map(({ field }) => field);
    },
  );
}

describe.each(demoNames)("no quantity of %s is without bounds", (name) => {
  const demo = demoAsWritten(name) as Json;
  const places = quantitiesIn(demo);

  test("there are some", () => expect(places.length).toBeGreaterThan(20));

  test.each(places)("%s, now %s", async (path, text) => {
    for (const huge of ["1e200", "1e308"]) {
      const beyond = text.replace(/^[+-]?[\d.]+(?:\.\.[\d.]+)?/, (number) =>
        number.startsWith("+") ? `+${huge}` : huge,
      );
      const problems = await problemsOf(withAt(demo, path, beyond));
      const list = path.replace(/\[\d+\]$/, "");
      expect(
        problems.some((field) => field.startsWith(list)),
        `${beyond}: ${problems.join(", ")}`,
      ).toBe(true);
    }
  });
});

test.each([
  ["weather.annualRain", "197 in"],
  ["weather.annualRain", "1 in"],
  ["crop.sowingDepth", "12 in"],
  ["surface.evaporatingDepth", "8 in"],
  ["crop.frontVelocity", "4 in/day"],
  ["crop.height", "20 ft"],
  ["site.elevation", "19,700 ft"],
  ["site.elevation", "-1480 ft"],
])("a limit lets the very number through that it names: %s %s", async (path, text) => {
  const demo = demoAsWritten("sorghum-over-plough-pan") as Json;
  const groups = path.replace(/\.[^.]+$/, "");
  const key = path.slice(groups.length + 1);
  const at = groups.startsWith("cases")
    ? ((demo as never)["cases"] as Json[])[2]!
    : ((demo as never)[groups] ?? {});
  expect(await problemsOf(withAt(demo, groups, { ...(at as object), [key]: text }))).toEqual([]);
});

describe("a slip is refused where it stands", () => {
  const demo = demoAsWritten("sorghum-over-plough-pan") as Json;
  test.each(["1500-07-18", "9999-07-18"])("plants dug on %s", async (date) => {
    expect(await problemsOf(withAt(demo, "evidence.rootDepths[0].date", date))).toEqual([
      "evidence.rootDepths[0].date",
    ]);
  });
  test("two cases whose names differ by a capital and a space", async () => {
    expect(await problemsOf(withAt(demo, "cases[2].name", " Over the Pan "))).toContain("cases[2].name");
  });
});
