/** Prints the scoreboard: what was published or measured beside what the model gives. Progress goes to stderr. */
import { tableOf, type JudgedTopic } from "../truth/table.ts";
import { judgeTopic, openDataFolder, topics } from "../truth/topics.ts";

const openData = openDataFolder();
const judged: JudgedTopic[] = [];
for (const topic of topics) {
  process.stderr.write(`${judged.length + 1} of ${topics.length}: ${topic.file.title}\n`);
  judged.push(await judgeTopic(topic, openData));
}
process.stdout.write(`${tableOf(judged)}\n`);
