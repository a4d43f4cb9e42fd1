import { shownIn } from "../../../../src/report/tables/formatters.ts";
import type { Holdings } from "../../../../src/weather/records/holdings.ts";
import { isoDate } from "../../../../src/quantity/calendar.ts";
import { stationsAsked } from "../../../forms/choicesAsked.ts";
import { Field } from "../../../forms/field.tsx";
import { FileDrop } from "../../../forms/files/fileDrop.tsx";
import { useFile } from "../../../forms/files/fileReader.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { changeWay } from "../../../forms/edits/alternatives.ts";
import { startingNormals } from "../../../forms/edits/startingNormals.ts";
import { attachments, edit, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { RainOfRecord } from "./rainOfRecord.tsx";
import { Fields } from "../section.tsx";
import { takeRecord } from "./takeRecord.ts";

const unitChoices = [
  ["us", "Inches and °F"],
  ["metric", "mm and °C"],
  ["tenths", "Tenths of mm and °C"],
] as const;

/** A station's daily record: the file, what the reader asks of it, what it holds. */
export function RecordForm() {
  const file = textAt("weather.record");
  const key = Object.keys(attachments.value).find(
    (name) => name === file || lastPart(name) === lastPart(file),
  );
  const text = file === "" || key === undefined ? undefined : attachments.value[key];
  const unitsWritten = unitChoices.map(([word]) => word).find((word) => word === textAt("weather.units"));
  const station = textAt("weather.station") || undefined;
  const answer = useFile(
    text === undefined ? null : { kind: "weather", text, fileName: file, station, units: unitsWritten },
  ).value;
  const asked = answer?.problems ?? [];
  const stations = asked.flatMap(stationsAsked);
  const unitsAsked = asked.find(({ field }) => field === "weather.units");
  const others = asked.filter((one) => one !== unitsAsked && stationsAsked(one).length === 0);
  // The reader gives a hint: its highest TMAX is 28.
  const hint = /\((its .*)\)$/.exec(unitsAsked?.expected ?? "")?.[1];
  const ownPlace = fieldState("weather.record").problems;
  return (
    <>
      <div data-path="weather.record">
        <FileDrop
          label={file === "" ? "Choose a weather file" : "Choose another file"}
          accept=".csv,.txt,.dly,text/csv,text/plain"
          onText={(name, read) => void takeRecord(name, read)}
        >
          <p>
            {file === "" ? (
              "Drop a station's daily record here: NOAA daily summaries or .dly, USCRN, NASA POWER, gridMET, or a plain CSV with a date and rain."
            ) : (
              <>
                Record <strong>{file}</strong>. Drop another file to change it.
              </>
            )}
          </p>
        </FileDrop>
        {file === "" ? (
          <p class="aside">Until a file is there, the answer is that of the weather before.</p>
        ) : (
          text === undefined && <ProblemNote id="inputs-record-wrong" problems={ownPlace} />
        )}
        <ProblemNote id="inputs-record-read" problems={others} />
      </div>
      {stations.length > 0 && (
        <Asked
          title={`${file} holds several stations: which one?`}
          choices={stations.map(({ value, word }) => [value, word] as const)}
          onChoose={(value) => edit("weather.station", value, "chosen", `choose station ${value}`)}
        />
      )}
      {unitsAsked !== undefined && (
        <Asked
          title={`${file} does not say its units${hint === undefined ? "" : ` (${hint})`}: which are they?`}
          choices={unitChoices}
          onChoose={(value) => edit("weather.units", value, "chosen", `read the record in ${value}`)}
        />
      )}
      {file !== "" && (
        <Fields>
          <Field
            path="weather.station"
            label="Station"
            hint="Only for a file of several, by name or identifier"
          />
          <Field
            path="weather.units"
            label="Units of the record"
            none="as the file says"
            hint="Only for a file that does not state them"
          />
        </Fields>
      )}
      {file !== "" && <RainOfRecord />}
      {answer?.holdings != null && <Held holdings={answer.holdings} />}
    </>
  );
}

interface AskedProps {
  readonly title: string;
  readonly choices: readonly (readonly [value: string, word: string])[];
  readonly onChoose: (value: string) => void;
}

function Asked({ title, choices, onChoose }: AskedProps) {
  return (
    <div class="asked" role="group" aria-label={title}>
      <p>{title}</p>
      {choices.map(([value, word]) => (
        <button key={value} type="button" onClick={() => onChoose(value)}>
          {word}
        </button>
      ))}
    </div>
  );
}

/** What the record holds: years, gaps, totals. */
function Held({ holdings }: { holdings: Holdings }) {
  const { station, firstDay, lastDay, days, elements, years, completeYears, monthly, notes } = holdings;
  const shown = shownIn(units.value);
  const called =
    [...new Set([station.name, station.id])].filter((one) => one !== "").join(", ") ||
    "A station without a name";
  const whole = years.filter(({ complete }) => complete).map(({ rainMm }) => rainMm);
  return (
    <div class="held" role="group" aria-label="What the record holds">
      <p>
        <strong>{called}</strong>: {isoDate(firstDay)} to {isoDate(lastDay)}, {days}{" "}
        {days === 1 ? "day" : "days"}, {completeYears.length} complete{" "}
        {completeYears.length === 1 ? "year" : "years"}
        {whole.length > 0 && ` with ${range(whole, shown.fineWater)} ${shown.length} of rain`}. Read as{" "}
        {station.format}.
      </p>
      {completeYears.length < 10 && (
        <p class="held-short">
          Few years: the ranges then show little of what may come. A longer record shows more of it.
        </p>
      )}
      <div class="scrolls" tabIndex={0} role="region" aria-label="Elements of the record">
        <table>
          <thead>
            <tr>
              <th scope="col">It holds</th>
              <th scope="col">Days missing</th>
              <th scope="col">Longest gap, days</th>
            </tr>
          </thead>
          <tbody>
            {elements.map(({ element, words, missingDays, longestGapDays }) => (
              <tr key={element}>
                <th scope="row">{words}</th>
                <td>{missingDays}</td>
                <td>{longestGapDays}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <details>
        <summary>Rain year by year</summary>
        <div class="scrolls year-by-year" tabIndex={0} role="region" aria-label="Rain year by year">
          <table>
            <thead>
              <tr>
                <th scope="col">Year</th>
                <th scope="col">Rain, {shown.length}</th>
                <th scope="col">Days missing</th>
              </tr>
            </thead>
            <tbody>
              {years.map(({ year, rainMm, missingRainDays, complete }) => (
                <tr key={year}>
                  <th scope="row">
                    {year}
                    {complete ? "" : " (not complete)"}
                  </th>
                  <td>{shown.fineWater(rainMm)}</td>
                  <td>{missingRainDays}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
      {notes.length > 0 && (
        <ul class="held-notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() =>
            changeWay(
              ["record", "station", "units", "from", "to", "maxGapDays"].map((one) => `weather.${one}`),
              [["weather.monthlyNormals", startingNormals(monthly, "even", 330, units.value)]],
              "go on with the record's monthly normals",
            )
          }
        >
          Go on with its monthly normals instead
        </button>
      </p>
    </div>
  );
}

function range(values: readonly number[], say: (mm: number) => string): string {
  const [low, high] = [say(Math.min(...values)), say(Math.max(...values))];
  return low === high ? low : `${low} to ${high}`;
}

function textAt(path: string): string {
  const value = valueAt(path);
  return typeof value === "string" ? value : "";
}

function lastPart(path: string): string {
  return path.split(/[\\/]/).at(-1) ?? path;
}
