import type { ChainAnswer } from "../../../src/answer/chain/chainAnswer.ts";
import {
  caseTimesSaid,
  chainIntroduction,
  otherCropsHead,
  otherCropsSaid,
} from "../../../src/report/sentences/chainText.ts";
import {
  caseTimesTable,
  sideBySideTable,
  turned,
  type TableOfTexts,
} from "../../../src/report/tables/chainTables.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import { YearsPath } from "../../pictures/answer/yearsPath.tsx";
import { answer, busy, progress } from "../../worker/client.ts";
import { MoneyYears } from "./moneyYears.tsx";
import { Panel } from "./panel.tsx";

interface YearsPanelsProps {
  readonly chain: ChainAnswer;
  /** The difference on show. */
  readonly d: number;
  readonly shown: Formatters;
}

/** First year and year after year: side by side, the path between them, and when each case takes up its water. */
export function YearsPanels({ chain, d, shown }: YearsPanelsProps) {
  const difference = chain.byCrop[0]!.differences[d];
  return (
    <>
      <div class={busy.value ? "panels is-being-redone" : "panels"}>
        {difference !== undefined && (
          <>
            <Panel
              title="From the first year on"
              lead={`How much more or less water “${difference.to}” takes up than “${difference.from}”, by year since the change${rainSaid(chain, shown)}. First all begin with the same water; later each has only what its own roots left.`}
            >
              {(width) => <YearsPath c={d + 1} faint={busy.value} {...{ difference, width, shown }} />}
            </Panel>
            <Panel
              title="First year, and year after year"
              lead={`Extra water taken up, ${shown.length}, and the yield it is worth, on average of the years. “Soil below wetted in”: years in which rain between harvest and sowing got below the shallower roots.`}
            >
              {() => <Table table={turned(sideBySideTable(chain, d, shown))} name="The two answers" />}
            </Panel>
          </>
        )}
        <MoneyYears {...{ d, shown }} />
        <Panel title="When it is taken up" lead={typeset(caseTimesSaid(chain))}>
          {() => <Table table={turned(caseTimesTable(chain, shown))} name="The cases year after year" />}
        </Panel>
      </div>
      <OtherCrops {...{ chain, shown }} />
      <p class="panel-lead">{typeset(chainIntroduction(chain))}</p>
    </>
  );
}

function rainSaid({ rainTotalMm }: ChainAnswer, shown: Formatters): string {
  return rainTotalMm === null ? "" : ` at ${shown.total(rainTotalMm)} ${shown.length} of rain`;
}

function OtherCrops({ chain, shown }: Omit<YearsPanelsProps, "d">) {
  const said = chain.byCrop[0]!.differences.length === 0 ? [] : otherCropsSaid(chain, shown);
  if (said.length === 0) return null;
  return (
    <>
      <p>{otherCropsHead}</p>
      <ul>
        {said.map((line) => (
          <li key={line}>{typeset(line)}</li>
        ))}
      </ul>
    </>
  );
}

/** Until years in a row have been run for the first time, seasons by themselves are on show. */
export function YearsAwaited() {
  if (answer.value?.awaitsYears !== true || answer.value.inARow !== null) return null;
  const now = progress.value;
  const share = now?.of === "chains" && now.total > 0 ? `: ${now.done} of ${now.total}` : "";
  return (
    <p class="waiting" role="status">
      Below, seasons by themselves, each from the same starting water. Years in a row are being run{share} …
    </p>
  );
}

function Table({ table: { head, rows }, name }: { table: TableOfTexts; name: string }) {
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label={`${name}, as a table`}>
      <table class="cases years-table">
        <caption class="only-heard">{name}</caption>
        <thead>
          <tr>
            {head.map((cell, i) => (
              <th key={i} scope="col">
                {cell}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([first, ...cells], r) => (
            <tr key={r}>
              <th scope="row">{first}</th>
              {cells.map((cell, i) => (
                <td key={i}>{typeset(cell)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
