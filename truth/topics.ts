/** The scoreboard's topics, in the order of the table. */
import { existsSync } from "node:fs";
import { judge, type Topic } from "./row.ts";
import type { JudgedTopic } from "./table.ts";
import { fallow } from "./topics/fallow.ts";
import { evaporation } from "./topics/evaporation.ts";
import { grass } from "./topics/grass.ts";
import { losses } from "./topics/losses.ts";

export const topics: readonly Topic[] = [fallow, losses, evaporation, grass];

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
