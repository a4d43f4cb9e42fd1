import "../../style/field-dig.css";
import { casesIn } from "../../forms/edits/caseEdits.ts";
import { scenario, editMany } from "../../state/scenarioStore.ts";
import { resolved } from "../../worker/client.ts";
import { DiggingCaution } from "../inputs/caution.tsx";
import { EntryFirst } from "./entryFirst.tsx";
import { HowFitted } from "./dig/how.tsx";
import { DigPictures } from "./dig/pictures.tsx";
import { dugGroupsIn, firstPlants, likelyDate } from "./dig/plants.ts";
import { PlantsTable } from "./dig/table.tsx";

/** Plants dug and measured: entered, drawn in the pit they came from, and what they tell of the dense layer. */
export function Dig() {
  const groups = dugGroupsIn(scenario.value);
  if (groups.length === 0) return <NothingDug />;
  return (
    <div class="dig">
      <EntryFirst
        shown={<DigPictures />}
        entry={
          <>
            <h3 class="dig-entered">Plants as measured</h3>
            <PlantsTable caseNames={caseNames()} date={dateToBegin()} />
          </>
        }
      />
      <HowFitted />
      <DiggingCaution />
    </div>
  );
}

function NothingDug() {
  return (
    <div class="empty-leaf">
      <p>
        Dig out six plants or more of each case on one day, wash the roots free, and measure from the surface
        to the deepest root of each.
      </p>
      <p class="tools">
        <button
          type="button"
          onClick={() => editMany(firstPlants(caseNames(), dateToBegin()), "chosen", "enter plants dug")}
        >
          Enter plants dug
        </button>
      </p>
      <DiggingCaution />
    </div>
  );
}

/** Names as written; where nothing is compared, the one the engine gives the field as described. */
function caseNames(): readonly string[] {
  const names = casesIn(scenario.value).flatMap(({ name }) => (typeof name === "string" ? [name] : []));
  return names.length > 0 ? names : (resolved.value?.cases ?? []).map(({ name }) => name);
}

const msPerDay = 86_400_000;

function dateToBegin(): string {
  const now = resolved.value;
  const today = Math.floor(Date.now() / msPerDay);
  const { recordFirstDay: first, recordDays: days } = now?.weather ?? {
    recordFirstDay: null,
    recordDays: null,
  };
  const lastDay = first === null || days === null ? null : first + days - 1;
  return likelyDate(now?.cases[0]?.crop.sowing ?? { month: 5, day: 1 }, today, lastDay);
}
