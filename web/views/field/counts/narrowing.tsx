import type { Narrowed } from "../../../../src/report/tables/narrowing.ts";
import type { YieldsSaid } from "./yieldsSaid.ts";

interface NarrowingProps {
  /** What the table is of, where there are several. */
  readonly of: string;
  /** `spots of each case`, `pairs of strips` */
  readonly noun: string;
  readonly narrowing: readonly Narrowed[];
  readonly said: YieldsSaid;
}

/** How far the interval would reach with twice and four times as many, by the spread as now seen. */
export function Narrowing({ of, noun, narrowing, said }: NarrowingProps) {
  const widest = Math.max(...narrowing.map(({ reach }) => reach));
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label={`How many more: ${of}`}>
      <table class="narrowing">
        <caption>{of}</caption>
        <thead>
          <tr>
            <th scope="col">{noun}</th>
            <th scope="col">the interval reaches, {said.unit}</th>
          </tr>
        </thead>
        <tbody>
          {narrowing.map(({ n, reach }, i) => (
            <tr key={n}>
              <th scope="row">
                {n}
                {i === 0 && " (now)"}
              </th>
              <td>
                ± {said.size(reach)}
                <span
                  class="narrowing-bar"
                  style={{ width: `${(widest > 0 ? reach / widest : 0) * 9}rem` }}
                  aria-hidden="true"
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
