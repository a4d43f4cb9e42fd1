import { prepare } from "../../src/answer/runs/ensemble.ts";
import { newMemory } from "../../src/answer/runs/answerCache.ts";
import { newReadings } from "../../src/scenario/read/recordCache.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import type { Attachments } from "../state/scenarioStore.ts";
import { runAt, startWork, type GoodWork } from "./job.ts";
import { packRuns } from "./packedRuns.ts";
import { readAttachment } from "./readAttachment.ts";
import type { FromHelper, ToHelper } from "./secondWorkerProtocol.ts";

/** Results are handed over after this long, ms: a shorter time than the first worker listens in. */
const handOverMs = 4;

/**
 * A second worker that takes runs off the first one's hands: the first counts up from run 0, the helper down from the last,
 * until they meet. Both work out the same from the same scenario, so it does not matter who did a run.
 */
export function makeHelper(
  say: (message: FromHelper, transfer: ArrayBuffer[]) => void,
  pause: () => Promise<void>,
): (message: ToHelper) => void {
  const memory = newMemory();
  const readings = newReadings();
  let attachments: Attachments = {};
  let latest = 0;
  let work: GoodWork | null = null;

  async function help(
    { id, scenario, place, generated }: Extract<ToHelper, { kind: "help" }>,
    token: number,
  ): Promise<void> {
    if (generated !== null) memory.generated = generated;
    if (work?.id !== id) {
      const readText = readAttachment(attachments);
      const understood = await resolveScenario(scenario, { fileName: "scenario", readText, readings });
      if (token !== latest) return;
      work = startWork(id, prepare(understood, memory), "us", { run: null, totalIndex: null }, 0);
    }
    const { ensemble, traces, order } = work;
    let to = ensemble.runs;
    let breath = performance.now();
    for (let run = to - 1; run >= 0; run--) {
      runAt(work, place, run);
      if (run > 0 && performance.now() - breath < handOverMs) continue;
      const runs = packRuns(ensemble, place === 0 ? traces : null, order[place]!, run, to);
      say({ id, place, runs }, [runs.numbers.buffer as ArrayBuffer, runs.points.buffer as ArrayBuffer]);
      to = run;
      await pause();
      if (token !== latest) return;
      breath = performance.now();
    }
  }

  return (message) => {
    latest += 1;
    if (message.kind === "files") attachments = message.attachments;
    // What goes wrong here goes wrong in the first worker too, which tells the page.
    if (message.kind === "help") void help(message, latest).catch(() => undefined);
  };
}
