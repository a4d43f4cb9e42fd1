import type { Problem } from "../../../src/problem.ts";
import { attachments } from "../../state/scenarioStore.ts";
import { valueAt } from "../../state/scenarioStore.ts";

/** The pages of the notebook, in order, and which places of the scenario each holds. */
export const sections = [
  { id: "scenario", title: "Scenario", holds: ["name", "notes", "invented", "format", "$schema"] },
  { id: "site", title: "Site", holds: ["site"] },
  { id: "soil", title: "Soil", holds: ["soil"] },
  { id: "start", title: "Water at the start", holds: ["soil.startingWater"] },
  { id: "weather", title: "Weather", holds: ["weather"] },
  { id: "crop", title: "Crop and fallow", holds: ["crop", "fallow", "rotation", "chain"] },
  { id: "surface", title: "Surface", holds: ["surface"] },
  { id: "cases", title: "Cases", holds: ["cases"] },
  { id: "yield", title: "Yield line", holds: ["yield"] },
  { id: "runs", title: "Runs and method", holds: ["ensemble", "model"] },
  { id: "file", title: "As a file", holds: ["money", "evidence", "rowPositions"] },
] as const;

export type SectionId = (typeof sections)[number]["id"];

/** The section that a problem belongs to: by its place, or by the file it was found in. */
export function sectionOf({ field }: Pick<Problem, "field">): SectionId {
  for (const name of Object.keys(attachments.value)) {
    if (field.startsWith(name)) return valueAt("soil.horizons.file") === name ? "soil" : "weather";
  }
  let found: SectionId = "file";
  let longest = 0;
  for (const { id, holds } of sections) {
    for (const path of holds) {
      const here = field === path || field.startsWith(`${path}.`) || field.startsWith(`${path}[`);
      if (here && path.length > longest) [found, longest] = [id, path.length];
    }
  }
  return found;
}

export function sectionElement(id: SectionId): HTMLElement | null {
  return document.getElementById(`inputs-${id}`);
}

/** Takes eye, ear and keyboard to a section. */
export function goToSection(id: SectionId): void {
  const heading = sectionElement(id)?.querySelector<HTMLElement>("h2");
  heading?.scrollIntoView({ block: "start" });
  heading?.focus({ preventScroll: true });
}

/** Takes them to the field of a problem, opening what it is folded into; to what is around it where it has none. */
export function goToProblem(problem: Problem): void {
  if (!focusNear(problem.field)) goToSection(sectionOf(problem));
}

/** Takes them to the field at a place, or to the nearest around it; false = there is none here. */
export function focusNear(path: string): boolean {
  const element = fieldNear(path);
  if (element === null) return false;
  for (let around = element.parentElement; around !== null; around = around.parentElement) {
    if (around instanceof HTMLDetailsElement) around.open = true;
  }
  element.scrollIntoView({ block: "center" });
  const control = element.querySelector<HTMLElement>("input, select, textarea, button");
  control?.focus({ preventScroll: true });
  return true;
}

function fieldNear(path: string): HTMLElement | null {
  for (let at = path; at !== ""; at = at.replace(/(?:\.[^.[\]]+|\[\d+\]|^[^.[\]]+)$/, "")) {
    const found = document.querySelector<HTMLElement>(`[data-path="${CSS.escape(at)}"]`);
    if (found !== null) return found;
    if (!/[.[]/.test(at)) return null;
  }
  return null;
}
