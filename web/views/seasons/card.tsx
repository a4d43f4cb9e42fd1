import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { fixed } from "../../../src/report/tables/formatters.ts";
import type { Traces } from "../../worker/protocol.ts";
import { addressOfRun, openSeason } from "./openSeason.ts";
import { SeasonPicture } from "./picture.tsx";
import type { SeasonRow } from "./rows.ts";

interface SeasonCardProps {
  readonly row: SeasonRow;
  readonly title: string;
  readonly lines: readonly string[];
  readonly names: readonly string[];
  readonly yieldUnit: string;
  readonly shown: Formatters;
  /** The course of the season; null for a year of years in a row, which is on no pit wall of its own. */
  readonly traces: Traces | null;
}

/** The year looked at: its numbers, each case's own, and where it can be walked through. */
export function SeasonCard({ row, title, lines, names, yieldUnit, shown, traces }: SeasonCardProps) {
  const { water, depth, length } = shown;
  const rows = [
    ["Stored at sowing", row.cases.map((one) => water(one.storedAtSowingMm))],
    ["Water used", row.cases.map((one) => water(one.waterUseMm))],
    ["Root depth", row.cases.map((one) => depth(one.rootDepthMm))],
    [`Yield, ${yieldUnit}`, row.cases.map((one) => fixed(one.yield, 0))],
  ] as const;
  return (
    <section class="season-card" aria-label={title}>
      <div>
        <h2>{title}</h2>
        <ul class="season-lines">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <table class="cases">
          <thead>
            <tr>
              <td>{length === "in" ? "Depth and water in inches" : "Depth and water in mm"}</td>
              {names.map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([head, cells]) => (
              <tr key={head}>
                <th scope="row">{head}</th>
                {cells.map((cell, i) => (
                  <td key={i}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
        {traces !== null && (
          <p>
            <a
              class="season-open no-print"
              href={addressOfRun(row.run)}
              onClick={(event) => openSeason(event, row.run)}
            >
              Open on the pit wall
            </a>
          </p>
        )}
      </div>
      {traces !== null && (
        <SeasonPicture run={row.run} places={row.cases.map(({ c }) => c)} {...{ traces, names, shown }} />
      )}
    </section>
  );
}
