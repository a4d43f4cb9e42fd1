import { prepare } from "../../src/answer/runs/prepare.ts";
import { newAnswerCache } from "../../src/answer/runs/answerCache.ts";
import { newRecordCache } from "../../src/scenario/read/recordCache.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import type { Attachments } from "../state/scenarioStore.ts";
import { runAt, startJob, type Job } from "./job.ts";
import { packRuns } from "./packedRuns.ts";
import { readAttachment } from "./readAttachment.ts";
import type { FromSecondWorker, ToSecondWorker } from "./secondWorkerProtocol.ts";

/** Results are handed over after this long, ms: a shorter time than the first worker listens in. */
const handOverMs = 4;

/**
 * A second worker that takes runs off the first one's hands: the first counts up from run 0, the second down from the last,
 * until they meet. Both work out the same from the same scenario, so it does not matter who did a run.
 */
export function makeSecondWorker(
  say: (message: FromSecondWorker, transfer: ArrayBuffer[]) => void,
  pause: () => Promise<void>,
): (message: ToSecondWorker) => void {
  const cache = newAnswerCache();
  const recordCache = newRecordCache();
  let attachments: Attachments = {};
  let latest = 0;
  let job: Job | null = null;

  async function help(
    { id, scenario, place, generated }: Extract<ToSecondWorker, { kind: "help" }>,
    token: number,
  ): Promise<void> {
    if (generated !== null) cache.generated = generated;
    if (job?.id !== id) {
      const readText = readAttachment(attachments);
      const resolved = await resolveScenario(scenario, { fileName: "scenario", readText, recordCache });
      if (token !== latest) return;
      job = startJob(id, prepare(resolved, cache), "us", { run: null, totalIndex: null }, 0);
    }
    const { ensemble, traces, order } = job;
    let to = ensemble.runs;
    let breath = performance.now();
    for (let run = to - 1; run >= 0; run--) {
      runAt(job, place, run);
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
