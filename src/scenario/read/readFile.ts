import { InputError } from "../../problem.ts";
import { scenarioFileFields, type ScenarioFile } from "../fields/file.ts";
import { problemsOf } from "./problems.ts";

/** A parsed JSON value as a scenario file: shape, units and ranges checked, all problems told at once, first first. */
export function readScenarioFile(raw: unknown): ScenarioFile {
  const read = scenarioFileFields.safeParse(raw);
  if (read.success) return read.data;
  throw new InputError(problemsOf(read.error.issues, raw));
}
