import type { Comparison } from "../../../src/answer/comparison.ts";
import { percent, type Shown } from "../../../src/report/shownUnits.ts";
import { yieldSaid } from "../../pictures/yieldRanges.tsx";

/** What became of each case, in numbers: where the water went. */
export function CaseTable({
  comparison: { cases, method },
  shown,
}: {
  comparison: Comparison;
  shown: Shown;
}) {
  const water = shown.water;
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label="The cases, as a table">
      <table class="cases">
        <caption>
          The cases in numbers, {shown.length}: medians of {method.runs} runs, from sowing to maturity
        </caption>
        <thead>
          <tr>
            <th scope="col">Case</th>
            <th scope="col">Root depth</th>
            <th scope="col">Stored at sowing</th>
            <th scope="col">Rain</th>
            <th scope="col">Water used</th>
            <th scope="col">taken up</th>
            <th scope="col">evaporated</th>
            <th scope="col">Ran off</th>
            <th scope="col">Drained</th>
            <th scope="col">Of its demand</th>
            <th scope="col">Yield</th>
          </tr>
        </thead>
        <tbody>
          {cases.map((one) => (
            <tr key={one.name}>
              <th scope="row">{one.name}</th>
              <td>{shown.depth(one.finalRootDepthMm)}</td>
              <td>{water(one.storedAtSowingMm)}</td>
              <td>{water(one.seasonRainMm)}</td>
              <td>{water(one.waterUseMm)}</td>
              <td>{water(one.transpirationMm)}</td>
              <td>{water(one.evaporationMm)}</td>
              <td>{water(one.runoffMm)}</td>
              <td>{water(one.drainageMm)}</td>
              <td>{percent(one.demandMet)}</td>
              <td>{yieldSaid(one)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
