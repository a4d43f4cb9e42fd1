import "../style/seasons.css";
import { signal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { yearSaid } from "../../src/report/tables/yearSaid.ts";
import { Switch } from "../forms/switch.tsx";
import { chosenRun } from "../state/view.ts";
import { answer, resolved } from "../worker/client.ts";
import type { Answer } from "../worker/protocol.ts";
import { differenceShown } from "./answer/chosenDifference.ts";
import { WhichDifference } from "./answer/whichDifference.tsx";
import { Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";
import { SeasonCard } from "./seasons/card.tsx";
import { CopyCsv } from "./seasons/copyCsv.tsx";
import { onePerYear, seasonRows, sortedSeasons, type SortKey, type StripOf } from "./seasons/rows.ts";
import { Strip } from "./seasons/strip.tsx";
import { seasonsCsv, type SeasonWords } from "./seasons/table.ts";
import { introOf, linesOf } from "./seasons/words.ts";

/** How the strip is; kept while the page is open, so that one comes back from the pit wall to the same order. */
const sortedBy = signal<SortKey>("size");
const stripOf = signal<StripOf>("water");
const everyRun = signal(false);
/** The year looked at of years in a row; a season by itself is the one on the pit wall. */
const chosenOfRow = signal<number | null>(null);

/** All years in one strip; one of them on a card. */
export function SeasonsView() {
  return (
    <>
      <h1>Seasons</h1>
      <StaleMark />
      <WhenAnswered>{() => <Seasons now={answer.value!} />}</WhenAnswered>
    </>
  );
}

function Seasons({ now }: { now: Answer }) {
  const { byRun, comparison, units, inARow } = now;
  const d = differenceShown.value;
  const all = useMemo(() => seasonRows(now, d), [now, d]);
  const years = useMemo(() => onePerYear(all), [all]);
  const repeats = years.length < all.length;
  const rows = repeats && !everyRun.value ? years : all;
  const [key, of] = [sortedBy.value, stripOf.value];
  const sorted = useMemo(() => sortedSeasons(rows, key, of), [rows, key, of]);
  const words: SeasonWords = useMemo(
    () => ({
      names: (all[0]?.cases ?? []).map(({ c }) => comparison.cases[c]!.name),
      yieldUnit: comparison.cases[0]!.yield.unit,
      isGenerated: resolved.value?.weather.source === "normals",
      shown: shownIn(units),
    }),
    [all, units],
  );
  const chosen = inARow === null ? chosenRun : chosenOfRow;
  const place = sorted.findIndex(({ run }) => run === chosen.value);
  const row = sorted[place];
  const paired = words.names.length > 1;
  return (
    <>
      <p class="seasons-lead">{introOf(now, words, all.length, years.length)}</p>
      <WhichDifference />
      <div class="sorting no-print">
        <Switch
          labelled
          label="Sorted"
          value={key}
          choices={[
            ["size", "by size"],
            ["year", "by year"],
            ["rain", "by rain"],
          ]}
          onChoose={(one) => {
            sortedBy.value = one;
          }}
        />
        <Switch
          label="What the bars are"
          value={of}
          choices={[
            ["water", paired ? "Extra water" : "Water used"],
            ["yield", paired ? "Extra yield" : "Yield"],
          ]}
          onChoose={(one) => {
            stripOf.value = one;
          }}
        />
        {repeats && (
          <Switch
            label="Years run several times"
            value={everyRun.value ? "runs" : "years"}
            choices={[
              ["years", "Each year once"],
              ["runs", `All ${all.length} runs`],
            ]}
            onChoose={(one) => {
              everyRun.value = one === "runs";
            }}
          />
        )}
      </div>
      <Strip
        rows={sorted}
        sortedBy={key}
        chosen={row === undefined ? null : place}
        onChoose={(one) => {
          chosen.value = sorted[one]!.run;
        }}
        {...{ of, words }}
      />
      <div role="status">
        {row === undefined ? (
          <p class="waiting no-print">Tap a bar, or move the slider, to see that year.</p>
        ) : (
          <SeasonCard
            title={titleOf(yearSaid(row.year, words.isGenerated))}
            lines={linesOf(row, words)}
            traces={inARow === null ? byRun.traces : null}
            {...{ row, ...words }}
          />
        )}
      </div>
      <CopyCsv csvOf={() => seasonsCsv(sorted, words)} fileName="seasons" />
      <Cautions />
      <Method />
    </>
  );
}

function titleOf(said: string): string {
  return said.charAt(0).toUpperCase() + said.slice(1);
}
