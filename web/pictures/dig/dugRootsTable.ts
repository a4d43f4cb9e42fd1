import type { DigAnswer } from "../../../src/answer/dig/digAnswer.ts";
import { percent, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";

/** Where the simulated front stands in each group: of the day of a case's first dig, the only one it is told of. */
export function frontsByGroup({ groups, fit }: DigAnswer): (number | null)[] {
  return groups.map(({ case: name }, g) => {
    const isFirst = groups.findIndex((one) => one.case === name) === g;
    const fitted = fit?.cases.find((one) => one.case === name);
    return isFirst && fitted !== undefined ? fitted.simulatedMm : null;
  });
}

/** The picture's figures: groups first, then the differences of their means. */
export function dugTable(dig: DigAnswer, shown: Formatters): PictureTable {
  const { depth, length } = shown;
  const fronts = frontsByGroup(dig);
  const range = ({ low, high }: { low: number; high: number }) => `${depth(low)} to ${depth(high)}`;
  return {
    head: [
      "Case",
      "Dug on",
      "Plants",
      `Middle, ${length}`,
      `Its ${percent(dig.confidence)} interval`,
      `Mean, ${length}`,
      "Spread (sd)",
      "Shallowest to deepest",
      "Simulated front",
    ],
    rows: [
      ...dig.groups.map(({ case: name, rowPosition, date, depthMm, middleIntervalMm, assumed }, g) => [
        rowPosition === null ? name : `${name}, ${rowPosition}`,
        date,
        String(depthMm.n),
        depth(depthMm.median!),
        `${range(middleIntervalMm)}${assumed === null ? "" : " (spread assumed)"}`,
        depth(depthMm.mean!),
        depthMm.sd === null ? "–" : depth(depthMm.sd),
        range({ low: depthMm.smallest!, high: depthMm.largest! }),
        fronts[g] === null || fronts[g] === undefined ? "–" : depth(fronts[g]),
      ]),
      ...dig.differences.map(({ from, to, date, now, depthMm: { value, interval } }) => [
        `${to} less ${from}, of the means`,
        date,
        String(now),
        "–",
        interval === null ? "–" : range(interval),
        value === null ? "–" : depth(value),
        "–",
        "–",
        "–",
      ]),
    ],
  };
}
