import { prepare } from "../../src/answer/runs/prepare.ts";
import { makeRunBuffers } from "../../src/answer/runs/run.ts";
import { newAnswerCache, type Generated } from "../../src/answer/runs/answerCache.ts";
import { InputError } from "../../src/problem.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import type { KeptScenario } from "../../src/report/page/embedded.ts";
import { newRecordCache } from "../../src/scenario/read/recordCache.ts";
import { resolveScenario } from "../../src/scenario/resolve/resolve.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import { filesUsed } from "../state/filesNamed.ts";
import type { Json } from "../state/json.ts";
import type { Attachments } from "../state/scenarioStore.ts";
import {
  allRuns,
  answeredBy,
  answerOf,
  chosenRunOf,
  chosenTotalOf,
  hasEvidence,
  runNext,
  runsDone,
  seasonOf,
  stageOf,
  startJob,
  takeFromSecondWorker,
  type Job,
} from "./job.ts";
import type { FromSecondWorker, ToSecondWorker } from "./secondWorkerProtocol.ts";
import { firstAnswer } from "./firstAnswer.ts";
import { keptText } from "./keptText.ts";
import type { FromEngine, ShownRun, ToEngine } from "./protocol.ts";
import { readAttachment } from "./readAttachment.ts";
import { buffersOf } from "./seasonShown.ts";
import type { YearsJob } from "./shown/years.ts";
import { outlookShown } from "./shown/outlookShown.ts";
import { resolvedOf } from "./resolved.ts";

/** Runs go on for this long before messages are listened to again, ms. */
const chunkMs = 8;
/** The same for years in a row: one crop with its fallow takes a few of these. */
const yearsChunkMs = 4;
/** The same for what is not waited for: a slider may be moved any time. */
const fanChunkMs = 3;
const progressEveryMs = 100;
/** The page has both cores to itself for so long when it is told a season, ms. */
const aloneMs = 8;
/** Help is called in when it has drawn the season, but not later than this, ms: it may not be in sight. */
const drawingMs = 50;
/** What was measured is worked out when nothing has been asked for this long, ms. */
const quietMs = 120;
/** The fan is told anew not more often than this, ms. */
const fanEveryMs = 150;

type Say = (message: FromEngine, transfer?: ArrayBuffer[]) => void;
type AskedToCompute = Extract<ToEngine, { kind: "compute" }>;
type AskedForText = Extract<ToEngine, { kind: "text" }>;

export interface Engine {
  readonly onMessage: (message: ToEngine) => void;
  /** From now on a second worker takes part of the runs. */
  readonly getHelp: (post: (message: ToSecondWorker) => void) => void;
  readonly onSecondWorker: (message: FromSecondWorker) => void;
}

/**
 * The engine behind the page: takes what is asked, says what it finds. Newer work ends older: between chunks of runs it lets
 * messages in, and stops when a later one has come. When that one is refused, it goes on with the last that was good.
 *
 * @param pause lets messages in
 */
