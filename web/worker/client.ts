import { batch, computed, effect, signal } from "@preact/signals";
import type { DefaultUsed } from "../../src/scenario/scenario.ts";
import type { Problem } from "../../src/problem.ts";
import { attachments, lastEdit, lastGood, scenario } from "../state/scenarioStore.ts";
import { chosenRun, chosenTotal, units } from "../state/view.ts";
import type { Json } from "../state/json.ts";
import type { Introduction } from "./engine.worker.ts";
import { newWorker, startEngineWorker, whenEngineFails } from "./startWorker.ts";
import type {
  Answer,
  FromEngine,
  KeptText,
  OutlookShown,
  RainFan,
  Refused,
  SeasonShown,
  ShownRun,
  TextKind,
  ToEngine,
  ResolvedScenario,
} from "./protocol.ts";

/** What the engine has said, for every view to read. All null until the first answer comes. */

/** The scenario with its defaults, as the engine reads it. */
export const resolved = signal<ResolvedScenario | null>(null);
/** The run on the pit wall. */
export const season = signal<SeasonShown | null>(null);
/** The last good answer; see `stale`. */
export const answer = signal<Answer | null>(null);
export const fan = signal<RainFan | null>(null);
/** What is wrong with the scenario as it stands; empty when nothing is. */
export const problems = signal<readonly Problem[]>([]);
/** A fault of ours, in words. */
export const fault = signal<string | null>(null);
/** Runs or chains done of all, while the engine is at work; null otherwise. */
export const progress = signal<Pick<
  Extract<FromEngine, { kind: "progress" }>,
  "of" | "done" | "total"
> | null>(null);

/** The season under way, as last asked for; see `outlookIsFresh`. */
export const outlook = signal<OutlookShown | Refused | null>(null);
const outlookId = signal(0);
const askedId = signal(0);
const fanId = signal(0);
const isTyping = signal(false);
/** The last question that was refused. */
const repliedId = signal(0);
/** The number of the question that `answer` answers; it grows with every change. */
export const answerId = signal(0);

/** What is on show answers an earlier state of the scenario, and stays because the present one is wrong. */
export const stale = computed(
  () => (problems.value.length > 0 || fault.value !== null) && answer.value !== null,
);
/** False while `fan` is still that of an earlier answer: show it fainter. */
export const fanIsFresh = computed(() => fanId.value === answerId.value);
/** False while `outlook` is still that of an earlier answer. */
export const outlookIsFresh = computed(() => outlookId.value === answerId.value);
/** The engine is at work on an answer, or will be when typing has paused. */
export const busy = computed(() => {
  if (isTyping.value) return true;
  if (problems.value.length > 0 || fault.value !== null) return repliedId.value !== askedId.value;
  return answerId.value !== askedId.value || answer.value?.whole !== true;
});

/** Defaults by the place they fill; places as problems write them. */
export const defaultsByPath = computed(
  () => new Map<string, DefaultUsed>((resolved.value?.defaults ?? []).map((one) => [one.field, one])),
);
export const problemsByPath = computed(() => {
  const byPath = new Map<string, Problem[]>();
  for (const problem of problems.value)
    byPath.set(problem.field, [...(byPath.get(problem.field) ?? []), problem]);
  return byPath;
});

/** Typing is waited for this long, ms; all else is answered at once. */
const typingPauseMs = 250;

let worker: Worker | null = null;
let asked = 0;
/** The scenario last asked about, and the last one that was resolved. */
let question: Json = null;
let resolvedScenario: Json = null;
/** Number of the question that comes first after a reload with a wrong scenario: its last good answer is shown, then it is asked about. */
let firstId: number | null = null;
/** Resolved, and to be shown with its season. */
let awaited: ResolvedScenario | null = null;
const texts = new Map<number, (text: KeptText) => void>();

/** A second worker for half of the runs, once the first answer is there: until then it would only be in the way. */
function bringSecondWorker(): void {
  if (hasSecondWorker || worker === null || navigator.hardwareConcurrency < 2) return;
  hasSecondWorker = true;
  const { port1, port2 } = new MessageChannel();
  newWorker().postMessage({ kind: "second worker", port: port1 } satisfies Introduction, [port1]);
  worker.postMessage({ kind: "first worker", port: port2 } satisfies Introduction, [port2]);
}

let hasSecondWorker = false;

/** Starts asking: whenever the scenario, its files or what is shown of it changes. */
export function startEngine(): void {
  worker = startEngineWorker();
  worker.addEventListener("message", ({ data }: MessageEvent<FromEngine>) => batch(() => onMessage(data)));
  whenEngineFails((said) => {
    fault.value = said;
  });
  effect(() => post({ kind: "files", attachments: attachments.value }));
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    // Both are looked at, so that a change of either asks again.
    const next = { scenario: scenario.value, files: attachments.value };
    const good = asked === 0 ? lastGood.peek() : null;
    clearTimeout(timer);
    isTyping.value = lastEdit.peek() === "typed";
    if (isTyping.peek()) timer = setTimeout(() => batch(() => ask(next.scenario)), typingPauseMs);
    else ask(good ?? next.scenario);
    firstId = good === null ? null : asked;
  });
  // For those who wait for it from outside: tests, the screenshots, the benchmark.
  effect(() => {
    document.documentElement.dataset["engine"] = busy.value ? "busy" : "idle";
  });
  skipFirst(
    () => units.value,
    () => post({ kind: "units", id: asked, units: units.peek() }),
  );
  skipFirst(
    () => [chosenRun.value, chosenTotal.value].join(),
    () => post({ kind: "season", id: asked, shown: shownRun() }),
  );
}

