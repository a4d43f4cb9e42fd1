import type { WeatherRecord } from "../../weather/records/record.ts";

/**
 * The weather record last read, so that a scenario read again and again while something else in it is changed does not read
 * the same text each time. The caller owns it; what is read is the same with a new one.
 */
export interface Readings {
  last: KeptReading | null;
}

interface KeptReading {
  /** The file as it was. */
  readonly text: string;
  /** How it was to be read. */
  readonly how: string;
  readonly record: WeatherRecord;
}

export function newReadings(): Readings {
  return { last: null };
}

/** The reading remembered, or made and remembered; one that throws is not. */
export function recallReading(
  readings: Readings,
  text: string,
  how: readonly unknown[],
  read: () => WeatherRecord,
): WeatherRecord {
  const key = JSON.stringify(how);
  const { last } = readings;
  if (last !== null && last.how === key && last.text === text) return last.record;
  const record = read();
  readings.last = { text, how: key, record };
  return record;
}
