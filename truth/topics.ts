/** The scoreboard's topics, in the order of the table. */
import { existsSync } from "node:fs";
import { judge, type Topic } from "./row.ts";
import type { JudgedTopic } from "./table.ts";
import { drying } from "./topics/drying.ts";
import { evaporation } from "./topics/evaporation.ts";
import { fallow } from "./topics/fallow.ts";
import { grass } from "./topics/grass.ts";
import { losses } from "./topics/losses.ts";
import { moistDepth } from "./topics/moistDepth.ts";
import { pans } from "./topics/pans.ts";
import { rain } from "./topics/rain.ts";
import { rootFront } from "./topics/rootFront.ts";
import { rotations } from "./topics/rotations.ts";
import { waterAtSowing } from "./topics/waterAtSowing.ts";
import { yields } from "./topics/yields.ts";

export const topics: readonly Topic[] = [
  fallow,
  waterAtSowing,
  rotations,
  losses,
  evaporation,
  drying,
  rootFront,
  pans,
  grass,
  moistDepth,
  yields,
  rain,
];

const folder = "../shared/data";

/** The folder of open data; null where it is absent. */
export const openDataFolder = (): string | null => (existsSync(folder) ? folder : null);

export async function judgeTopic(
  { file, isFallow, ours }: Topic,
  openData: string | null,
): Promise<JudgedTopic> {
  const values = await ours(openData);
  return { title: file.title, isFallow, judged: file.rows.map((row) => judge(row, values)) };
}
