import { shownIn } from "../../../src/report/tables/formatters.ts";
import { yearSaid } from "../../../src/report/tables/yearSaid.ts";
import { Switch } from "../../forms/switch.tsx";
import { chosenRun, chosenTotal, units } from "../../state/view.ts";
import { resolved } from "../../worker/client.ts";
import type { SeasonShown } from "../../worker/protocol.ts";

/** Which of the runs is on the wall, and at which of the scenario's totals of rain. */
export function SeasonPicker({ season }: { readonly season: SeasonShown }) {
  const shown = shownIn(units.value);
  const totals = resolved.value?.weather.rainTotalsMm ?? [];
  const go = (by: number) => {
    chosenRun.value = (season.run + by + season.runs) % season.runs;
  };
  return (
    <div class="season-picker">
      <div class="season-run">
        <button type="button" class="no-print" onClick={() => go(-1)} aria-label="The run before">
          ‹
        </button>
        <p>
          Run {season.run + 1} of {season.runs}, sown in {yearSaid(season.year, season.isGenerated)}
          {chosenRun.value === null ? ": one near the middle" : ""}
        </p>
        <button type="button" class="no-print" onClick={() => go(1)} aria-label="The next run">
          ›
        </button>
        {chosenRun.value !== null && (
          <button
            type="button"
            class="no-print"
            onClick={() => {
              chosenRun.value = null;
            }}
          >
            One near the middle
          </button>
        )}
      </div>
      {resolved.value?.rotation != null && (
        <p class="panel-lead">
          On the wall a season by itself, from the same starting water in every case; years in a row below.
        </p>
      )}
      {totals.length > 1 && (
        <Switch
          label={`Rain, ${shown.length}`}
          labelled
          value={String(season.totalIndex)}
          choices={totals.map((mm, i) => [String(i), shown.total(mm)] as const)}
          onChoose={(chosen) => {
            chosenTotal.value = Number(chosen);
          }}
        />
      )}
    </div>
  );
}
