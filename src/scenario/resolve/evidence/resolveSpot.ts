import type { CountedSpot } from "../../../evidence/counts/counts.ts";
import { countedAreaM2, thousandthLengthMm } from "../../../evidence/counts/countsArea.ts";
import { kernelsOfMeanHead, oddKernelRows } from "../../../evidence/counts/countsKernels.ts";
import { tabledHeadsMm } from "../../../evidence/counts/countsSunflower.ts";
import { meanOf } from "../../../statistics/spread.ts";
import { alternatives, isSaidTwice } from "../../fields/facts/alternatives.ts";
import { groundShape, headShape, type CountsPart, type SpotPart } from "../../fields/countsFields.ts";
import { complain, type Notebook } from "../notebook.ts";

export type SpotKind = CountedSpot["per"]["kind"];

/** One spot as plain values; null where something is wrong with it, which has been written down. */
export function resolveSpot(
  spot: SpotPart,
  group: CountsPart,
  field: string,
  notebook: Notebook,
): CountedSpot | null {
  const areaM2 = areaOf(spot, group, field, notebook);
  const heads = headsOf(spot, field, notebook);
  const per = heads === null ? null : perHead(spot, group, heads, field, notebook);
  return areaM2 === null || heads === null || per === null ? null : { areaM2, heads, per };
}

function areaOf(spot: SpotPart, group: CountsPart, field: string, notebook: Notebook): number | null {
  if (isSaidTwice(spot, "area", alternatives.countedGround)) {
    complain(
      notebook,
      `${field}.area`,
      "an area, or length and number of rows",
      "both",
      "leave one of them out",
    );
    return null;
  }
  if (spot.area !== undefined) return spot.area;
  const byRow = spot.rowLength !== undefined || spot.rows !== undefined;
  if (!byRow && group.area !== undefined) {
    if (!isSaidTwice(group, "area", alternatives.countedGround)) return group.area;
    complain(
      notebook,
      `${field}.area`,
      "an area, or length and number of rows",
      "both for all spots",
      "leave one of them out",
    );
    return null;
  }
  const { rowWidth } = group;
  if (rowWidth === undefined) {
    complain(
      notebook,
      `${field}.area`,
      'the ground counted: rowWidth of these counts, such as "30 in", or an area',
      undefined,
      "give one of them",
    );
    return null;
  }
  const rows = spot.rows ?? group.rows ?? groundShape.rows.byDefault.value;
  return countedAreaM2(
    spot.rowLength ?? group.rowLength ?? thousandthLengthMm(rowWidth, rows),
    rowWidth,
    rows,
  );
}

function headsOf({ ears, heads }: SpotPart, field: string, notebook: Notebook): number | null {
  if (ears !== undefined && heads !== undefined) {
    complain(notebook, `${field}.heads`, "ears or heads", "both", "leave one of them out");
    return null;
  }
  const count = ears ?? heads;
  if (count !== undefined) return count;
  complain(
    notebook,
    `${field}.heads`,
    "how many heads (or ears) were counted",
    undefined,
    "give heads or ears",
  );
  return null;
}

function perHead(
  spot: SpotPart,
  group: CountsPart,
  heads: number,
  field: string,
  notebook: Notebook,
): CountedSpot["per"] | null {
  const { headDiameters, filled = group.filled, centre = group.centre } = spot;
  if (headDiameters !== undefined) {
    if (filled === undefined) {
      complain(
        notebook,
        `${field}.filled`,
        'the share of seeds that are filled, such as "90 %"',
        undefined,
        "give it",
      );
      return null;
    }
    const diameterMm = meanOf(headDiameters);
    if (diameterMm < tabledHeadsMm.from || diameterMm > tabledHeadsMm.to)
      notebook.notes.push(
        `${field}.headDiameters: the published table goes from 4.5 to 10 in; these heads are outside it.`,
      );
    return {
      kind: "sunflower",
      heads: { diameterMm, filledShare: filled, centre: centre ?? headShape.centre.byDefault.value },
    };
  }
  const kernelsPerHead = kernelsOf(spot, field, notebook);
  if (kernelsPerHead === "wrong") return null;
  if (kernelsPerHead === null && heads > 0)
    return refuseSecondEars(spot, field, notebook) ? null : { kind: "heads" };
  const secondEarKernels = secondKernels(spot, kernelsPerHead ?? 0, field, notebook);
  if (secondEarKernels === null) return null;
  const oddRows = sayOddRows(spot.kernelRows ?? [], field, notebook);
  return { kind: "kernels", kernelsPerHead: kernelsPerHead ?? 0, secondEarKernels, oddRows };
}

