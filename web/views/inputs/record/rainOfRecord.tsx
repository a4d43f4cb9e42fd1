import { Switch } from "../../../forms/switch.tsx";
import { Field } from "../../../forms/field.tsx";
import { changeWay } from "../../../forms/edits/alternatives.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { yearsOfRecord } from "./takeRecord.ts";

const totals = ["weather.annualRain", "weather.seasonRain"] as const;

/** Asked beside every record: its years as they came, or each of them scaled to a total. */
export function RainOfRecord() {
  const scaled = totals.find((path) => valueAt(path) !== undefined);
  const taken = yearsOfRecord.value;
  const held = taken?.file === valueAt("weather.record") ? taken : null;
  const shown = shownIn(units.value);
  const came =
    held === null
      ? "as they came"
      : `as they came, ${shown.total(held.leastMm)} to ${shown.total(held.mostMm)} ${shown.length}`;
  return (
    <div class="rain-of-record">
      <Switch
        label="Rain of its years"
        labelled
        value={scaled === undefined ? "came" : "scaled"}
        choices={[
          ["came", came],
          ["scaled", "scaled to a total"],
        ]}
        onChoose={(way) => {
          if (way === "came") changeWay(totals, [], "take the years as they came");
          else
            changeWay(
              [],
              [["weather.annualRain", units.value === "us" ? "14 in" : "350 mm"]],
              "scale the years to a total",
            );
        }}
      />
      {scaled !== undefined && (
        <Field
          path={scaled}
          label={scaled === totals[0] ? "Each year scaled to" : "Each season scaled to, sowing to maturity"}
        />
      )}
    </div>
  );
}
