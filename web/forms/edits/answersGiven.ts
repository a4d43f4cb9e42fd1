import {
  asDug,
  asLoose,
  scenarioOfAnswers,
  type FiveAnswers,
} from "../../../src/scenario/say/fiveAnswers.ts";
import { filesUsed } from "../../state/filesNamed.ts";
import { isGroup, type Json } from "../../state/json.ts";
import { getAt, setAt } from "../../state/path.ts";
import type { Attachments, Work } from "../../state/scenarioStore.ts";
import { caseNamedIn, casesIn } from "./caseEdits.ts";
import { merged } from "./merged.ts";

/** A file dropped as an answer. */
export type GivenFile = Readonly<{ name: string; text: string }>;

/** Nothing but stated defaults. */
export function emptyWork(): Work {
  return { scenario: scenarioOf({}), attachments: {}, answers: {} };
}

/**
 * The work with some of the five answers given, changed, or taken back where they are undefined. A scenario that did not begin
 * with answers, such as a demo, is left behind as a whole; in one that did, what was entered by hand stays.
 *
 * Throws what reading a unit that only the library knows throws: to be called within `withUnits`.
 */
export function answered(
  here: Work,
  change: { readonly [Key in keyof FiveAnswers]?: FiveAnswers[Key] | undefined },
  file: GivenFile | null = null,
): Work {
  const was = here.answers ?? null;
  const before = was === null ? {} : answersNow(was, here.scenario);
  const answers = given({ ...before, ...change });
  const after = scenarioOf(answers);
  const scenario = was === null ? after : carried(scenarioOf(before), after, here.scenario);
  const files: Attachments = {
    ...(was === null ? {} : here.attachments),
    ...(file === null ? {} : { [file.name]: file.text }),
  };
  return { scenario, attachments: filesUsed(scenario, files), answers };
}

/** The answers as the scenario has them now: a rain typed in Inputs is the answer, too. */
export function answersNow(answers: FiveAnswers, scenario: Json): FiveAnswers {
  const there = (path: string) => {
    const value = getAt(scenario, path);
    return typeof value === "string" ? value : undefined;
  };
  const kept = <K extends keyof FiveAnswers>(key: K, path: string) => {
    const now = there(path);
    return answers[key] === undefined || now === undefined ? {} : { [key]: now };
  };
  const isStated = answers.deeper !== undefined && answers.deeper !== asLoose && answers.deeper !== asDug;
  const apart = isStated ? there("cases[1].rootingDepth") : undefined;
  const rotation = getAt(scenario, "rotation");
  const record = there("weather.record") || undefined;
  const { record: _record, recordPlace, ...others } = answers;
  return {
    ...others,
    ...(record === undefined ? {} : { record, ...(recordPlace === undefined ? {} : { recordPlace }) }),
    ...kept("texture", "soil.layers[0].texture"),
    ...(record === undefined ? kept("rain", "weather.annualRain") : {}),
    ...(rotation === undefined ? kept("crop", "crop.name") : {}),
    ...(apart === undefined || `+${answers.deeper}` === apart ? {} : { deeper: apart.replace(/^\+/, "") }),
  };
}

function scenarioOf(answers: FiveAnswers): Json {
  return scenarioOfAnswers(answers).file as Json;
}

/** What the step changes, in what is there; what names a case goes along with its name. */
function carried(before: Json, after: Json, now: Json): Json {
  const next = merged(before, after, now) ?? after;
  const [names, newNames] = [now, next].map((one) => casesIn(one).map(({ name }) => name)) as [
    Json[],
    Json[],
  ];
  return names.reduce<Json>((all, name, c) => {
    const to = newNames[c];
    if (typeof name !== "string" || typeof to !== "string" || name === to) return all;
    return caseNamedIn(now, name)
      .filter((path) => getAt(all, path) === name)
      .reduce((one, path) => setAt(one, path, to), all);
  }, next);
}

function given(answers: { readonly [key: string]: string | undefined }): FiveAnswers {
  return Object.fromEntries(Object.entries(answers).filter(([, text]) => text !== undefined && text !== ""));
}

/** Whether a scenario says of itself that it is invented. */
export function isInvented(scenario: Json): boolean {
  return isGroup(scenario) && scenario["invented"] === true;
}
