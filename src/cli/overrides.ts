import { InputError } from "../problem.ts";
import type { GivenFlags } from "./flags.ts";

/** Flags that stand in for a field of the scenario file: they are read and checked as that field is. */
interface Override {
  readonly flag: string;
  readonly field: readonly [group: string, key: string];
  readonly value: unknown;
}

type Raw = Record<string, unknown>;

/**
 * The scenario as written, with the flags in place of its fields.
 * What is no scenario at all is handed back as it is: the reader says what is wrong with it.
 */
export function withFlags(raw: unknown, flags: GivenFlags): { raw: unknown; overrides: readonly Override[] } {
  if (!isGroup(raw)) return { raw, overrides: [] };
  const weather = isGroup(raw["weather"]) ? raw["weather"] : {};
  const rainKey = weather["seasonRain"] === undefined ? "annualRain" : "seasonRain";
  const overrides: Override[] = [
    { flag: "--rain", field: ["weather", rainKey] as const, value: flags.rain },
    { flag: "--station", field: ["weather", "station"] as const, value: flags.weatherStation },
    { flag: "--weather-units", field: ["weather", "units"] as const, value: flags.weatherUnits },
    { flag: "--years", field: ["ensemble", "years"] as const, value: flags.years },
    { flag: "--seed", field: ["ensemble", "seed"] as const, value: flags.seed },
  ].filter(({ value }) => value !== undefined);
  const patched: Raw = { ...raw };
  for (const { field, value } of overrides) {
    const [group, key] = field;
    const there = patched[group];
    // A group that is not one stays, for the reader to refuse.
    if (there === undefined || isGroup(there)) patched[group] = { ...there, [key]: value };
  }
  return { raw: patched, overrides };
}

/** Names the flag instead of the field where the flag is what is wrong. */
export function namingFlags(error: unknown, overrides: readonly Override[]): unknown {
  if (!(error instanceof InputError)) return error;
  return new InputError(
    error.problems.map((problem) => {
      const by = overrides.find(({ field }) => problem.field === field.join("."));
      return by === undefined ? problem : { ...problem, field: by.flag };
    }),
  );
}

function isGroup(value: unknown): value is Raw {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
