import { nearestName } from "../nearestName.ts";
import { complain, type Notebook } from "./resolve/notebook.ts";

/** Index of the case of that name; -1, with a complaint, where there is none. */
export function caseNamed(
  name: string,
  caseNames: readonly string[],
  field: string,
  notebook: Notebook,
): number {
  const index = caseNames.indexOf(name);
  if (index >= 0) return index;
  const near = nearestName(name, caseNames);
  const list = caseNames.map((one) => `"${one}"`).join(", ");
  complain(
    notebook,
    field,
    `the name of a case: ${list}`,
    `"${name}"`,
    near === null ? "use one of these names" : `did you mean "${near}"?`,
  );
  return -1;
}
