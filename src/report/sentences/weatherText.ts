import { quantile } from "../../statistics/quantiles.ts";
import type { ElementAnswer, WeatherAnswer } from "../../answer/comparison/weatherAnswer.ts";
import type { Units } from "../../quantity/kinds.ts";
import { shownIn, type Formatters } from "../tables/formatters.ts";
import { tableLines } from "../tables/textTable.ts";
import { bullets, wrap } from "../../wrap.ts";
import { referenceEtSaid } from "./sentence.ts";

/** Gaps listed for one element; the rest is a count. */
const gapsListed = 6;
const monthNames = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** What a record holds, for people, in 80 columns. */
export function weatherText(answer: WeatherAnswer, units: Units): string {
  const shown = shownIn(units);
  const lines = [
    ...stationLines(answer),
    "",
    ...elementLines(answer.elements),
    "",
    ...yearLines(answer, shown),
    "",
    ...monthLines(answer, shown),
    "",
    "how" in answer.referenceEt
      ? wrap(referenceEtSaid(answer.referenceEt.how))
      : wrap(`No reference ET: ${answer.referenceEt.lacking}`),
    ...(answer.notes.length > 0 ? ["", "Noticed", ...bullets(answer.notes)] : []),
  ].flat();
  return `${lines.join("\n")}\n`;
}

function stationLines({ station, firstDate, lastDate, days, completeYears }: WeatherAnswer): string[] {
  const { id, name, format, latitudeDeg, elevationM } = station;
  const place = [
    latitudeDeg === null ? "latitude not in the file" : `latitude ${latitudeDeg.toFixed(2)}`,
    elevationM === null ? "elevation not in the file" : `elevation ${elevationM.toFixed(0)} m`,
  ].join(", ");
  const called =
    [...new Set([name, id])].filter((text) => text !== "").join(", ") || "a station without a name";
  return [
    ...wrap(
      `${called}: ${firstDate} to ${lastDate}, ${days} ${days === 1 ? "day" : "days"}, ${completeYears} complete ${completeYears === 1 ? "year" : "years"}.`,
    ),
    ...wrap(`Read as ${format}; ${place}.`),
  ];
}

function elementLines(elements: readonly ElementAnswer[]): string[] {
  const rows = elements.map(({ what, missingDays, longestGapDays }) => [
    what,
    String(missingDays),
    String(longestGapDays),
  ]);
  return [
    ...tableLines({ head: [["what it holds", "days missing", "longest gap"]], rows }),
    ...elements
      .filter(({ gaps }) => gaps.length > 0)
      .flatMap(({ what, gaps }) => {
        const more = gaps.length > gapsListed ? `, and ${gaps.length - gapsListed} more` : "";
        const said = gaps
          .slice(0, gapsListed)
          .map(({ from, days }) => `${from} (${days} ${days === 1 ? "day" : "days"})`);
        return wrap(`Gaps of ${what}: ${said.join(", ")}${more}.`, "  ");
      }),
  ];
}

function yearLines({ years, seasons }: WeatherAnswer, shown: Formatters): string[] {
  const unit = shown.length;
  const head = [
    ["", "rain", "rain", "rain", "reference", "rain days"],
    [
      "year",
      unit,
      ...seasons.map(({ name }) => name.replace(/(\w{3})\w* to (\w{3})\w*/, "$1-$2")),
      `ET, ${unit}`,
      "missing",
    ],
  ];
  const rows = years.map((one) => [
    `${one.year}${one.complete ? "" : " *"}`,
    shown.fineWater(one.rainMm),
    ...seasons.map(({ totals }) => {
      const total = totals.find(({ year }) => year === one.year);
      return total === undefined ? "-" : shown.fineWater(total.rainMm);
    }),
    one.referenceEtMm === null ? "-" : shown.fineWater(one.referenceEtMm),
    String(one.missingRainDays),
  ]);
  const whole = years.filter(({ complete }) => complete);
  return [
    ...tableLines({ head, rows }),
    ...(whole.length < years.length ? ["* not complete: what is there is summed"] : []),
    ...(whole.length > 1
      ? wrap(
          rangeSaid(
            whole.map(({ rainMm }) => rainMm),
            shown,
          ),
        )
      : []),
    ...wrap("A season over the new year stands with the year it ends in."),
  ];
}

function rangeSaid(rainMm: readonly number[], shown: Formatters): string {
  const sorted = Float64Array.from(rainMm).sort();
  const [low, middle, high] = [0, 0.5, 1].map((share) => shown.fineWater(quantile(sorted, share)));
  return `Complete years: ${low} to ${high} ${shown.length} of rain, ${middle} in a typical one.`;
}

function monthLines({ monthly }: WeatherAnswer, shown: Formatters): string[] {
  const cell =
    (values: readonly (number | null)[] | null, say: (value: number) => string) => (month: number) => {
      const value = values?.[month] ?? null;
      return value === null ? "-" : say(value);
    };
  const warm = shown.system === "us" ? (c: number) => (c * 1.8 + 32).toFixed(0) : (c: number) => c.toFixed(1);
  const degree = shown.system === "us" ? "F" : "C";
  const rain = cell(monthly.rainMm, shown.fineWater);
  const wet = cell(monthly.wetDays, (days) => days.toFixed(1));
  const high = cell(monthly.tMaxC, warm);
  const low = cell(monthly.tMinC, warm);
  return tableLines({
    head: [["month", `rain, ${shown.length}`, "wet days", `highest, ${degree}`, `lowest, ${degree}`]],
    rows: monthNames.map((name, month) => [name, rain(month), wet(month), high(month), low(month)]),
  });
}
