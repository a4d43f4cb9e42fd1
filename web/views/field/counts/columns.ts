import { centres } from "../../../../src/evidence/counts/countsSunflower.ts";
import { cropNamed } from "../../../../src/crop/crops.ts";
import { kinds, type Units } from "../../../../src/quantity/kinds.ts";
import { tableOfRows, type Column as SheetColumn, type Table } from "../../../forms/edits/cells.ts";
import type { Json, JsonGroup } from "../../../state/json.ts";

/** What is counted of each crop, and in which ways. */

export type Way = "rows" | "kernels" | "spikelets" | "heads" | "diameters";

const wayWords: Readonly<Record<Way, string>> = {
  rows: "Kernel rows, and kernels along a row",
  kernels: "Kernels of a head",
  spikelets: "Spikelets of a head",
  heads: "Heads alone",
  diameters: "Across the heads",
};

export function wordOf(way: Way, cropName: string): string {
  return way === "kernels" && cropNamed(cropName)?.name === "corn" ? "Kernels of an ear" : wayWords[way];
}

export interface Column extends Omit<SheetColumn, "unit"> {
  /** Bare numbers take the unit of this kind. */
  readonly quantity?: "depth" | "share";
}

const kernelsPerHead: Column = { key: "kernelsPerHead", word: "Kernels, head by head", kind: "numbers" };

/** Columns of each way, the heads themselves left aside. */
const waysColumns: Readonly<Record<Way, readonly Column[]>> = {
  rows: [
    { key: "kernelRows", word: "Kernel rows, ear by ear", kind: "numbers", hint: "16, 14, 16" },
    { key: "kernelsPerRow", word: "Kernels along a row", kind: "numbers", hint: "32, 35, 30" },
  ],
  kernels: [kernelsPerHead],
  spikelets: [
    { key: "spikeletsPerHead", word: "Spikelets, head by head", kind: "numbers" },
    { key: "kernelsPerSpikelet", word: "Kernels of a spikelet", kind: "number" },
  ],
  heads: [],
  diameters: [
    { key: "headDiameters", word: "Across the heads", kind: "quantities", quantity: "depth" },
    { key: "filled", word: "Filled seeds", quantity: "share" },
    { key: "centre", word: "Middle of the head", kind: "word", choices: centres, none: "as all" },
  ],
};

/** Keys of a spot that each way writes. */
export function keysOfWay(way: Way): string[] {
  return waysColumns[way].map(({ key }) => key);
}

/** Keys of a group that tell what kernels weigh, way by way: those of another way are refused. */
export const weightKeys: Readonly<Record<Way, readonly string[]>> = {
  rows: ["kernelWeight", "kernelsPerBushel", "kernelsPerPound", "season"],
  kernels: ["kernelWeight", "kernelsPerBushel", "kernelsPerPound", "season"],
  spikelets: ["kernelWeight", "kernelsPerBushel", "kernelsPerPound", "season"],
  heads: ["grainPerHead"],
  diameters: ["seedSize"],
};

/** The usual way first. */
export function waysOf(cropName: string): readonly Way[] {
  switch (cropNamed(cropName)?.name) {
    case "corn":
      return ["rows", "kernels"];
    case "sunflower":
      return ["diameters", "kernels"];
    case "winter wheat":
    case "spring wheat":
    case "barley":
      return ["kernels", "spikelets", "heads"];
    default:
      return ["kernels", "heads"];
  }
}

/** The way in which spots were counted; null where only heads are written, or nothing. */
export function wayOf(spots: readonly JsonGroup[]): Way | null {
  const ways: readonly Way[] = ["rows", "diameters", "spikelets", "kernels"];
  return ways.find((way) => keysOfWay(way).some((key) => isWritten(spots, key))) ?? null;
}

const ground: readonly Column[] = [
  { key: "rowLength", word: "Length of row", hint: "17 ft 5 in" },
  { key: "rows", word: "Rows", kind: "number" },
  { key: "area", word: "Area", hint: "1 m^2" },
];

/**
 * The columns of a table of spots.
 *
 * @param ownGround whether each spot has its own length of row
 */
export function columnsOf(
  cropName: string,
  way: Way,
  spots: readonly JsonGroup[],
  ownGround: boolean,
): readonly Column[] {
  const corn = cropNamed(cropName)?.name === "corn";
  const ears = isWritten(spots, "ears") || (corn && !isWritten(spots, "heads"));
  const second = way === "rows" || way === "kernels";
  const seconds: readonly Column[] = [
    { key: "secondEars", word: "Second ears", kind: "number" },
    { key: "secondEarKernels", word: "Kernels of second ears", kind: "numbers" },
    { key: "secondEarShare", word: "Second ear, share of a first", quantity: "share" },
  ];
  return [
    ears
      ? { key: "ears", word: "Ears", kind: "number", askedAs: "heads" }
      : { key: "heads", word: "Heads", kind: "number" },
    ...waysColumns[way].map((one) =>
      one === kernelsPerHead && ears ? { ...one, word: "Kernels, ear by ear" } : one,
    ),
    ...seconds.filter(
      ({ key }) => isWritten(spots, key) || (second && corn && ears && key !== "secondEarShare"),
    ),
    ...ground.filter(({ key }) => isWritten(spots, key) || (ownGround && key === "rowLength")),
  ];
}

/**
 * Spots of one case, a row each.
 *
 * @param ofAll what all spots of the case have at a key, where one says nothing of its own
 */
export function spotsTable(
  path: string,
  columns: readonly Column[],
  units: Units,
  ofAll: (key: string) => Json | undefined,
): Table {
  return tableOfRows(
    `${path}.spots`,
    columns.map(({ quantity, hint = "", ...column }) => {
      const all = ["filled", "rowLength", "rows", "area"].includes(column.key)
        ? ofAll(column.key)
        : undefined;
      return {
        ...column,
        unit: quantity === undefined ? "" : kinds[quantity][units].unit,
        hint: typeof all === "string" || typeof all === "number" ? String(all) : hint,
      };
    }),
  );
}

export function isWritten(spots: readonly JsonGroup[], key: string): boolean {
  return spots.some((spot) => spot[key] !== undefined);
}

/**
 * How several ears or heads of a spot are written, with numbers such as are counted there; empty where one number is enough.
 * @example severalSaid(columnsOf("corn", "rows", [], false)) // "Several ears of a spot stand in one cell: 16, 14, 16."
 */
export function severalSaid(columns: readonly Column[]): string {
  const counted = columns.find(({ kind }) => kind === "numbers" || kind === "quantities");
  if (counted === undefined) return "";
  const what = columns.some(({ key }) => key === "ears") ? "ears" : "heads";
  const usual = {
    kernelsPerHead: what === "ears" ? "520, 480, 505" : "980, 1110, 870",
    spikeletsPerHead: "14, 12, 13",
  };
  const example = counted.hint ?? usual[counted.key as keyof typeof usual] ?? "6, 5.5, 7";
  return `Several ${what} of a spot stand in one cell: ${example}.`;
}