/** Kernels of a mean first ear or head; null where none are counted. */
function kernelsOf(spot: SpotPart, field: string, notebook: Notebook): number | null | "wrong" {
  const { kernelRows, kernelsPerRow, kernelsPerHead, spikeletsPerHead, kernelsPerSpikelet } = spot;
  const byRows = kernelRows !== undefined || kernelsPerRow !== undefined;
  const bySpikelets = spikeletsPerHead !== undefined || kernelsPerSpikelet !== undefined;
  if (Number(byRows) + Number(bySpikelets) + Number(kernelsPerHead !== undefined) > 1) {
    complain(
      notebook,
      field,
      "kernels counted one way: kernelsPerHead, or kernelRows and kernelsPerRow, or spikeletsPerHead and kernelsPerSpikelet",
      "more than one",
      "leave the others out",
    );
    return "wrong";
  }
  if (kernelsPerHead !== undefined) return meanOf(kernelsPerHead);
  const lacks = byRows
    ? kernelRows === undefined
      ? "kernelRows"
      : kernelsPerRow === undefined
        ? "kernelsPerRow"
        : null
    : bySpikelets
      ? spikeletsPerHead === undefined
        ? "spikeletsPerHead"
        : kernelsPerSpikelet === undefined
          ? "kernelsPerSpikelet"
          : null
      : null;
  if (lacks !== null) {
    complain(
      notebook,
      `${field}.${lacks}`,
      byRows ? "kernelRows and kernelsPerRow together" : "spikeletsPerHead and kernelsPerSpikelet together",
      undefined,
      "give it as well",
    );
    return "wrong";
  }
  if (byRows) return kernelsOfMeanHead(kernelRows!, kernelsPerRow!);
  return bySpikelets ? meanOf(spikeletsPerHead!) * kernelsPerSpikelet! : null;
}

function secondKernels(
  { secondEars, secondEarKernels, secondEarShare }: SpotPart,
  firstEarKernels: number,
  field: string,
  notebook: Notebook,
): number | null {
  if (secondEars === undefined) {
    if (secondEarKernels === undefined && secondEarShare === undefined) return 0;
    complain(notebook, `${field}.secondEars`, "how many second ears there are", undefined, "give it");
    return null;
  }
  if (secondEars === 0) return 0;
  if ((secondEarKernels === undefined) === (secondEarShare === undefined)) {
    complain(
      notebook,
      `${field}.secondEarKernels`,
      "kernels of second ears, or secondEarShare of a first ear's",
      secondEarKernels === undefined ? undefined : "both",
      secondEarKernels === undefined ? "give one of them" : "leave one of them out",
    );
    return null;
  }
  return (
    secondEars *
    (secondEarKernels === undefined ? secondEarShare! * firstEarKernels : meanOf(secondEarKernels))
  );
}

/** Where kernels are not counted, second ears have nothing to go by. */
function refuseSecondEars({ secondEars }: SpotPart, field: string, notebook: Notebook): boolean {
  if (secondEars === undefined || secondEars === 0) return false;
  complain(
    notebook,
    `${field}.secondEars`,
    "kernels counted as well",
    secondEars,
    "count kernels, or add them to heads",
  );
  return true;
}

function sayOddRows(kernelRows: readonly number[], field: string, notebook: Notebook): number {
  const odd = oddKernelRows(kernelRows);
  if (odd > 0) {
    const list = kernelRows.filter((rows) => rows % 2 === 1).join(", ");
    notebook.notes.push(
      `${field}.kernelRows: ${list} ${odd === 1 ? "is" : "are"} odd; kernel rows on an ear come in pairs, so count again (common practice, no source).`,
    );
  }
  return odd;
}
