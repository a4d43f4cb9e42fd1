import type { WeatherRecord } from "../../weather/records/record.ts";

/**
 * The weather record last read, so that a scenario read again and again while something else in it is changed does not read
 * the same text each time. The caller owns it; what is read is the same with a new one.
 */
export interface RecordCache {
  last: CachedRecord | null;
}

interface CachedRecord {
  /** The file as it was. */
  readonly text: string;
  /** How it was to be read. */
  readonly how: string;
  readonly record: WeatherRecord;
}

export function newRecordCache(): RecordCache {
  return { last: null };
}

/** The record cached, or read and cached; one that throws is not. */
export function cachedRecord(
  recordCache: RecordCache,
  text: string,
  how: readonly unknown[],
  read: () => WeatherRecord,
): WeatherRecord {
  const key = JSON.stringify(how);
  const { last } = recordCache;
  if (last !== null && last.how === key && last.text === text) return last.record;
  const record = read();
  recordCache.last = { text, how: key, record };
  return record;
}
