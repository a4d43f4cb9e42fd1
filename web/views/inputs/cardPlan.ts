import { batch } from "@preact/signals";
import type { Problem } from "../../../src/problem.ts";
import { attachments, valueAt } from "../../state/scenarioStore.ts";
import { openCard, type CardName } from "../../state/view.ts";

interface CardPlan {
  readonly title: string;
  /** Places of the scenario that stand on it. */
  readonly holds: readonly string[];
}

export const cards: Readonly<Record<CardName, CardPlan>> = {
  scenario: { title: "Scenario", holds: ["name", "notes", "invented", "format", "$schema"] },
  site: { title: "Site", holds: ["site"] },
  soil: { title: "Soil", holds: ["soil"] },
  start: { title: "Water at the start", holds: ["soil.startingWater"] },
  weather: { title: "Weather", holds: ["weather"] },
  crop: { title: "Crop and fallow", holds: ["crop", "fallow", "rotation", "chain"] },
  surface: { title: "Surface", holds: ["surface"] },
  cases: { title: "Cases", holds: ["cases"] },
  yield: { title: "Yield line", holds: ["yield"] },
  runs: { title: "Runs and method", holds: ["ensemble", "model"] },
  file: { title: "As a file", holds: ["money", "evidence", "rowPositions"] },
};

/** The card that a problem belongs to: by its place, or by the file it was found in. */
export function cardOf({ field }: Pick<Problem, "field">): CardName {
  for (const name of Object.keys(attachments.value)) {
    if (field.startsWith(name)) return valueAt("soil.horizons.file") === name ? "soil" : "weather";
  }
  let found: CardName = "file";
  let longest = 0;
  for (const [id, { holds }] of Object.entries(cards)) {
    for (const path of holds) {
      const here = field === path || field.startsWith(`${path}.`) || field.startsWith(`${path}[`);
      if (here && path.length > longest) [found, longest] = [id as CardName, path.length];
    }
  }
  return found;
}

/** Takes eye, ear and keyboard to the field of a problem, opening what it is folded into; to its card where it has none. */
export function goToProblem(problem: Problem): void {
  const card = cardOf(problem);
  if (focusNear(problem.field)) return;
  openCard.value = card;
  const summary = document.querySelector<HTMLElement>(`#inputs-${card} > summary`);
  summary?.focus({ preventScroll: true });
  scrollOnceDrawn(summary, "start");
}

/** Takes them to the field at a place, or to the nearest around it; false = there is none here. */
export function focusNear(path: string): boolean {
  const element = fieldNear(path);
  if (element === null) return false;
  batch(() => {
    for (let around = element.parentElement; around !== null; around = around.parentElement) {
      if (!(around instanceof HTMLDetailsElement)) continue;
      // At once: nothing within a closed one takes the focus.
      around.open = true;
      if (around.dataset["card"] !== undefined) openCard.value = around.dataset["card"] as CardName;
    }
  });
  element.querySelector<HTMLElement>("input, select, textarea, button")?.focus({ preventScroll: true });
  scrollOnceDrawn(element, "center");
  return true;
}

/** The card that was open closes first. */
function scrollOnceDrawn(element: HTMLElement | null, block: ScrollLogicalPosition): void {
  requestAnimationFrame(() => element?.scrollIntoView({ block }));
}

function fieldNear(path: string): HTMLElement | null {
  for (let at = path; at !== ""; at = at.replace(/(?:\.[^.[\]]+|\[\d+\]|^[^.[\]]+)$/, "")) {
    const found = document.querySelector<HTMLElement>(`[data-path="${CSS.escape(at)}"]`);
    if (found !== null) return found;
    if (!/[.[]/.test(at)) return null;
  }
  return null;
}
