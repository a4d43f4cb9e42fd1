import { alternatives } from "../../../src/scenario/fields/facts/alternatives.ts";
import { takesOut } from "../../forms/fieldsOf.ts";
import { Field } from "../../forms/field.tsx";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { changeWay } from "../../forms/edits/alternatives.ts";
import { Switch } from "../../forms/switch.tsx";
import { valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { resolved } from "../../worker/client.ts";
import { MonthsTable } from "./months.tsx";
import { startingNormals } from "../../forms/edits/startingNormals.ts";
import { RecordForm } from "./record/record.tsx";
import { Fields, More, Section } from "./section.tsx";

type Way = "record" | "normals" | "pattern";

const ofRecord = ["record", "station", "units", "from", "to", "maxGapDays"].map((key) => `weather.${key}`);

export function WeatherSection() {
  const hasNormals = valueAt("weather.monthlyNormals") !== undefined;
  const way: Way = valueAt("weather.record") !== undefined ? "record" : hasNormals ? "normals" : "pattern";
  return (
    <Section id="weather">
      <Switch
        label="Where the weather comes from"
        labelled
        value={way}
        choices={[
          ["record", "A station's record"],
          ["normals", "Monthly normals"],
          ["pattern", "A pattern and a total"],
        ]}
        onChoose={choose}
      />
      <ProblemNote
        id="inputs-weather-wrong"
        problems={[
          ...fieldState("weather").problems,
          ...(hasNormals ? [] : fieldState("weather.monthlyNormals").problems),
        ]}
      />
      {way === "record" && <RecordForm />}
      {way === "pattern" && (
        <Fields>
          <Field
            path="weather.pattern"
            label="When the rain falls"
            none="choose"
            hint="Temperatures are those of an invented dryland site"
          />
        </Fields>
      )}
      {(way === "normals" || hasNormals) && <MonthsTable />}
      {way !== "record" && <RainTotals needed={way === "pattern"} />}
      <More
        title="Days used and reference ET"
        paths={["from", "to", "daysNotListed", "maxGapDays", "referenceEt"].map((key) => `weather.${key}`)}
      >
        {() => (
          <>
            <Fields>
              {way === "record" && (
                <>
                  <Field
                    path="weather.from"
                    label="First day to use"
                    hint="Such as 1991-01-01; left out, the record's first"
                  />
                  <Field path="weather.to" label="Last day to use" hint="Left out, the record's last" />
                  <Field
                    path="weather.daysNotListed"
                    label="Days without a line are"
                    hint="Dry in a rain book that lists only days with rain"
                    otherwise="missing"
                  />
                  <Field path="weather.maxGapDays" label="Longest gap that is filled, days" />
                </>
              )}
              <Field path="weather.referenceEt" label="Reference ET" />
            </Fields>
            {way === "record" && !hasNormals && (
              <p class="tools">
                <button
                  type="button"
                  onClick={() =>
                    changeWay(
                      [],
                      [["weather.monthlyNormals", startingNormals(null, "even", 330, units.value)]],
                      "give monthly normals beside the record",
                    )
                  }
                >
                  Give monthly normals for what the record lacks
                </button>
              </p>
            )}
          </>
        )}
      </More>
    </Section>
  );
}

function choose(way: Way): void {
  const total = units.value === "us" ? "12..14 in" : "300..350 mm";
  switch (way) {
    case "record":
      return changeWay(
        ["weather.pattern", "weather.monthlyNormals"],
        ofRecord.map((path) => [path, path === "weather.record" ? "" : undefined] as const),
        "take the weather from a record",
      );
    case "normals":
      return changeWay(
        [...ofRecord, "weather.pattern"],
        [
          [
            "weather.monthlyNormals",
            startingNormals(null, valueAt("weather.pattern"), middleTotal(), units.value),
          ],
        ],
        "take the weather from monthly normals",
      );
    case "pattern": {
      const needed =
        valueAt("weather.annualRain") === undefined && valueAt("weather.seasonRain") === undefined;
      return changeWay(
        [...ofRecord, "weather.monthlyNormals", ...(needed ? [] : ["weather.seasonRain"])],
        [
          ["weather.pattern", "summer-peak"],
          ["weather.annualRain", total],
        ],
        "take the weather from a pattern",
      );
    }
  }
}

/** Of the totals asked for, mm; a dryland's usual where none is. */
function middleTotal(): number {
  const totals = [...(resolved.value?.weather.rainTotalsMm ?? [])].sort((a, b) => a - b);
  return totals[Math.floor((totals.length - 1) / 2)] ?? 330;
}

function RainTotals({ needed }: { needed: boolean }) {
  const season = valueAt("weather.seasonRain") !== undefined;
  const hint = "One total (13 in), a list (12 in, 14 in) or a range (12..14 in: its ends and middle)";
  return (
    <Fields title="Rainfall totals to scale the years to">
      <Field
        path="weather.annualRain"
        label="Rain in the year"
        hint={hint}
        otherwise={needed || season ? undefined : "years as they are"}
        also={takesOut("weather", "annualRain", alternatives.weather)}
      />
      {(!needed || season) && (
        <Field
          path="weather.seasonRain"
          label="Or rain from sowing to maturity"
          hint="Instead of the year's"
          also={takesOut("weather", "seasonRain", alternatives.weather)}
        />
      )}
      <Field
        path="weather.rainTotalIs"
        label="A total is"
        otherwise={valueAt("rotation") === undefined ? "each year" : "long-run mean"}
        hint="Every year scaled to it, or the mean that years vary about"
      />
    </Fields>
  );
}
