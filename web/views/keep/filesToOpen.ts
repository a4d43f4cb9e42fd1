import { scenarioFormat } from "../../../src/scenario/read/format.ts";
import { InputError } from "../../../src/problem.ts";
import { embeddedText } from "../../../src/report/page/embedded.ts";
import { readJson } from "../../../src/scenario/read/readJson.ts";
import { filesMissing, filesNamed, filesUsed, lastPart } from "../../state/filesNamed.ts";
import { isGroup, type Json } from "../../state/json.ts";
import type { Attachments, Work } from "../../state/scenarioStore.ts";

/** A file as chosen or dropped. */
export interface GivenFile {
  readonly name: string;
  readonly text: string;
}

export interface Opened {
  readonly work: Work;
  /** What undo will say. */
  readonly step: string;
  readonly said: string;
}

/** Longer ones are no scenarios; a report holds its records too. Letters. */
const longestScenario = 2_000_000;
const longestReport = 6_000_000;

/**
 * What comes of files given together: a scenario with the records it names, a report of ours, or a record for the scenario that
 * is here. Throws InputError, in one line, where nothing can come of them.
 */
export function filesToOpen(files: readonly GivenFile[], here: Work): Opened {
  const scenarios = files.filter(({ name, text }) => isScenarioFile(name, text));
  const others = files.filter((file) => !scenarios.includes(file));
  const records = Object.fromEntries(others.map(({ name, text }) => [name, text]));
  if (scenarios.length > 1) {
    refuse(
      "files",
      "one scenario at a time",
      scenarios.map(({ name }) => name).join(", "),
      "choose one of them, with the records it names",
    );
  }
  const [file] = scenarios;
  if (file === undefined) return recordsFor(here, records);
  const { scenario, attachments } = isPage(file) ? fromReport(file) : fromScenarioFile(file);
  // A record that is here already need not be given again.
  const all = { ...here.attachments, ...attachments, ...records };
  const unused = Object.keys(records).filter((name) => !isNamed(name, scenario));
  return {
    work: { scenario, attachments: filesUsed(scenario, all) },
    step: `open ${file.name}`,
    said: [
      `${file.name} is open. Undo brings back what was here before.`,
      ...keptSaid(scenario, here.attachments, { ...attachments, ...records }),
      ...missingSaid(scenario, all),
      ...(unused.length === 0 ? [] : [`It does not name ${unused.join(", ")}: left aside.`]),
    ].join(" "),
  };
}

/** The one file that may be a weather record which the scenario here does not name yet; null where there is none, or more. */
export function mayBeRecord(files: readonly GivenFile[], here: Work): GivenFile | null {
  const [file] = files;
  if (file === undefined || files.length > 1 || isScenarioFile(file.name, file.text)) return null;
  return isNamed(file.name, here.scenario) ? null : file;
}

function isScenarioFile(name: string, text: string): boolean {
  return /\.(?:json|html?)$/i.test(name) || /^\s*(?:\{|<!doctype html)/i.test(text.slice(0, 200));
}

function isPage({ name, text }: GivenFile): boolean {
  return /\.html?$/i.test(name) || /^\s*<!doctype html/i.test(text.slice(0, 200));
}

function fromScenarioFile({ name, text }: GivenFile): Work {
  if (text.length > longestScenario)
    refuse(name, "a scenario file", "a far longer one", "choose the scenario, not a record or a result");
  return { scenario: asScenario(readJson(text, name) as Json, name), attachments: {} };
}

function fromReport({ name, text }: GivenFile): Work {
  const held = text.length > longestReport ? null : embeddedText(text);
  if (held === null) {
    return refuse(
      name,
      "a report saved by rootfront",
      "a page without a scenario in it",
      "choose the report as it was saved, or the scenario file",
    );
  }
  const read = readJson(held, name) as Json;
  const attachments = isGroup(read) ? read["attachments"] : undefined;
  return {
    scenario: asScenario(isGroup(read) ? (read["scenario"] ?? null) : null, name),
    attachments: isGroup(attachments)
      ? Object.fromEntries(
          Object.entries(attachments).filter((one): one is [string, string] => typeof one[1] === "string"),
        )
      : {},
  };
}

/** Faults within a scenario can be mended on the page; what is none at all is not let in. */
function asScenario(read: Json, name: string): Json {
  const found = isGroup(read) ? read["format"] : undefined;
  if (found === scenarioFormat) return read;
  return refuse(
    name,
    `a scenario, which says "format": "${scenarioFormat}"`,
    found === undefined ? "none" : (JSON.stringify(found)?.slice(0, 60) ?? "none"),
    "choose a file that the page or the command line saved as a scenario",
  );
}

/** Records alone take the place of those that the scenario here names. */
function recordsFor(here: Work, records: Attachments): Opened {
  const names = Object.keys(records);
  const used = names.filter((name) => isNamed(name, here.scenario));
  if (used.length === 0) {
    return refuse(
      names.length === 1 ? names[0]! : "files",
      "a scenario file, a report, or a weather record",
      names.length === 0 ? "no file" : names.join(", "),
      "drop the scenario with them, or one record alone",
    );
  }
  const taken = Object.fromEntries(used.map((name) => [name, records[name]!]));
  const others = Object.entries(here.attachments).filter(
    ([name]) => !used.some((one) => lastPart(one) === lastPart(name)),
  );
  return {
    work: { ...here, attachments: { ...Object.fromEntries(others), ...taken } },
    step: `use ${used.join(", ")}`,
    said: `${used.join(", ")} is taken up. Undo brings back what was here before.`,
  };
}

function isNamed(name: string, scenario: Json): boolean {
  return filesNamed(scenario).some((one) => lastPart(one) === lastPart(name));
}

function keptSaid(scenario: Json, before: Attachments, given: Attachments): string[] {
  const kept = Object.keys(filesUsed(scenario, before)).filter(
    (name) => !Object.keys(given).some((one) => lastPart(one) === lastPart(name)),
  );
  return kept.length === 0 ? [] : [`${kept.join(", ")} is the one that was here already.`];
}

function missingSaid(scenario: Json, all: Attachments): string[] {
  const missing = filesMissing(scenario, all);
  return missing.length === 0
    ? []
    : [`It names ${missing.join(", ")}: open that file too, or both at once next time.`];
}

function refuse(field: string, expected: string, found: string, mend: string): never {
  throw new InputError([{ field, expected, found, mend }]);
}
