import { signal } from "@preact/signals";
import { InputError } from "../../../../src/problem.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import type { Holdings } from "../../../../src/weather/records/holdings.ts";
import { stationsAsked } from "../../../forms/choicesAsked.ts";
import { readFile, type FileAnswer } from "../../../forms/files/fileReader.ts";
import { keep } from "../../../forms/edits/alternatives.ts";
import { answers, attach, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { give } from "../../wayIn/give.ts";

/** Rain of the whole years of the record taken last, to be said where it is asked about. */
export const yearsOfRecord = signal<{
  readonly file: string;
  readonly leastMm: number;
  readonly mostMm: number;
} | null>(null);

const ofRecord = ["pattern", "station", "units", "from", "to"];
const totals = ["weather.annualRain", "weather.seasonRain"];

/**
 * A station's record in place of the weather that is here, its years as they came: a total that earlier weather was scaled to is
 * put away, and is there again when scaling is chosen. In a field of five answers it is the answer about rain.
 */
export async function takeRecord(name: string, text: string): Promise<void> {
  if (answers.value !== null) return answerWithRecord(name, text, await holdingsOf(name, text));
  attachRecord(name, text);
}

/** As the answer about rain, also where the field begins with it. */
export async function giveRecord(name: string, text: string): Promise<void> {
  await answerWithRecord(name, text, await holdingsOf(name, text));
}

/**
 * A file that may be a record: taken where it is one.
 *
 * @param isAnswer whether it is the first answer of a field
 * @returns what came of it, in words
 * @throws InputError where no record can be read from it
 */
export async function tryRecord(name: string, text: string, isAnswer: boolean): Promise<string> {
  const read = await holdingsOf(name, text);
  const { holdings, problems } = read;
  const isOpen = problems.some((one) => one.field === "weather.units" || stationsAsked(one).length > 0);
  if (holdings === null && !isOpen) throw new InputError(problems);
  if (isAnswer || answers.value !== null) await answerWithRecord(name, text, read);
  else attachRecord(name, text);
  return said(name, wholeYears(holdings));
}

function holdingsOf(name: string, text: string): Promise<FileAnswer> {
  return readFile({ kind: "weather", text, fileName: name, station: undefined, units: undefined });
}

async function answerWithRecord(name: string, text: string, { holdings }: FileAnswer): Promise<void> {
  const whole = wholeYears(holdings);
  yearsOfRecord.value =
    whole.length === 0 ? null : { file: name, leastMm: Math.min(...whole), mostMm: Math.max(...whole) };
  putTotalsAway();
  const recordPlace = hasPlace(holdings) ? "yes" : undefined;
  await give({ record: name, recordPlace, rain: undefined }, "chosen", { name, text });
}

function attachRecord(name: string, text: string): void {
  putTotalsAway();
  attach(name, text, [
    ...[...ofRecord.map((key) => `weather.${key}`), ...totals].map((path) => [path, undefined] as const),
    ["weather.record", name],
  ]);
}

function putTotalsAway(): void {
  for (const path of totals) keep(path, valueAt(path));
}

function wholeYears(holdings: Holdings | null): readonly number[] {
  return (holdings?.years ?? []).filter(({ complete }) => complete).map(({ rainMm }) => rainMm);
}

function said(name: string, whole: readonly number[]): string {
  if (whole.length === 0)
    return `${name} is the weather now; Inputs, Weather has a question about it. Undo brings back what was here before.`;
  const { total, length } = shownIn(units.value);
  const [least, most] = [total(Math.min(...whole)), total(Math.max(...whole))];
  return `${name} is the weather now: ${whole.length} whole ${whole.length === 1 ? "year" : "years"} with ${least === most ? least : `${least} to ${most}`} ${length} of rain, as they came. Undo brings back what was here before.`;
}

function hasPlace(holdings: Holdings | null): boolean {
  return holdings?.station.latitudeDeg != null && holdings.station.elevationM != null;
}
