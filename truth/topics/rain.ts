/** Generated rain beside every long open gauge, each from its own monthly normals. */
import file from "../../data-reference/scoreboard/rain.json" with { type: "json" };
import { gauges, rainOf, type RainLike } from "../rainLike.ts";
import { digitsOf, type Row, type Topic } from "../row.ts";

const rows = file.rows as unknown as readonly Row[];

export const rain: Topic = {
  file: { title: file.title, rows },
  isFallow: false,
  async ours(openData) {
    const ours: Record<string, number> = {};
    for (const gauge of openData === null ? [] : gauges) {
      const { measured, generated } = rainOf(openData!, gauge);
      for (const { id, of } of measures) {
        holdFigure(`${gauge.id}-${id}`, of(measured));
        ours[`${gauge.id}-${id}`] = of(generated);
      }
    }
    return ours;
  },
};

const measures: readonly { id: string; of: (rain: RainLike) => number }[] = [
  { id: "above-20", of: ({ above20Percent }) => above20Percent },
  { id: "above-30", of: ({ above30Percent }) => above30Percent },
  { id: "wet-days", of: ({ wetDays }) => wetDays },
  { id: "dry-spell", of: ({ longestSpellDays }) => longestSpellDays },
  { id: "sd", of: ({ sdMm }) => sdMm },
];

/** The rows' figures are the gauge's own. */
function holdFigure(id: string, measured: number): void {
  const row = rows.find((one) => one.id === id);
  if (row === undefined || Number(measured.toFixed(digitsOf(row))) !== row.figure)
    throw new Error(`${id}: the gauge has ${measured}, the file says ${String(row?.figure)}`);
}
