import type { Problem } from "../../src/problem.ts";
import { openLeaf, view, type LeafName } from "../state/view.ts";
import { focusNear, goToProblem } from "./inputs/cardPlan.ts";

/** What is entered "In the field", by its place in the scenario: the first that fits counts. */
const fieldPlaces: readonly (readonly [place: RegExp, leaf: LeafName])[] = [
  [/^money\b/, "money"],
  [/^rowPositions\b/, "rows"],
  [/^evidence\.(?:counts|countsYear|spotsPaired)\b/, "counts"],
  [/^evidence\.strips\b/, "strips"],
  [/^evidence\.confidence\b/, "water"],
  [/^evidence\b/, "dig"],
  [/\.(?:cores|penetrometer|pushes)\b/, "samples"],
];

/** The leaf of "In the field" that holds a place; null = it stands in Inputs. */
export function leafOf(field: string): LeafName | null {
  return fieldPlaces.find(([place]) => place.test(field))?.[1] ?? null;
}

/** From any view: opens the one that holds the field of a problem, and takes eye, ear and keyboard there. */
export function goToField(problem: Problem): void {
  const leaf = leafOf(problem.field);
  if (leaf !== null) openLeaf.value = leaf;
  const isInputs = leaf === null;
  const isOther = view.value !== (isInputs ? "inputs" : "field");
  view.value = isInputs ? "inputs" : "field";
  void whenThere(isInputs ? ".view-inputs .cards" : ".view-field .leaf", isOther).then((isThere) => {
    if (!isThere) return;
    if (isInputs) goToProblem(problem);
    else focusNear(problem.field);
  });
}

/** A view may have to be fetched first; one that opens takes the focus to itself before it can go further. */
async function whenThere(what: string, isOther: boolean): Promise<boolean> {
  const patienceMs = 5000;
  for (const from = performance.now(); performance.now() - from < patienceMs;) {
    await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    const hasOpened = !isOther || document.activeElement?.id === "main";
    if (hasOpened && document.querySelector(what) !== null) return true;
  }
  return false;
}
