/** Every flag that stands for a field of the scenario file takes what the field takes, and tells the field's default. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { commands } from "../../src/cli/commands.ts";
import { flagOption, flagWritten, type FlagName } from "../../src/cli/flags.ts";
import { loadUnits } from "../../src/quantity/index.ts";
import { scenarioFileFields } from "../../src/scenario/index.ts";
import { call, ownFolder } from "./callCli.ts";

beforeAll(loadUnits);

/** By the flag as it is written; null = it stands for none. A new flag is to be put in. */
const fieldOfFlag: Readonly<Record<string, string | null>> = {
  "--units": null,
  "--json": null,
  "--out": null,
  "--save": null,
  "--year": null,
  "--run": null,
  "--seed": "ensemble.seed",
  "--years": "ensemble.years",
  "--rain": "weather.annualRain",
  "--weather-units": "weather.units",
  "--weather-station": "weather.station",
  "--pattern": "weather.pattern",
  "--days-not-listed": "weather.daysNotListed",
  "--from": "weather.from",
  "--to": "weather.to",
  "--max-gap-days": "weather.maxGapDays",
  "--latitude": "site.latitude",
  "--elevation": "site.elevation",
  "--date": "outlook.date",
  "--texture": "soil.layers[].texture",
  "--crop": "crop.name",
  "--sowing": "crop.sowing",
  "--deeper": "cases[].rootingDepth",
  // A name or a list; read and refused by the resolver, in the flag's words.
  "--rotation": null,
  "--residue": "surface.residueCover",
  "--moist": "soil.startingWater.moistDepth",
  "--sort": null,
  "--only": null,
  "--skip-gaps": null,
  "--csv": null,
  "--list": null,
  "--resume": null,
  "--brief": null,
  "--defaults": null,
  "--budget": null,
};

const names = [...new Set(commands.flatMap(({ flags }) => flags))];
const pairs = names.flatMap((name) => {
  const path = fieldOfFlag[flagWritten(name)];
  return typeof path === "string" ? [{ name, path }] : [];
});

function fieldAt(path: string): z.ZodType {
  let found: z.ZodType = scenarioFileFields;
  for (const key of path.replaceAll("[]", ".[]").split(".")) {
    found = required(found);
    if (key === "[]" && found instanceof z.ZodArray) found = found.element as z.ZodType;
    else if (found instanceof z.ZodObject && key in found.shape) found = found.shape[key] as z.ZodType;
    else throw new Error(`${path} is no field`);
  }
  return found;
}

function required(field: z.ZodType): z.ZodType {
  return field instanceof z.ZodOptional ? (field.unwrap() as z.ZodType) : field;
}

/** What is wrong with a text, in the flag's words; null = it takes it. */
function refusal(name: FlagName, text: string): string | null {
  try {
    flagOption(name).parseArg?.(text, undefined);
    return null;
  } catch (error) {
    return (error as Error).message;
  }
}

test("of every flag it is known which field it stands for", () => {
  expect(names.map(flagWritten).filter((flag) => !(flag in fieldOfFlag))).toEqual([]);
  expect(pairs.length).toBeGreaterThan(14);
});

describe("choices", () => {
  const withChoices = pairs.flatMap(({ name, path }) => {
    const field = required(fieldAt(path));
    return field instanceof z.ZodEnum ? [{ name, path, words: field.options.map(String) }] : [];
  });
  test("there are some", () => expect(withChoices.length).toBeGreaterThanOrEqual(2));
  test.each(withChoices)("$name takes those of $path", ({ name, words }) => {
    expect(flagOption(name).argChoices?.toSorted()).toEqual(words.toSorted());
  });
  test("a flag has none where its field has none", () => {
    const chosen = pairs.filter(({ name }) => flagOption(name).argChoices !== undefined);
    expect(chosen.map(({ path }) => path)).toEqual(withChoices.map(({ path }) => path));
  });
});

describe("whole numbers", () => {
  const numbers = pairs.filter(({ path }) => required(fieldAt(path)) instanceof z.ZodNumber);
  test("there are some", () => expect(numbers.length).toBeGreaterThanOrEqual(3));
  test.each(numbers)("$name has the limits of $path", ({ name, path }) => {
    const field = required(fieldAt(path));
    const said = /whole number from (\d+) to (\d+)/.exec(field.description ?? "");
    const [wanted, from, to] = [said?.[0], Number(said?.[1]), Number(said?.[2])];
    expect(refusal(name, "many")).toBe(`It is a ${wanted}.`);
    for (const value of [from - 1, from, from + 0.5, to, to + 1])
      expect([value, refusal(name, String(value)) === null]).toEqual([value, field.safeParse(value).success]);
    expect([from, to].every((value) => field.safeParse(value).success)).toBe(true);
  });
});

describe("days", () => {
  const days = pairs.filter(({ name }) => ["from", "to", "date"].includes(name));
  test.each(days)("$name is read as $path", ({ name, path }) => {
    for (const text of ["2020-02-29", "2021-02-29", "May 1", "1991-1-1", "0000-00-00", ""])
      expect([text, refusal(name, text) === null]).toEqual([text, fieldAt(path).safeParse(text).success]);
  });
});

describe("defaults", () => {
  const withDefault = pairs.flatMap(({ name, path }) => {
    const field = fieldAt(path);
    return "byDefault" in field ? [{ name, path, ...(field.byDefault as { value: unknown }) }] : [];
  });
  test("there are some", () => expect(withDefault.length).toBeGreaterThanOrEqual(3));
  test.each(withDefault)("$name tells that of $path", ({ name, value }) => {
    expect(flagOption(name).description).toContain(`, or ${String(value)})`);
  });
});

describe("where the station lies", () => {
  const folder = ownFolder();
  const rows = Array.from({ length: 20 }, (_, day) => `2020-05-${String(day + 1).padStart(2, "0")},1,25,10`);
  writeFileSync(join(folder, "days.csv"), ["date,rain_mm,tmax_C,tmin_C", ...rows].join("\n"));
  test.each([
    ["--latitude", "66 N"],
    ["--latitude", "66 S"],
    ["--latitude", "66.1 N"],
    ["--elevation", "-450 m"],
    ["--elevation", "6000 m"],
    ["--elevation", "19700 ft"],
    ["--elevation", "6010 m"],
    ["--elevation", "-460 m"],
  ])("weather %s %j is taken where the field takes it", async (flag, text) => {
    const site = ["--latitude", flag === "--latitude" ? text : "38 N"];
    const { code } = await call(
      folder,
      "weather",
      "days.csv",
      ...site,
      ...(flag === "--elevation" ? [flag, text] : []),
    );
    expect(code === 0).toBe(fieldAt(fieldOfFlag[flag]!).safeParse(text).success);
  });
});
