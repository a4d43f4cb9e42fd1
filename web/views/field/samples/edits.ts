import { kinds, type Units } from "../../../../src/quantity/kinds.ts";
import { tableOfRows, type Column, type Table } from "../../../forms/edits/cells.ts";
import type { Json, JsonGroup } from "../../../state/json.ts";
import { getAt, groupsAt, type Changes } from "../../../state/path.ts";

/** Changes to cores and penetrometer readings: what to write where. A list emptied to the last takes its key along. */

export const startPath = "soil.startingWater";
export const logPath = "soil.penetrometer";
export const readingsPath = `${logPath}.readings`;

export function coresPath(layer: number): string {
  return `soil.layers[${layer}].cores`;
}

/** One more core, in the ring of the last one of its layer or, failing that, of any layer. */
export function addCore(scenario: Json, layer: number, layers: number): Changes {
  const own = groupsAt(scenario, coresPath(layer));
  const all = Array.from({ length: layers }, (_, l) => groupsAt(scenario, coresPath(l))).flat();
  const { volume, diameter, length } = own.at(-1) ?? all.at(-1) ?? {};
  const ring = Object.entries({ volume, diameter, length }).filter(([, value]) => value !== undefined);
  return [[coresPath(layer), [...own, { ...(Object.fromEntries(ring) as JsonGroup), dryMass: "" }]]];
}

/** The last core of all takes the water "from cores" along: there would be nothing to take it from. */
export function removeCore(scenario: Json, layer: number, core: number, layers: number): Changes {
  const path = coresPath(layer);
  const left = groupsAt(scenario, path).toSpliced(core, 1);
  if (left.length > 0) return [[path, left]];
  const isLast = Array.from({ length: layers }, (_, l) => l).every(
    (l) => l === layer || groupsAt(scenario, coresPath(l)).length === 0,
  );
  const startsThere = isLast && getAt(scenario, `${startPath}.from`) === "cores";
  return [[path, undefined], ...(startsThere ? ([[startPath, undefined]] as const) : [])];
}

const newReading = { depth: "", resistance: "" };

export function addReading(scenario: Json): Changes {
  return [[readingsPath, [...groupsAt(scenario, readingsPath), newReading]]];
}

export function removeReading(scenario: Json, index: number): Changes {
  const left = groupsAt(scenario, readingsPath).toSpliced(index, 1);
  return left.length > 0 ? [[readingsPath, left]] : [[logPath, undefined]];
}

export type Ring = "volume" | "ring";

/** Cores of a layer, a row each; their volume is told by itself or by the ring. */
export function coresTable(layer: number, ring: Ring, units: Units): Table {
  const unit = kinds.sampleMass[units].unit;
  const length = kinds.depth[units].unit;
  const told =
    ring === "volume"
      ? [{ key: "volume", word: "Volume", unit: kinds.sampleVolume[units].unit }]
      : [
          { key: "diameter", word: "Diameter", unit: length },
          { key: "length", word: "Length", unit: length },
        ];
  const columns: readonly Column[] = [
    { key: "wetMass", word: "Wet", unit },
    { key: "dryMass", word: "Dry", unit, empty: "" },
    ...told,
    { key: "stoneMass", word: "Stones", unit },
  ];
  return tableOfRows(coresPath(layer), columns, () => ({ dryMass: "" }));
}

export function readingsTable(units: Units): Table {
  const columns: readonly Column[] = [
    { key: "depth", word: "Depth", unit: kinds.depth[units].unit, empty: "" },
    { key: "resistance", word: "Dial", unit: kinds.resistance[units].unit, empty: "" },
  ];
  return tableOfRows(readingsPath, columns, () => newReading);
}
