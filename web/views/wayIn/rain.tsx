import { kinds } from "../../../src/quantity/kinds.ts";
import type { Problem } from "../../../src/problem.ts";
import { untilAnswered, type FiveAnswers } from "../../../src/scenario/say/fiveAnswers.ts";
import { FileDrop } from "../../forms/files/fileDrop.tsx";
import { addressOf, units } from "../../state/view.ts";
import { RainOfRecord } from "../inputs/record/rainOfRecord.tsx";
import { giveRecord } from "../inputs/record/takeRecord.ts";
import { AskText } from "./answerFields.tsx";
import { assumed, give } from "./give.ts";

/** A total, or a weather file that is dropped here. */
export function AskRain({ now, problems }: { now: FiveAnswers; problems: readonly Problem[] }) {
  if (now.record === undefined)
    return (
      <div class="way-in-rain">
        <AskText
          label="3. Rain in a year"
          value={now.rain ?? ""}
          otherwise={assumed(untilAnswered.rain, "rain")}
          problems={problems}
          unit={kinds.rain[units.value].unit}
          onGive={(rain) => void give({ rain }, "typed")}
        >
          <WeatherFile label="Or a weather file" />
        </AskText>
      </div>
    );
  return (
    <div class="way-in-rain field">
      <p class="way-in-label">3. Rain: your weather file</p>
      <p class="way-in-file">
        <strong>{now.record}</strong>
        {problems.length > 0 && (
          <>
            {" "}
            has a question: <a href={addressOf("inputs", { card: "weather" })}>answer it in Inputs</a>
          </>
        )}
      </p>
      <RainOfRecord />
      <p class="way-in-or">
        <button
          type="button"
          class="small"
          onClick={() => void give({ record: undefined, recordPlace: undefined })}
        >
          A total instead
        </button>
      </p>
    </div>
  );
}

function WeatherFile({ label }: { label: string }) {
  return (
    <FileDrop
      label={label}
      accept=".csv,.txt,.dly,text/csv,text/plain"
      onText={(name, text) => void giveRecord(name, text)}
    >
      {null}
    </FileDrop>
  );
}