/** Does what can wait when the first question has been dealt with, or is taking too long. */
export function firstQuiet(act: () => void): void {
  const patienceMs = 15_000;
  const late = setTimeout(() => done(), patienceMs);
  const stop = effect(() => {
    if (!busy.value && askedId.value > 0) setTimeout(() => done());
  });
  let isDone = false;
  function done(): void {
    clearTimeout(late);
    stop();
    if (!isDone) act();
    isDone = true;
  }
}

function ask(written: typeof scenario.value): void {
  asked += 1;
  askedId.value = asked;
  question = written;
  isTyping.value = false;
  performance.mark("rootfront:asked", { detail: asked });
  post({ kind: "compute", id: asked, scenario: written, units: units.peek(), shown: shownRun() });
}

function shownRun(): ShownRun {
  return { run: chosenRun.peek(), totalIndex: chosenTotal.peek() };
}

/** A text to keep; comes once the answer it is made of is whole. */
export function askText(what: TextKind): Promise<KeptText> {
  return new Promise((resolve) => {
    const id = texts.size === 0 ? 1 : Math.max(...texts.keys()) + 1;
    texts.set(id, resolve);
    post({ kind: "text", id, what, shown: shownRun(), units: units.peek() });
  });
}

/** Asks for the season under way of the answer on show. */
export function askOutlook(): void {
  post({ kind: "outlook", id: asked });
}

function onMessage(message: FromEngine): void {
  if (message.kind === "text") {
    texts.get(message.id)?.(message.text);
    texts.delete(message.id);
    return;
  }
  if (message.kind === "outlook") {
    if (message.id !== asked) return;
    outlook.value = message.outlook;
    outlookId.value = message.id;
    return;
  }
  const { id } = message;
  // Of an older question nothing is wanted any more, unless the newest one was refused and the last good one goes on.
  const goesOn = problems.value.length > 0 && message.kind !== "refused" && message.kind !== "resolved";
  if (id !== asked && !goesOn) return;
  if (id === firstId && message.kind !== "resolved") {
    firstId = null;
    setTimeout(() => batch(() => ask(scenario.peek())));
  }
  switch (message.kind) {
    case "resolved":
      problems.value = [];
      fault.value = null;
      resolvedScenario = question;
      lastGood.value = null;
      // The season follows at once: shown together they are drawn once, not twice.
      if (season.peek() === null) resolved.value = message.resolved;
      else awaited = message.resolved;
      return;
    case "refused":
      problems.value = message.problems;
      lastGood.value = resolvedScenario;
      repliedId.value = id;
      progress.value = null;
      return;
    case "fault":
      fault.value = message.said;
      repliedId.value = id;
      progress.value = null;
      return;
    case "season":
      performance.mark("rootfront:season", { detail: id });
      if (awaited !== null) resolved.value = awaited;
      awaited = null;
      season.value = message.season;
      whenPainted(() => {
        performance.mark("rootfront:season painted", { detail: id });
        post({ kind: "drawn", id });
      });
      return;
    case "progress":
      progress.value = message;
      return;
    case "answer":
      performance.mark("rootfront:answer", { detail: id });
      answer.value = withYears(withMeasured(message.answer, answer.peek()), answer.peek());
      answerId.value = id;
      whenPainted(() => performance.mark("rootfront:answer painted", { detail: id }));
      if (message.answer.whole) {
        progress.value = null;
        bringSecondWorker();
      }
      return;
    case "fan":
      fan.value = message.fan;
      fanId.value = id;
  }
}

/** Until what was measured has been worked out anew, that of the answer before stands. */
function withMeasured(next: Answer, before: Answer | null): Answer {
  if (next.whole || before === null || before.comparison.evidence === null) return next;
  const { rows, money } = next.field;
  return {
    ...next,
    comparison: { ...next.comparison, evidence: before.comparison.evidence },
    field: { ...before.field, rows, money },
  };
}

/** Until years in a row have been run anew, those of the answer before stand: seasons by themselves are another question. */
function withYears(next: Answer, before: Answer | null): Answer {
  if (!next.awaitsYears || before === null || before.inARow === null || before.units !== next.units)
    return next;
  const of = ({ comparison: { cases, byRainTotal } }: Answer) =>
    JSON.stringify([cases.map(({ name }) => name), byRainTotal.map(({ rainTotalMm }) => rainTotalMm)]);
  if (of(next) !== of(before)) return next;
  const { comparison, told, field, method, inARow } = before;
  return { ...next, comparison, told, field, method, inARow };
}

/** What was changed just now is drawn within a frame; behind it, it has been painted. */
function whenPainted(act: () => void): void {
  requestAnimationFrame(() => setTimeout(act));
}

function post(message: ToEngine): void {
  worker?.postMessage(message);
}

/** Acts on every change of what `look` sees, but not on the first look. */
function skipFirst(look: () => unknown, act: () => void): void {
  let first = true;
  effect(() => {
    look();
    if (!first) act();
    first = false;
  });
}
