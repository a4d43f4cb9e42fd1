import { readJson } from "../../src/scenario/read/readJson.ts";
import type { FiveAnswers } from "../../src/scenario/say/fiveAnswers.ts";
import { isGroup, type Json } from "./json.ts";
import type { Attachments, Work } from "./scenarioStore.ts";

/**
 * Work kept in the browser, each tab its own: a tab writes only under its own number, so that none overwrites another's.
 * Files too large for local storage go to the browser's database.
 */

export interface SavedWork extends Work {
  /** When it was last changed by hand, ms since 1970. */
  readonly editedAtMs: number;
  /** The scenario of the last good answer, where this one was wrong when it was kept. */
  readonly lastGood: Json | null;
  /** Where the files are kept. */
  readonly files: "here" | "database" | "nowhere";
}

const prefix = "rootfront.work.";
/** Work of this many tabs is kept; older goes. */
const mostKept = 6;
/** More text than this, letters, does not go to local storage, which holds about 5 million for all tabs together. */
const mostHere = 500_000;

export function keyOf(tab: string): string {
  return prefix + tab;
}

export function tabOf(key: string | null): string | null {
  return key?.startsWith(prefix) ? key.slice(prefix.length) : null;
}

/** Work saved under a tab's number; null where there is none, or what is there is no work of ours. */
export function readSaved(text: string | null): SavedWork | null {
  if (text === null) return null;
  let found: Json;
  try {
    found = readJson(text, "saved work") as Json;
  } catch {
    return null;
  }
  if (!isGroup(found) || !isGroup(found["scenario"])) return null;
  const { scenario, attachments, editedAtMs, files, lastGood, answers } = found;
  return {
    scenario,
    ...(isGroup(answers) ? { answers: textsOf(answers) as FiveAnswers } : {}),
    attachments: isGroup(attachments) ? textsOf(attachments) : {},
    editedAtMs: typeof editedAtMs === "number" ? editedAtMs : 0,
    lastGood: isGroup(lastGood) ? lastGood : null,
    files: files === "database" || files === "nowhere" ? files : "here",
  };
}

/** The tab's own work; otherwise the newest of another tab, to go on from as a copy. */
export async function loadWork(tab: string): Promise<SavedWork | null> {
  const own = readSaved(localStorage.getItem(keyOf(tab)));
  const [from, found] = own === null ? (newestOfAll() ?? [tab, null]) : [tab, own];
  if (found === null || found.files !== "database") return found;
  return { ...found, attachments: await filesFromDatabase(from).catch(() => ({})) };
}

/** Work of a tab that has just changed it, files included. */
export async function loadOther(tab: string): Promise<SavedWork | null> {
  const found = readSaved(localStorage.getItem(keyOf(tab)));
  if (found === null || found.files !== "database") return found;
  return { ...found, attachments: await filesFromDatabase(tab).catch(() => ({})) };
}

/** Large files last put into the database: they are not put there again while they stay the same. */
let inDatabase: { readonly tab: string; readonly attachments: Attachments } | null = null;

/** Returns what could not be kept, in words; null when all was. */
export async function saveWork(
  tab: string,
  { scenario, attachments, answers }: Work,
  editedAtMs: number,
  lastGood: Json | null,
): Promise<string | null> {
  const size = Object.values(attachments).reduce((sum, text) => sum + text.length, 0);
  let files: SavedWork["files"] = "here";
  if (size > mostHere) {
    files = "database";
    if (inDatabase?.tab !== tab || inDatabase.attachments !== attachments) {
      files = await filesToDatabase(tab, attachments).then(
        () => "database" as const,
        () => "nowhere" as const,
      );
      inDatabase = files === "database" ? { tab, attachments } : null;
    }
  }
  const kept = {
    scenario,
    attachments: files === "here" ? attachments : {},
    ...(answers === undefined ? {} : { answers }),
    editedAtMs,
    files,
    lastGood,
  };
  try {
    clearOld(tab);
    localStorage.setItem(keyOf(tab), JSON.stringify(kept));
  } catch {
    return "This browser has no room left to keep your work: save it as a file before you close the page.";
  }
  return files === "nowhere"
    ? "The weather file is too large for this browser to keep: after a reload it has to be given again."
    : null;
}

function savedTabs(): { tab: string; work: SavedWork }[] {
  return Object.keys(localStorage)
    .flatMap((key) => {
      const tab = tabOf(key);
      const work = tab === null ? null : readSaved(localStorage.getItem(key));
      return tab === null || work === null ? [] : [{ tab, work }];
    })
    .sort((a, b) => b.work.editedAtMs - a.work.editedAtMs);
}

function newestOfAll(): [string, SavedWork] | null {
  const [newest] = savedTabs();
  return newest === undefined ? null : [newest.tab, newest.work];
}

function clearOld(own: string): void {
  const others = savedTabs().filter(({ tab }) => tab !== own);
  for (const { tab } of others.slice(mostKept - 1)) {
    localStorage.removeItem(keyOf(tab));
    void fromDatabase("readwrite", (store) => store.delete(tab)).catch(() => undefined);
  }
}

async function filesToDatabase(tab: string, attachments: Attachments): Promise<void> {
  await fromDatabase("readwrite", (store) => store.put(attachments, tab));
}

async function filesFromDatabase(tab: string): Promise<Attachments> {
  const found = await fromDatabase("readonly", (store) => store.get(tab));
  return isGroup(found) ? textsOf(found) : {};
}

function textsOf(found: object): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(found).filter((entry): entry is [string, string] => typeof entry[1] === "string"),
  );
}

function fromDatabase(
  mode: IDBTransactionMode,
  act: (store: IDBObjectStore) => IDBRequest,
): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open("rootfront", 1);
    opening.addEventListener("upgradeneeded", () => opening.result.createObjectStore("files"));
    opening.addEventListener("error", () => reject(opening.error ?? new Error("no database")));
    opening.addEventListener("success", () => {
      const database = opening.result;
      const transaction = database.transaction("files", mode);
      const request = act(transaction.objectStore("files"));
      transaction.addEventListener("complete", () => {
        database.close();
        resolve(request.result);
      });
      transaction.addEventListener("abort", () => {
        database.close();
        reject(transaction.error ?? new Error("not kept"));
      });
    });
  });
}
