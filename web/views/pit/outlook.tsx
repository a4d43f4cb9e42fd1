import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { Field } from "../../forms/field.tsx";
import { placeInWords } from "../../forms/placeWords.ts";
import { LineSample } from "../../pictures/kit/marks.tsx";
import { palette } from "../../pictures/kit/palette.ts";
import { OutlookLine } from "../../pictures/pit/outlookLine.tsx";
import { scenario } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { answerId, askOutlook, busy, outlook, outlookIsFresh, resolved } from "../../worker/client.ts";
import type { OutlookShown } from "../../worker/protocol.ts";
import { Panel } from "../answer/panel.tsx";

/** The season under way; nothing without a record, as no generated year is the one under way. */
export function OutlookPart() {
  const soil = resolved.value;
  const isOpen = useSignal(false);
  const told = outlook.value;
  const isInOtherUnits = told !== null && "units" in told && told.units !== units.value;
  const isDue = isOpen.value && !busy.value && (!outlookIsFresh.value || isInOtherUnits);
  useEffect(() => {
    if (isDue) askOutlook();
  }, [isDue, answerId.value, units.value]);
  if (soil === null || soil.weather.source !== "record") return null;
  return (
    <details
      class="pit-outlook"
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary>The season under way: what is in reach today, and how it may end</summary>
      {isOpen.value && <Inside />}
    </details>
  );
}

function Inside() {
  const now = outlook.value;
  return (
    <>
      <div class="field-grid no-print">
        <Field path="outlook.date" label="Today" hint="Such as 7/4/2012; if empty, the record's last day" />
        <Field
          path="outlook.moistDepth"
          label="Moist down to, that day"
          hint="A probe's depth, where there is one"
        />
        <Field path="outlook.shareBelow" label="Below that" hint="20 % of what the soil can hold" />
      </div>
      {now === null ? (
        <p class="waiting" role="status">
          Ending the season with each other year …
        </p>
      ) : "problems" in now ? (
        now.problems.map(({ field, expected, found, mend }) => (
          <p key={field + expected} class="field-problem" role="alert">
            {placeInWords(field, scenario.value)}: expected {expected}, found {found}; {mend}.
          </p>
        ))
      ) : (
        <Told {...{ now }} />
      )}
    </>
  );
}

function Told({ now }: { readonly now: OutlookShown }) {
  const shown = shownIn(now.units);
  const isFresh = outlookIsFresh.value;
  return (
    <div class={isFresh ? undefined : "is-being-redone"}>
      {now.sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Panel
        title="From today on"
        lead={
          <span class="outlook-key">
            {now.names.map((name, c) => (
              <span key={name}>
                <LineSample c={c} colours={palette()} /> {name}{" "}
              </span>
            ))}
          </span>
        }
      >
        {(width) => <OutlookLine outlook={now} faint={!isFresh} {...{ width, shown }} />}
      </Panel>
      <details class="cautions">
        <summary>Cautions of the outlook ({now.cautions.length})</summary>
        <ul>
          {now.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </details>
    </div>
  );
}
