import type { RowsThatChange } from "../../../answer/runs/rowsThatChange.ts";
import { sayNumber } from "../../../quantity/index.ts";

/**
 * Which rows change, and which case each row is before and after.
 *
 * `2 of 8 rows change: wheel track from "turned" to "straight"; other stays "straight". All amounts are of the whole field.`
 */
export function rowsSaid({ share, rowsInAll, positions }: RowsThatChange): string {
  const changing = positions.filter(({ before, after }) => before !== after);
  const staying = positions.filter(({ before, after }) => before === after);
  // A position that is called as its case is named once.
  const stays = staying.map(({ name, before }) => `${name} stays${name === before ? "" : ` "${before}"`}`);
  if (changing.length === 0)
    return `No row of the field changes between these two, so nothing is earned: ${stays.join("; ")}.`;
  const changes = changing.map(({ name, before, after }) => `${name} from "${before}" to "${after}"`);
  const many =
    rowsInAll === null
      ? `${sayNumber(100 * share, 1)} % of the rows change`
      : `${sayNumber(share * rowsInAll, 1)} of ${rowsInAll} rows change`;
  return `${many}: ${[...changes, ...stays].join("; ")}. Only they earn; amounts, costs too, are for the whole field.`;
}
