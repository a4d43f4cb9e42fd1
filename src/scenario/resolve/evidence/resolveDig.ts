import {
  hasFitted,
  middleDepth,
  mostWent,
  type Dig,
  type DugGroup,
  type Fitted,
  type RootWay,
} from "../../../evidence/dig/dig.ts";
import { nearestName } from "../../../nearestName.ts";
import { sayBoth, sayQuantity } from "../../../quantity/index.ts";
import { passageOf } from "../../../soil/layers/slices.ts";
import { caseNamed } from "../../caseNamed.ts";
import { digShape } from "../../fields/digFields.ts";
import type { EvidencePart } from "../../fields/file.ts";
import { complain, orDefault, type Notebook } from "../notebook.ts";
import type { Case } from "../../scenario.ts";
import { statedDepthMm } from "../../statedDepth.ts";
import { isoDate, yearOf } from "../../../quantity/calendar.ts";

/** Above this passage a layer is none that slows roots. */
const freePassage = 0.99;

/**
 * The dig of a scenario: plants by case, and what is fitted to them.
 *
 * @param cases undefined where one has faults of its own
 */
export function resolveDig(
  evidence: EvidencePart,
  confidence: number,
  caseNames: readonly string[],
  cases: readonly (Case | undefined)[],
  notebook: Notebook,
): Dig | null {
  const written = evidence.rootDepths ?? [];
  if (written.length === 0) return null;
  const groups = written.map(({ case: name, date, rowPosition, depths, roots, turnedAt }, g): DugGroup => {
    const field = `evidence.rootDepths[${g}]`;
    const caseIndex = caseNamed(name, caseNames, `${field}.case`, notebook);
    const bottomMm = cases[caseIndex]?.layers.at(-1)?.bottomMm ?? Infinity;
    depths.forEach((depth, d) => {
      if (depth <= bottomMm) return;
      complain(
        notebook,
        `${field}.depths[${d}]`,
        `a depth within the soil described, down to ${sayQuantity(bottomMm, "depth", "us")}`,
        sayQuantity(depth, "depth", "us"),
        "describe the soil deeper, or check the number and its unit",
      );
    });
    tellDugBelowStated(field, depths, cases[caseIndex], cases[0], notebook);
    const year = yearOf(date);
    if (year < firstYearDug || year > lastYearDug)
      complain(
        notebook,
        `${field}.date`,
        `a day from ${firstYearDug} to ${lastYearDug}`,
        isoDate(date),
        "check the year",
      );
    return {
      field: `${field}.date`,
      caseIndex,
      day: date,
      rowPosition: rowPosition ?? null,
      depthsMm: depths,
      ...(roots === undefined ? {} : { ways: waysOf(roots, depths.length, `${field}.roots`, notebook) }),
      ...(turnedAt === undefined
        ? {}
        : { turnedAtMm: turnedAbove(turnedAt, roots, depths, `${field}.turnedAt`, notebook) }),
    };
  });
  const paired = evidence.plantsPaired ?? digShape.plantsPaired.byDefault.value;
  if (paired) refuseUnpaired(groups, notebook);
  const known = cases.filter((one) => one !== undefined);
  const fitted = fittedOf(evidence, known, notebook);
  for (const group of groups) tellOtherDepths(group, fitted, cases, notebook);
  const drives = orDefault(
    notebook,
    evidence.digDecides,
    digShape.digDecides.byDefault,
    "evidence.digDecides",
  );
  return { groups, paired, confidence, fitted, drives };
}

/** A word for each plant; one word serves all. */
function waysOf(
  written: readonly RootWay[],
  plants: number,
  field: string,
  notebook: Notebook,
): readonly RootWay[] {
  if (written.length === plants) return written;
  if (written.length === 1) return Array.from({ length: plants }, () => written[0]!);
  complain(
    notebook,
    field,
    plants === 1
      ? "one word, for the one plant"
      : `one word for all plants, or ${plants}, one for each of the depths`,
    `${written.length}`,
    "give each plant its word",
  );
  return [];
}

/** Roots turn aside no deeper than they go, and no more plants turn than there are. */
function turnedAbove(
  written: readonly number[],
  roots: readonly RootWay[] | undefined,
  depthsMm: readonly number[],
  field: string,
  notebook: Notebook,
): readonly number[] {
  const deepest = Math.max(...depthsMm);
  const turned =
    roots === undefined || roots.length < depthsMm.length
      ? depthsMm.length
      : roots.filter((way) => way !== "straight").length;
  if (written.length > turned)
    complain(
      notebook,
      field,
      `at most ${turned} ${turned === 1 ? "depth" : "depths"}, one for each plant whose roots turned`,
      `${written.length}`,
      "give a depth for each of these plants only",
    );
  written.forEach((depth, d) => {
    if (depth <= deepest) return;
    complain(
      notebook,
      `${field}[${d}]`,
      `a depth above the deepest root dug, ${sayQuantity(deepest, "depth", "us")}`,
      sayQuantity(depth, "depth", "us"),
      "give the depth at which the roots turned, not how far they went",
    );
  });
  return written;
}

/** Roots turn at the top of a layer or a little into it; from this far off another layer turned them, mm. Ours: two inches. */
const turnedAwayMm = 51;

