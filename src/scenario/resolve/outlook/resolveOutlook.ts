import { isoDate, yearOf } from "../../../quantity/calendar.ts";
import { nearestName } from "../../../nearestName.ts";
import type { StartingWater } from "../../../soil/layers/startingWater.ts";
import type { CasePart, ScenarioFile } from "../../fields/file.ts";
import type { Case, OutlookPlan } from "../../scenario.ts";
import { complain, type Notebook } from "../notebook.ts";
import { refuseBelowSoil, waterByLayer } from "../resolveStartingWater.ts";

type Measured = NonNullable<CasePart["outlook"]>;

/** Other years are slips of the pen. */
const firstYear = 1800;
const lastYear = 2200;

/**
 * The season under way: its day, and the water measured on it in each case.
 *
 * @param cases undefined where one has faults of its own
 */
export function resolveOutlook(
  { outlook }: Pick<ScenarioFile, "outlook">,
  parts: readonly CasePart[],
  cases: readonly (Case | undefined)[],
  notebook: Notebook,
): OutlookPlan | null {
  const places = parts.map(({ outlook: own }, c) =>
    own === undefined ? { part: outlook ?? {}, path: "outlook" } : { part: own, path: `cases[${c}].outlook` },
  );
  if (outlook === undefined && parts.every((part) => part.outlook === undefined)) return null;
  const { date } = outlook ?? {};
  if (date !== undefined && (yearOf(date) < firstYear || yearOf(date) > lastYear))
    complain(
      notebook,
      "outlook.date",
      `a day from ${firstYear} to ${lastYear}`,
      isoDate(date),
      "check the year",
    );
  const waterByCase = cases.map((plan, c) => {
    const { part, path } = places[c]!;
    return plan === undefined ? null : measuredWater(part, path, plan, notebook);
  });
  if (date === undefined && waterByCase.some((water) => water !== null))
    complain(notebook, "outlook.date", "the day that the water was measured on", undefined, "give it");
  return { day: date ?? null, waterByCase };
}

function measuredWater(
  { moistDepth, shareBelow, layers }: Measured,
  path: string,
  plan: Case,
  notebook: Notebook,
): StartingWater | null {
  const probed = moistDepth !== undefined || shareBelow !== undefined;
  if (layers !== undefined && probed) {
    complain(notebook, path, "layers, or moistDepth and shareBelow", "all of them", "leave out one way");
    return null;
  }
  if (layers !== undefined) return ofLayers(layers, path, plan, notebook);
  if (!probed) return null;
  if (moistDepth !== undefined && shareBelow !== undefined) {
    refuseBelowSoil(moistDepth, plan.layers, `${path}.moistDepth`, notebook);
    return { kind: "moist depth", moistDepthMm: moistDepth, shareBelow };
  }
  complain(
    notebook,
    `${path}.${moistDepth === undefined ? "moistDepth" : "shareBelow"}`,
    "moistDepth and shareBelow together",
    undefined,
    moistDepth === undefined
      ? "say how deep the probe went"
      : "say how moist the soil is below the probe's depth",
  );
  return null;
}

function ofLayers(
  written: NonNullable<Measured["layers"]>,
  path: string,
  { layers }: Case,
  notebook: Notebook,
): StartingWater | null {
  const names = layers.map(({ name }) => name);
  const before = notebook.problems.length;
  written.forEach(({ name }, w) => {
    const field = `${path}.layers[${w}].name`;
    const near = nearestName(name, names);
    if (!names.includes(name))
      complain(
        notebook,
        field,
        `a layer of the soil: ${names.map((one) => `"${one}"`).join(", ")}`,
        `"${name}"`,
        near === null ? "use one of these names" : `did you mean "${near}"?`,
      );
    else if (written.findIndex((one) => one.name === name) < w)
      complain(notebook, field, "each layer once", `"${name}" again`, "leave one out");
  });
  const lacking = names.find((name) => !written.some((one) => one.name === name));
  if (lacking !== undefined && notebook.problems.length === before)
    complain(
      notebook,
      `${path}.layers`,
      "water in every layer of the soil",
      `none for "${lacking}"`,
      "give it, or moistDepth and shareBelow instead",
    );
  if (notebook.problems.length > before) return null;
  const places = names.map((name) => written.findIndex((one) => one.name === name));
  return (
    waterByLayer(
      places.map((w) => written[w]!.water),
      layers,
      places.map((w) => `${path}.layers[${w}]`),
      null,
      notebook,
    ) ?? null
  );
}
