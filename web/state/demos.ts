import { readJson } from "../../src/scenario/read/readJson.ts";
import { filesNamed } from "./filesNamed.ts";
import { isGroup, type Json } from "./json.ts";
import type { Work } from "./scenarioStore.ts";

/** Scenarios that come with the page; all invented. */
const texts = import.meta.glob<string>("../../shared/scenarios/*.json", {
  query: "?raw",
  import: "default",
  eager: true,
});
const records = import.meta.glob<string>("../../shared/scenarios/**/*.csv", {
  query: "?url",
  import: "default",
  eager: true,
});

export interface Demo {
  /** `sorghum-over-plough-pan` */
  readonly id: string;
  readonly name: string;
  readonly scenario: Json;
}

/** The first is what the page opens with. */
const order = [
  "sorghum-over-plough-pan",
  "wheat-after-fallow",
  "sunflower-over-dry-clay",
  "sorghum-in-rotation",
];

export const demos: readonly Demo[] = Object.entries(texts)
  .map(([path, text]) => {
    const id = (path.split("/").at(-1) ?? path).replace(/\.json$/, "");
    const scenario = readJson(text, `${id}.json`) as Json;
    const name = isGroup(scenario) && typeof scenario["name"] === "string" ? scenario["name"] : id;
    return { id, name, scenario };
  })
  .sort((a, b) => placeOf(a.id) - placeOf(b.id) || a.id.localeCompare(b.id));

function placeOf(id: string): number {
  const place = order.indexOf(id);
  return place < 0 ? order.length : place;
}

/** A demo with the files it names, fetched from beside the page. */
export async function demoWork(demo: Demo): Promise<Work> {
  const attachments: Record<string, string> = {};
  for (const name of filesNamed(demo.scenario)) {
    const found = Object.entries(records).find(([path]) => path.endsWith(`/${name.replace(/^\.\//, "")}`));
    if (found === undefined) continue;
    const response = await fetch(found[1]);
    if (response.ok) attachments[name] = await response.text();
  }
  return { scenario: demo.scenario, attachments };
}