/** Depths of one file that do not go together: where roots turned and where the layer lies; what was dug and what is stated. */
function tellOtherDepths(
  group: DugGroup,
  fitted: Fitted | null,
  cases: readonly (Case | undefined)[],
  notebook: Notebook,
): void {
  const plan = cases[group.caseIndex];
  const [first] = cases;
  if (plan === undefined || first === undefined) return;
  const field = group.field.replace(".date", "");
  const layer =
    fitted?.kind === "passage" ? plan.layers.find(({ name }) => name === fitted.layer) : undefined;
  const { turnedAtMm = [] } = group;
  if (layer !== undefined && turnedAtMm.length > 0) {
    const { depthMm } = middleDepth({ depthsMm: turnedAtMm });
    if (depthMm < layer.topMm - turnedAwayMm || depthMm > layer.bottomMm)
      notebook.notes.push(
        `${field}: the roots of "${plan.name}" turned at ${sayBoth(depthMm, "depth")}, but "${layer.name}", which is fitted to them, lies from ${sayBoth(layer.topMm, "depth")} to ${sayBoth(layer.bottomMm, "depth")}: name the layer that turned them as evidence.denseLayer, or check its depth.`,
      );
  }
  if (plan.rooting.kind === "relative" && statedDepthMm(plan.rooting, first.rooting) === null) {
    notebook.notes.push(
      `${field}: what was dug of "${plan.name}" goes into no run, as its roots are told from those of the first case (rootingDepth): leave out that rootingDepth, and the dig decides.`,
    );
    return;
  }
  const statedMm = statedDepthMm(plan.rooting, first.rooting);
  const { depthMm, errorMm } = middleDepth(group);
  if (statedMm === null || depthMm + 2 * errorMm >= statedMm) return;
  const isStopped = mostWent(group) === "stopped";
  const isHeld = layer !== undefined && depthMm <= layer.bottomMm;
  if (!isStopped && !isHeld) return;
  const dug = `${field}: the middle plant of "${plan.name}" has roots at ${sayBoth(depthMm, "depth")}`;
  const stated = `but its rootingDepth says ${sayBoth(statedMm, "depth")}`;
  notebook.notes.push(
    isStopped
      ? `${dug}, where they stopped, ${stated}. The two contradict each other; where the dig decides, the roots stop where they were dug: leave out that rootingDepth.`
      : `${dug}, in or above "${layer!.name}", ${stated}. Both hold only if the roots went on after that day: leave out that rootingDepth, or make it the depth dug.`,
  );
}

/** Roots dug below the depth stated for them: the file says two things, and no fit can meet both. */
function tellDugBelowStated(
  field: string,
  depthsMm: readonly number[],
  plan: Case | undefined,
  first: Case | undefined,
  notebook: Notebook,
): void {
  if (plan === undefined || first === undefined) return;
  const statedMm = statedDepthMm(plan.rooting, first.rooting);
  const { depthMm } = middleDepth({ depthsMm });
  if (statedMm === null || depthMm <= statedMm) return;
  notebook.notes.push(
    `${field}: the middle plant of "${plan.name}" has roots at ${sayBoth(depthMm, "depth")}, below the ${sayBoth(statedMm, "depth")} stated for them: leave out that rootingDepth, or make it deeper.`,
  );
}

/** Other years are slips of the pen. */
const firstYearDug = 1900;
const lastYearDug = 2100;

/** Plants in pairs: as many of each case on each day. */
function refuseUnpaired(groups: readonly DugGroup[], notebook: Notebook): void {
  groups.forEach(({ day, depthsMm, caseIndex }, g) => {
    const other = groups.findIndex(
      (one, o) =>
        o < g && one.day === day && one.caseIndex !== caseIndex && one.depthsMm.length !== depthsMm.length,
    );
    if (other < 0) return;
    const wanted = groups[other]!.depthsMm.length;
    complain(
      notebook,
      `evidence.rootDepths[${g}].depths`,
      `${wanted} ${wanted === 1 ? "depth" : "depths"}, one for each plant of evidence.rootDepths[${other}], as plants are paired`,
      `${depthsMm.length}`,
      "give each plant its neighbor, or leave out plantsPaired",
    );
  });
}

function fittedOf(evidence: EvidencePart, cases: readonly Case[], notebook: Notebook): Fitted | null {
  if ((evidence.fit ?? digShape.fit.byDefault.value) === "penetration limit") {
    const fitted: Fitted = { kind: "penetration limit" };
    if (cases.length > 0 && !cases.some((plan) => hasFitted(plan.layers, fitted))) {
      complain(
        notebook,
        "evidence.fit",
        '"passage", as no layer has a penetrometer reading',
        '"penetration limit"',
        "give a layer its penetrationResistance, or leave it out",
      );
    }
    return fitted;
  }
  const names = [...new Set(cases.flatMap(({ layers }) => layers.map(({ name }) => name)))];
  const { denseLayer } = evidence;
  if (denseLayer !== undefined) {
    if (cases.length > 0 && !names.includes(denseLayer)) {
      const near = nearestName(denseLayer, names);
      complain(
        notebook,
        "evidence.denseLayer",
        `the name of a layer: ${names.map((name) => `"${name}"`).join(", ")}`,
        `"${denseLayer}"`,
        near === null ? "use one of these names" : `did you mean "${near}"?`,
      );
    }
    return { kind: "passage", layer: denseLayer };
  }
  const slowest = cases
    .flatMap(({ layers }) => layers)
    .reduce<{ name: string; passage: number } | null>((best, layer) => {
      const passage = passageOf(layer, 0);
      return best === null || passage < best.passage ? { name: layer.name, passage } : best;
    }, null);
  if (slowest === null) return null;
  if (slowest.passage > freePassage) {
    notebook.notes.push(
      "No layer slows roots, so nothing is fitted to the dig: name the layer that does as evidence.denseLayer.",
    );
    return null;
  }
  notebook.defaults.push({
    field: "evidence.denseLayer",
    value: `"${slowest.name}"`,
    why: "it slows roots most",
  });
  return { kind: "passage", layer: slowest.name };
}
