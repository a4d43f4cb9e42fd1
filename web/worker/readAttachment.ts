import { refuse } from "../../src/problem.ts";
import type { ReadText } from "../../src/scenario/read/readText.ts";
import type { Attachments } from "../state/scenarioStore.ts";

/** The files beside the scenario, by the name it uses or by their last part: folders are of no account in a page. */
export function readAttachment(attachments: Attachments): ReadText {
  return (path, field) => {
    const name = lastPart(path);
    const key =
      Object.keys(attachments).find((one) => one === path) ??
      Object.keys(attachments).find((one) => lastPart(one) === name);
    if (key === undefined) {
      return refuse(
        field,
        "a file that the page has been given",
        path,
        `drop ${name} on the page, or choose it in Inputs`,
      );
    }
    return attachments[key]!;
  };
}

function lastPart(path: string): string {
  return path.split(/[\\/]/).at(-1) ?? path;
}
