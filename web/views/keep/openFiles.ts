import { signal } from "@preact/signals";
import { InputError } from "../../../src/problem.ts";
import { largestFile } from "../../forms/files/largestFile.ts";
import { openWork, work } from "../../state/scenarioStore.ts";
import { view } from "../../state/view.ts";
import { tryRecord } from "../inputs/record/takeRecord.ts";
import { isAsked } from "../wayIn/give.ts";
import { filesToOpen, mayBeRecord, type GivenFile } from "./filesToOpen.ts";

/** What came of the last opening, and whether it went wrong. */
export const openingSays = signal<{ readonly text: string; readonly isWrong: boolean }>({
  text: "",
  isWrong: false,
});

/**
 * Opens what was chosen or dropped, wherever that was: a scenario, a report, or a weather record, which becomes the weather of
 * the field on show. What cannot be opened leaves everything as it is.
 */
export async function openFiles(files: readonly File[]): Promise<void> {
  if (files.length === 0) return;
  try {
    const given = await Promise.all(files.map(read));
    const record = mayBeRecord(given, work.peek());
    if (record !== null) {
      // On the first screen it is the answer about rain.
      const said = await recordTaken(record, view.peek() === "answer" && isAsked());
      openingSays.value = { text: said, isWrong: false };
      return;
    }
    const { work: next, step, said } = filesToOpen(given, work.peek());
    openWork(next, step);
    openingSays.value = { text: said, isWrong: false };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    openingSays.value = { text: `${error.message} What was here is still here.`, isWrong: true };
  }
}

async function recordTaken({ name, text }: GivenFile, isAnswer: boolean): Promise<string> {
  try {
    return await tryRecord(name, text, isAnswer);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const [first] = error.problems;
    throw new InputError([
      {
        field: name,
        expected: "a scenario, a report, or a weather record",
        found: "none of them",
        mend: `read as a record: ${first?.field}: expected ${first?.expected}, found ${first?.found}`,
      },
    ]);
  }
}

async function read(file: File): Promise<GivenFile> {
  const refuse = (expected: string, found: string, mend: string): never => {
    throw new InputError([{ field: file.name, expected, found, mend }]);
  };
  if (file.size > largestFile.bytes)
    refuse(
      `a file of ${largestFile.says}`,
      `one of ${Math.ceil(file.size / 1e6)} MB`,
      "cut it to one station",
    );
  const bytes = await file
    .arrayBuffer()
    .catch(() => refuse("a file that can be read", "one that cannot", "choose a file, not a folder"));
  try {
    return { name: file.name, text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return refuse("a text file in UTF-8", "other bytes", "save the file as UTF-8 text");
  }
}
