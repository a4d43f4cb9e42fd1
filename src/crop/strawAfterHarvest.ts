import table from "../../data-reference/straw-after-harvest.json" with { type: "json" };
import { cropNamed } from "./crops.ts";

/** What a crop leaves on the ground at harvest, cut as usual and not tilled. Numbers: data-reference/straw-after-harvest.json. */
export interface StrawLeft {
  /** As much wheat straw as covers the same ground, t/ha. */
  readonly tPerHa: number;
  readonly why: string;
}

/** @param name of a crop of ours, or of the user's own */
export function strawLeftBy(name: string): StrawLeft {
  const known = cropNamed(name)?.name ?? name;
  const found = table.crops.find(({ crop }) => crop === known);
  if (found === undefined)
    return { tPerHa: table.other.strawTPerHaLikeWheat, why: `${table.other.why} (${table.other.mark})` };
  const { grainTPerHa, strawPerGrain, likeWheat, why, mark } = found;
  return { tPerHa: grainTPerHa * strawPerGrain * likeWheat, why: `${why} (${mark})` };
}
