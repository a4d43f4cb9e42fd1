import type { CaseAnswer, Comparison } from "../../../src/answer/comparison/comparison.ts";
import { percent, type Formatters } from "../../../src/report/tables/formatters.ts";
import { yieldSaid } from "../../pictures/answer/yieldRanges.tsx";

interface CaseTableProps {
  readonly comparison: Comparison;
  readonly shown: Formatters;
}

/** What became of each case, in numbers: where the water went. A column a case, as a phone holds few columns. */
export function CaseTable({ comparison: { cases, method }, shown }: CaseTableProps) {
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label="The cases, as a table">
      <table class="cases">
        <caption>
          {method.runs === 1 ? "One run" : `A typical year (medians of ${method.runs} runs)`}, from sowing to
          maturity
        </caption>
        <thead>
          <tr>
            <th scope="col">
              {shown.length === "in" ? "Depth and water in inches" : "Depth and water in mm"}
            </th>
            {cases.map(({ name }) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rowsOf(shown).map(({ head, say }) => (
            <tr key={head}>
              <th scope="row">{head}</th>
              {cases.map((one) => (
                <td key={one.name}>{say(one)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function rowsOf({ depth, water }: Formatters): { head: string; say: (one: CaseAnswer) => string }[] {
  return [
    { head: "Root depth", say: (one) => depth(one.finalRootDepthMm) },
    { head: "Stored at sowing", say: (one) => water(one.storedAtSowingMm) },
    { head: "Rain", say: (one) => water(one.seasonRainMm) },
    { head: "Taken up by the crop", say: (one) => water(one.transpirationMm) },
    { head: "Evaporated from the soil", say: (one) => water(one.evaporationMm) },
    { head: "Crop and soil together", say: (one) => water(one.waterUseMm) },
    { head: "Ran off", say: (one) => water(one.runoffMm) },
    { head: "Drained", say: (one) => water(one.drainageMm) },
    { head: "Share of its demand met", say: (one) => percent(one.demandMet) },
    { head: "Yield", say: yieldSaid },
  ];
}
