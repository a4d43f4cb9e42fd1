import { effect, signal } from "@preact/signals";
import { demos, demoWork } from "./demos.ts";
import { isGroup, type Json } from "./json.ts";
import { isLink, LinkError, workFromLink } from "./link.ts";
import { loadOther, loadWork, readSaved, saveWork, tabOf } from "./savedWork.ts";
import { begin, lastGood, openWork, ownWork, type Work } from "./scenarioStore.ts";

/** What the page says about keeping work, above everything else; null = nothing. */
export const keepingSays = signal<string | null>(null);

/** Another tab that has changed its scenario since this one was opened, to take over or to leave. */
export const otherTab = signal<{ readonly tab: string; readonly name: string } | null>(null);

const saveAfterMs = 300;
const startedAtMs = Date.now();
const leftAlone = new Set<string>();
let tab = "";
let editedAtMs = 0;
let saved: Work | null = null;
let savedGood: Json | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Loads this tab's work, or the demo; lays an opened link over it; then keeps every change. */
export async function startKeeping(): Promise<void> {
  tab = tabNumber();
  const found = await loadWork(tab).catch(() => null);
  const first = found ?? (await demoWork(demos[0]!));
  editedAtMs = found?.editedAtMs ?? 0;
  saved = first;
  savedGood = found?.lastGood ?? null;
  begin(first, savedGood);
  if (found?.files === "nowhere")
    keepingSays.value = "The weather file was too large for this browser to keep: give it again.";
  if (isLink(location.hash)) await openLink(location.hash);
  void save();
  effect(() => {
    const isEdited = ownWork.value !== saved;
    if (!isEdited && lastGood.value === savedGood) return;
    if (isEdited) editedAtMs = Date.now();
    clearTimeout(timer);
    timer = setTimeout(() => void save(), saveAfterMs);
  });
  // A page that is left may never be asked again.
  addEventListener("pagehide", () => void save());
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void save();
  });
  addEventListener("storage", hearOtherTab);
  addEventListener("hashchange", () => {
    if (isLink(location.hash)) void openLink(location.hash);
  });
}

/** A link is one step of undo away from what was there; the fragment goes, so that a reload does not open it again. */
async function openLink(hash: string): Promise<void> {
  history.replaceState(null, "", "#/answer");
  try {
    openWork(await workFromLink(hash), "open the link");
    lastGood.value = null;
    keepingSays.value = "Opened from a link. Undo brings back what was here before.";
  } catch (error) {
    if (!(error instanceof LinkError)) throw error;
    keepingSays.value = `${error.message} What was here before is still here.`;
  }
}

async function save(): Promise<void> {
  clearTimeout(timer);
  saved = ownWork.value;
  savedGood = lastGood.value;
  try {
    const lost = await saveWork(tab, saved, editedAtMs, savedGood);
    if (lost !== null) keepingSays.value = lost;
  } catch {
    keepingSays.value = "This browser keeps nothing: save your work as a file before you close the page.";
  }
}

function hearOtherTab({ key, newValue }: StorageEvent): void {
  const from = tabOf(key);
  if (from === null || from === tab || leftAlone.has(from)) return;
  const theirs = readSaved(newValue);
  if (theirs === null || theirs.editedAtMs < startedAtMs) return;
  const { scenario } = theirs;
  if (JSON.stringify(scenario) === JSON.stringify(ownWork.value.scenario)) return;
  const name = isGroup(scenario) && typeof scenario["name"] === "string" ? scenario["name"] : "a scenario";
  otherTab.value = { tab: from, name };
}

/** Takes over what the other tab has now, as one step of undo; the other tab goes on with its own. */
export async function takeOver(): Promise<void> {
  const from = otherTab.value?.tab;
  otherTab.value = null;
  const theirs = from === undefined ? null : await loadOther(from);
  if (theirs === null) return;
  const { scenario, attachments, answers } = theirs;
  openWork(
    { scenario, attachments, ...(answers === undefined ? {} : { answers }) },
    "take over from the other tab",
  );
}

/** Says no for as long as this tab is open. */
export function leaveOtherTab(): void {
  if (otherTab.value !== null) leftAlone.add(otherTab.value.tab);
  otherTab.value = null;
}

/** The number this tab keeps its work under; a copied tab gets one of its own as soon as the first one answers. */
function tabNumber(): string {
  let number: string;
  try {
    number = sessionStorage.getItem("rootfront.tab") ?? newNumber();
    sessionStorage.setItem("rootfront.tab", number);
  } catch {
    return newNumber();
  }
  const channel = new BroadcastChannel("rootfront.tabs");
  const self = newNumber();
  channel.addEventListener("message", ({ data }: MessageEvent<unknown>) => {
    if (!isGroup(data) || data["tab"] !== tab || data["self"] === self) return;
    if (data["kind"] === "who") channel.postMessage({ kind: "mine", tab, self, to: data["self"] });
    if (data["kind"] !== "mine" || data["to"] !== self) return;
    tab = newNumber();
    sessionStorage.setItem("rootfront.tab", tab);
    void save();
  });
  channel.postMessage({ kind: "who", tab: number, self });
  return number;
}

function newNumber(): string {
  return `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 8)}`;
}