export function makeEngine(say: Say, pause: () => Promise<void>): Engine {
  const cache = newAnswerCache();
  /** Of years in a row, whose weather is longer. */
  const yearsCache = newAnswerCache();
  /** One for all work: its arrays are large. */
  const seasonBuffers = makeRunBuffers();
  const recordCache = newRecordCache();
  let secondWorker: ((message: ToSecondWorker) => void) | null = null;
  let handed: Generated | null = null;
  let attachments: Attachments = {};
  let latest = 0;
  /** Ends the wait for a season to be drawn. */
  let endEdit: () => void = () => undefined;
  let good: Job | null = null;
  /** What the good work answers, as it was written. */
  let goodKept: KeptScenario = { scenario: {}, attachments: {} };
  /** Texts asked for before the answer they are made of was there. */
  let waitingTexts: AskedForText[] = [];

  function onMessage(message: ToEngine): void {
    switch (message.kind) {
      case "files":
        attachments = message.attachments;
        secondWorker?.(message);
        return;
      case "drawn":
        if (message.id === latest) endEdit();
        return;
      case "compute":
        latest = message.id;
        endEdit();
        void compute(message).catch((error: unknown) => sayError(message.id, error));
        return;
      case "units":
        if (good === null) return;
        good.units = message.units;
        saySeason(good);
        if (stageOf(good) !== "none") sayAnswer(good);
        sayFan(good);
        return;
      case "season":
        if (good === null) return;
        good.shown = message.shown;
        saySeason(good);
        return;
      case "outlook":
        if (good !== null && message.id === latest) sayOutlook(good);
        return;
      case "text":
        waitingTexts.push(message);
        if (good !== null) sayTexts(good);
    }
  }

  /** Years generated since they were last handed to the second worker, which need not generate them again. */
  function notYetHanded(): Generated | null {
    const { generated } = cache;
    if (generated === handed) return null;
    handed = generated;
    return generated;
  }

  function seasonDrawn(): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, drawingMs);
      endEdit = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }

  async function compute({ id, scenario: written, units, shown }: AskedToCompute): Promise<void> {
    try {
      const kept: KeptScenario = { scenario: written, attachments: filesUsed(written, attachments) };
      const scenario = await resolveScenario(written, {
        fileName: "scenario",
        readText: readAttachment(attachments),
        recordCache,
      });
      if (id !== latest) return;
      const typicalRun = good?.typicalRun ?? 0;
      secondWorker?.({ kind: "stop" });
      say({ kind: "resolved", id, resolved: resolvedOf(scenario) });
      if (good === null) sayFirst(id, scenario, shown, units);
      const preparation = prepare(scenario, cache);
      good = startJob(id, preparation, units, shown, typicalRun, seasonBuffers, yearsCache);
      goodKept = kept;
      saySeason(good);
      const begun = good;
      const drawn = seasonDrawn().then(() => {
        if (id === latest && begun.place === 0)
          secondWorker?.({ kind: "help", id, scenario: written, place: 0, generated: notYetHanded() });
      });
      await Promise.race([drawn, quiet(aloneMs)]);
      if (id !== latest) return;
    } catch (error) {
      if (id !== latest) return;
      sayError(id, error);
    }
    if (good !== null) await goOn(good, id, written);
  }

  function sayFirst(id: number, scenario: Scenario, shown: ShownRun, units: Units): void {
    const first = firstAnswer(scenario, shown, units, cache);
    if (first === null) return;
    say({ kind: "season", id, season: first.season }, buffersOf(first.season));
    say({ kind: "answer", id, answer: first.answer });
  }

  /** Runs what is left to run, until newer work comes. */
  async function goOn(job: Job, asked: number, written: Json): Promise<void> {
    const isWanted = (): boolean => asked === latest;
    await pause();
    let breath = performance.now();
    let told = breath;
    while (isWanted() && stageOf(job) !== "whole") {
      if (runNext(job)) {
        const more = stageOf(job) !== "whole" && asked === job.id;
        secondWorker?.(
          more
            ? { kind: "help", id: job.id, scenario: written, place: job.place, generated: null }
            : { kind: "stop" },
        );
        if (job.place === 1 || stageOf(job) === "whole") postAnswer(job);
      }
      const now = performance.now();
      if (now - breath < chunkMs) continue;
      if (now - told > progressEveryMs) {
        say({ kind: "progress", id: job.id, of: "runs", done: runsDone(job), total: allRuns(job) });
        told = now;
      }
      await pause();
      breath = performance.now();
    }
    if (!isWanted()) return;
    if (job.years !== null) await runYears(job, job.years, isWanted);
    else if (hasEvidence(job) && !job.isMeasured) {
      // In one piece, and long: not while a slider is still moving.
      await quiet(quietMs);
      if (!isWanted()) return;
      job.isMeasured = true;
      sayAnswer(job);
    }
    if (!isWanted()) return;
    sayTexts(job);
    breath = told = performance.now();
    while (isWanted() && !job.fan.isWhole()) {
      const wider = job.fan.step();
      const now = performance.now();
      if (wider && (job.fan.isOpen() || now - told > fanEveryMs)) {
        sayFan(job);
        told = now;
      }
      if (now - breath < fanChunkMs) continue;
      await pause();
      breath = performance.now();
    }
  }

  /** Years in a row take longer than all seasons by themselves: not while a slider is still moving. */
  async function runYears(job: Job, years: YearsJob, isWanted: () => boolean): Promise<void> {
    if (years.found() !== null) return;
    await quiet(quietMs);
    let breath = performance.now();
    let told = 0;
    while (isWanted() && years.step()) {
      const now = performance.now();
      if (now - breath < yearsChunkMs) continue;
      if (now - told > progressEveryMs) {
        say({ kind: "progress", id: job.id, of: "chains", ...years.progress() });
        told = now;
      }
      await pause();
      breath = performance.now();
    }
    if (isWanted()) sayAnswer(job);
  }

  /** A stage of the answer; the season on show follows when another run is the typical one now. */
  function postAnswer(job: Job): void {
    const before = job.typicalRun;
    sayAnswer(job);
    if (job.typicalRun !== before && job.shown.run === null) saySeason(job);
  }

  function sayAnswer(job: Job): void {
    say({ kind: "answer", id: job.id, answer: answerOf(job, job.isMeasured) });
  }

  function sayFan(job: Job): void {
    const fan = job.fan.shown(job.units);
    if (fan.points.length > 0) say({ kind: "fan", id: job.id, fan });
  }

  function saySeason(job: Job): void {
    const season = seasonOf(job);
    say({ kind: "season", id: job.id, season }, buffersOf(season));
  }

  /** In one piece: it is asked for when nothing moves. */
  function sayOutlook({ id, preparation, units }: Job): void {
    try {
      say({ kind: "outlook", id, outlook: outlookShown(preparation.scenario, units) });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      say({ kind: "outlook", id, outlook: { problems: error.problems } });
    }
  }

  function sayTexts(job: Job): void {
    const answered = answeredBy(job);
    if (answered === null) return;
    const asked = waitingTexts;
    waitingTexts = [];
    for (const { id, what, shown, units } of asked) {
      const text = keptText(
        what,
        job.ensemble,
        answered,
        chosenRunOf(job, shown),
        chosenTotalOf(job, shown),
        units,
        goodKept,
      );
      say({ kind: "text", id, text });
    }
  }

  function sayError(id: number, error: unknown): void {
    if (error instanceof InputError) say({ kind: "refused", id, problems: error.problems });
    else say({ kind: "fault", id, said: error instanceof Error ? error.message : String(error) });
  }

  return {
    onMessage,
    getHelp: (post) => {
      secondWorker = post;
      secondWorker({ kind: "files", attachments });
    },
    onSecondWorker: (message) => {
      if (good !== null) takeFromSecondWorker(good, message);
    },
  };
}

function quiet(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
