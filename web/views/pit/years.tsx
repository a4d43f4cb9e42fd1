import type { Signal } from "@preact/signals";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { YearsWall } from "../../pictures/pit/yearsWall.tsx";
import { answer, busy } from "../../worker/client.ts";
import { Panel } from "../answer/panel.tsx";
import { CaseSwitch } from "./wall.tsx";

/** The years of one chain side by side; nothing without a rotation. */
export function Years({ chosenCase }: { readonly chosenCase: Signal<number> }) {
  const now = answer.value;
  if (now === null || now.inARow === null) return null;
  const { cases, rainTotalMm } = now.comparison;
  const shown = shownIn(now.units);
  const caseIndex = Math.min(chosenCase.value, cases.length - 1);
  const names = cases.map(({ name }) => name);
  const rain = rainTotalMm === null ? "" : ` at ${shown.total(rainTotalMm)} ${shown.length} of rain`;
  const years = now.inARow.walked;
  return (
    <Panel
      title="Years in a row"
      class="pit-years"
      lead={`A typical run of years${rain}, from the year in which the cases begin to differ: each crop starts with the water that the last one left.`}
    >
      {(width) => (
        <>
          {names.length > 1 && (
            <div class="no-print">
              <CaseSwitch {...{ names }} chosen={caseIndex} onChoose={(c) => (chosenCase.value = c)} />
            </div>
          )}
          <YearsWall faint={busy.value} {...{ years, names, caseIndex, width, shown }} />
        </>
      )}
    </Panel>
  );
}
