import type { WeatherRecord } from "../../weather/records/record.ts";

/**
 * The weather records last read, so that scenarios of one record, or one scenario while something else in it is changed, do
 * not read the same text each time. The caller owns it; what is read is the same with a new one.
 */
export interface RecordCache {
  /** How many records are kept of each kind; the one used longest ago goes first. */
  readonly most: number;
  /** As the files have them, whatever the site and the days used. */
  readonly asRead: CachedRecord[];
  /** Gaps filled, ready for use. */
  readonly filled: CachedRecord[];
}

interface CachedRecord {
  /** The file as it was. */
  readonly text: string;
  /** How it was to be read. */
  readonly how: string;
  readonly record: WeatherRecord;
}

export function newRecordCache(most = 1): RecordCache {
  return { most, asRead: [], filled: [] };
}

/** The record cached, or read and cached; one that throws is not. */
export function cachedRecord(
  { most, ...kept }: RecordCache,
  kind: "asRead" | "filled",
  text: string,
  how: readonly unknown[],
  read: () => WeatherRecord,
): WeatherRecord {
  const key = JSON.stringify(how);
  const records = kept[kind];
  const at = records.findIndex((one) => one.how === key && one.text === text);
  const [found = { text, how: key, record: read() }] = at < 0 ? [] : records.splice(at, 1);
  records.push(found);
  if (records.length > most) records.shift();
  return found.record;
}
