import { resolve } from "node:path";
import { newAnswerCache, type AnswerCache } from "../../answer/runs/answerCache.ts";
import type { Scenario } from "../../scenario/index.ts";
import { newRecordCache, type RecordCache } from "../../scenario/read/recordCache.ts";

/** How much of earlier lines is kept for later ones: it bounds the memory, and changes no answer. Ours. */
const most = { records: 32, weathers: 4, lettersOfFiles: 64 * 2 ** 20 };

/** What the lines of a batch read and work out together. */
export interface SharedReading {
  readonly recordCache: RecordCache;
  /** A file's text, read once; the ones used longest ago are let go where they are too much together. */
  readonly textOf: (folder: string, path: string, read: () => string) => string;
  /** What was worked out of the weather of this scenario, and of its cases by the line before. */
  readonly answerCacheFor: (scenario: Scenario) => AnswerCache;
}

export function newSharedReading(): SharedReading {
  const texts = new Map<string, string>();
  const caches = new Map<unknown, AnswerCache>();
  let before: AnswerCache = newAnswerCache();
  return {
    recordCache: newRecordCache(most.records),
    textOf: (folder, path, read) => {
      const text = lastUsed(texts, resolve(folder, path), read);
      let letters = 0;
      for (const one of texts.values()) letters += one.length;
      for (const [oldest, { length }] of texts) {
        if (letters <= most.lettersOfFiles || texts.size === 1) break;
        texts.delete(oldest);
        letters -= length;
      }
      return text;
    },
    answerCacheFor: ({ weather: { source }, site }) => {
      // A record read once is one object.
      const key = source.kind === "record" ? source.record : JSON.stringify([source.normals, site]);
      const cache = lastUsed(caches, key, newAnswerCache);
      const [oldest] = caches.keys();
      if (caches.size > most.weathers) caches.delete(oldest);
      // What is no matter of the weather goes on from line to line, and is there once.
      const { soils, draws, response } = before;
      before = Object.assign(cache, { soils, draws, response });
      return cache;
    },
  };
}

/** What stands under a key, or is made for it, moved to the end of the map. */
function lastUsed<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const value = map.get(key) ?? make();
  map.delete(key);
  map.set(key, value);
  return value;
}
