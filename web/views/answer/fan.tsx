import { useMemo, useState } from "preact/hooks";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { Switch } from "../../forms/switch.tsx";
import { Plot } from "../../pictures/kit/plot.tsx";
import { defaults, rainFanFigure, rainFanTable, type FanOf } from "../../pictures/answer/rainFan.ts";
import { askedRain, type AskedRain } from "../../pictures/answer/rainFanAsked.ts";
import { isDark } from "../../state/theme.ts";
import { answer, fan, fanIsFresh, resolved } from "../../worker/client.ts";
import type { RainFan } from "../../worker/protocol.ts";
import { differenceShown } from "./chosenDifference.ts";
import { Panel } from "./panel.tsx";

interface FanProps {
  readonly title: string;
  readonly isOfDepth: boolean;
  readonly isByThemselves: boolean;
}

/** What the depth, or whatever else differs, is worth from a dry total to a wet one. */
export function Fan({ title, isOfDepth, isByThemselves }: FanProps) {
  return (
    <Panel
      title={title}
      class="panel-wide"
      lead={`At other totals of rain${isByThemselves ? ", for single seasons that all start with the same water" : ""}. The line is a typical year; the band spans 8 years of 10.`}
    >
      {(width) => <FanDrawn width={width} title={isOfDepth ? defaults.name : defaults.nameOfDifference} />}
    </Panel>
  );
}

function FanDrawn({ width, title }: { width: number; title: string }) {
  const [of, setOf] = useState<FanOf>("water");
  const now = fan.value;
  const comparison = answer.value?.comparison ?? null;
  const units = answer.value?.units ?? "us";
  const chosen = differenceShown.value;
  const dark = isDark.value;
  const source = resolved.value?.weather.source ?? "record";
  const asked = useMemo(
    () => (comparison === null ? null : askedRain(comparison, source, shownIn(units))),
    [comparison, source, units],
  );
  const figure = useMemo(
    () => (now === null ? null : rainFanFigure(now, { of, chosen, asked, width })),
    [now, of, chosen, asked, width, dark],
  );
  if (now === null || figure === null || comparison === null) {
    return (
      <p class="waiting" role="status">
        Drawn once all seasons are done …
      </p>
    );
  }
  return (
    <>
      <div class="no-print">
        <Switch
          label="What the fan shows"
          value={of}
          choices={[
            ["water", "Extra water"],
            ["yield", "Extra yield"],
          ]}
          onChoose={setOf}
        />
      </div>
      <Plot
        name={`${title}: ${of === "water" ? "extra water taken up" : "extra yield"}${asked === null ? "" : `; marked: ${asked.said}`}`}
        fileName={defaults.fileName}
        height={defaults.height}
        figure={figure}
        table={rainFanTable(now)}
        faint={!fanIsFresh.value}
        caption={captionOf(now, asked)}
      />
    </>
  );
}

function captionOf({ runs, whole }: RainFan, asked: AskedRain | null): string {
  const from = `From ${whole ? "all" : "the first"} ${runs} runs at each total.`;
  if (asked === null) return from;
  const marks = asked.answers.length === 0 ? "" : "; the marks in it are the answer from all runs";
  return `${from} Shaded: ${asked.said}${marks}.`;
}
