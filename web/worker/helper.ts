import { prepare } from "../../src/answer/ensemble.ts";
import { newMemory, type KnownWeather } from "../../src/answer/memory.ts";
import { resolveScenario } from "../../src/scenario/resolve.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import type { DailyWeather } from "../../src/weather/record.ts";
import type { Json } from "../state/json.ts";
import type { Attachments } from "../state/scenarioStore.ts";
import { runAt, startWork, type GoodWork } from "./goodWork.ts";
import { packRuns, type PackedRuns } from "./packedRuns.ts";
import { readAttachment } from "./readAttachment.ts";

/**
 * A second worker that takes runs off the first one's hands: the first counts up from run 0, the helper down from the last,
 * until they meet. Both work out the same from the same scenario, so it does not matter who did a run.
 */
export type ToHelper =
  | { readonly kind: "files"; readonly attachments: Attachments }
  /** Read the scenario that help will be asked for. */
  | { readonly kind: "read"; readonly id: number; readonly scenario: Json }
  /** Begin at the last run of this place in the order of the totals; ends what is under way. */
  | {
      readonly kind: "help";
      readonly id: number;
      readonly scenario: Json;
      readonly place: number;
      /** Years that were generated for it; null where there are none, or the helper has them already. */
      readonly weather: KnownWeather | null;
    }
  | { readonly kind: "stop" };

export interface FromHelper {
  readonly id: number;
  readonly place: number;
  readonly runs: PackedRuns;
}

/** Results are handed over after this long, ms: a shorter time than the first worker listens in. */
const handOverMs = 4;

export function makeHelper(
  say: (message: FromHelper, transfer: ArrayBuffer[]) => void,
  pause: () => Promise<void>,
): (message: ToHelper) => void {
  const memory = newMemory();
  let attachments: Attachments = {};
  let latest = 0;
  let work: GoodWork | null = null;

  /** The scenario last read, or being read. */
  let reading: { readonly id: number; readonly scenario: Promise<Scenario> } | null = null;

  function read(id: number, scenario: Json): Promise<Scenario> {
    if (reading?.id !== id) {
      const readText = readAttachment(attachments);
      reading = { id, scenario: resolveScenario(scenario, { fileName: "scenario", readText }) };
      // What goes wrong here goes wrong in the first worker too, which tells the page.
      reading.scenario.catch(() => undefined);
    }
    return reading.scenario;
  }

  async function help(
    { id, scenario, place, weather }: Extract<ToHelper, { kind: "help" }>,
    token: number,
  ): Promise<void> {
    if (work?.id !== id) {
      const understood = await read(id, scenario);
      if (token !== latest) return;
      if (weather !== null) {
        memory.weather = weather;
        memory.shelves = new Map();
      }
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
    if (message.kind === "read") void read(message.id, message.scenario);
    if (message.kind === "help") void help(message, latest).catch(() => undefined);
  };
}

/** A message to the helper and the buffers that go with it: of weather a copy is handed over, which takes less time than cloning. */
export function packed(message: ToHelper): { message: ToHelper; transfer: ArrayBuffer[] } {
  if (message.kind !== "help" || message.weather === null) return { message, transfer: [] };
  const transfer: ArrayBuffer[] = [];
  const series = Object.entries(message.weather.weather).map(([key, value]) => {
    if (!(value instanceof Float64Array)) return [key, value];
    const copy = value.slice();
    transfer.push(copy.buffer);
    return [key, copy];
  });
  const weather = { ...message.weather, weather: Object.fromEntries(series) as DailyWeather };
  return { message: { ...message, weather }, transfer };
}
