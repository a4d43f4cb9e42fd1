import { yearSaid } from "../../src/report/tables/yearSaid.ts";
import "../style/seasons.css";
import { signal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { fineYield, fixed, shownIn, type Formatters } from "../../src/report/tables/formatters.ts";
import { Switch } from "../forms/switch.tsx";
import { PictureFrame } from "../pictures/kit/frame.tsx";
import { palette } from "../pictures/kit/palette.ts";
import { defaults, seasonScale, SeasonSheet, type SeasonTold } from "../pictures/answer/seasonMultiples.tsx";
import { answer, resolved } from "../worker/client.ts";
import type { Answer } from "../worker/protocol.ts";
import { differenceShown } from "./answer/chosenDifference.ts";
import { WhichDifference } from "./answer/whichDifference.tsx";
import { Cautions, Method, StaleMark, WhenAnswered } from "./parts.tsx";
import { SeasonCard } from "./seasons/card.tsx";
import { CopyCsv } from "./seasons/copyCsv.tsx";
import { SeasonKey } from "./seasons/key.tsx";
import {
  keysThatTell,
  onePerYear,
  seasonRows,
  sortedSeasons,
  type SeasonRow,
  type SortKey,
} from "./seasons/rows.ts";
import { saveSheet } from "./seasons/saveSheet.tsx";
import { seasonsCsv, seasonsTable, type SeasonWords } from "./seasons/table.ts";

/** How the seasons lie; kept while the page is open, so that one comes back from the pit wall to the same order. */
const sortKey = signal<SortKey>("water");
const sortWay = signal<"ascending" | "descending">("descending");
const everyRun = signal(false);

/** Seasons drawn at once: light enough for a phone. */
const seasonsAtOnce = 40;
const seasonsShown = signal(seasonsAtOnce);

/** Year by year, each a small picture; a year opens on the pit wall. */
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
  const { byRun, comparison, units } = now;
  const d = differenceShown.value;
  const shown = shownIn(units);
  const colours = palette();
  const all = useMemo(() => seasonRows(now, d), [now, d]);
  const years = useMemo(() => onePerYear(all), [all]);
  const repeats = years.length < all.length;
  const rows = repeats && !everyRun.value ? years : all;
  const keys = keysThatTell(rows);
  const key = keys.includes(sortKey.value) ? sortKey.value : "year";
  const way = sortWay.value;
  const ways = wayWords(key, rows);
  const sorted = useMemo(() => sortedSeasons(rows, key, way), [rows, key, way]);
  const places = (rows[0]?.cases ?? []).map(({ c }) => c);
  const { traces } = byRun;
  const scale = useMemo(() => seasonScale(traces, places), [traces, d]);
  const words: SeasonWords = {
    names: places.map((c) => comparison.cases[c]!.name),
    yieldUnit: comparison.cases[0]!.yield.unit,
    isGenerated: resolved.value?.weather.source === "normals",
    shown,
  };
  const table = useMemo(() => seasonsTable(sorted, words), [sorted, units]);
  const drawn = sorted.slice(0, seasonsShown.value);
  const told = drawn.map((row) => toldOf(row, words));
  const order = `${keyWords(key, words).toLowerCase()}, ${ways[way]}`;
  const which = `${drawn.length} of ${sorted.length} seasons, by ${order}`;
  const save = (format: "png" | "svg") =>
    void saveSheet(
      <SeasonSheet
        seasons={told}
        which={which}
        names={words.names}
        {...{ traces, places, scale, colours }}
      />,
      defaults.fileName,
      format,
    );
  const name = `${defaults.name}, by ${order}`;
  return (
    <>
      <div class="seasons-head">
        <div>
          <p>{introOf(now, shown, all, years)}</p>
          <WhichDifference />
          <div class="sorting no-print">
            <Switch
              labelled
              label="Sorted by"
              value={key}
              choices={keys.map((one) => [one, keyWords(one, words)] as const)}
              onChoose={(chosen) => {
                sortKey.value = chosen;
                seasonsShown.value = seasonsAtOnce;
              }}
            />
            <Switch
              label="Order"
              value={way}
              choices={[
                ["descending", ways.descending],
                ["ascending", ways.ascending],
              ]}
              onChoose={(chosen) => {
                sortWay.value = chosen;
                seasonsShown.value = seasonsAtOnce;
              }}
            />
            {repeats && (
              <Switch
                label="Years that come again"
                value={everyRun.value ? "runs" : "years"}
                choices={[
                  ["years", "Each year once"],
                  ["runs", `All ${all.length} runs`],
                ]}
                onChoose={(chosen) => {
                  everyRun.value = chosen === "runs";
                  seasonsShown.value = seasonsAtOnce;
                }}
              />
            )}
          </div>
        </div>
        <SeasonKey run={byRun.typicalRun} names={words.names} {...{ traces, places, scale, shown }} />
      </div>
      <p class="seasons-count" role="status">
        {which}
      </p>
      <PictureFrame name={name} table={table} onSavePng={() => save("png")} onSaveSvg={() => save("svg")}>
        <ul class="season-cards">
          {told.map((one) => (
            <SeasonCard key={one.run} told={one} {...{ traces, places, scale, colours }} />
          ))}
        </ul>
        <ShowMore all={sorted.length} />
      </PictureFrame>
      <CopyCsv csvOf={() => seasonsCsv(sorted, words)} fileName={defaults.fileName} />
      <Cautions />
      <Method />
    </>
  );
}

function ShowMore({ all }: { all: number }) {
  const left = all - seasonsShown.value;
  if (left <= 0) return null;
  const next = Math.min(seasonsAtOnce, left);
  return (
    <p class="season-more no-print">
      <button
        type="button"
        onClick={() => {
          seasonsShown.value += next;
        }}
      >
        Show {next} more
      </button>
      {left > next && (
        <button
          type="button"
          onClick={() => {
            seasonsShown.value = all;
          }}
        >
          Show all {all}
        </button>
      )}
    </p>
  );
}

/** What is seen here, and what a year's number is worth. */
function introOf(
  { comparison }: Answer,
  shown: Formatters,
  all: readonly SeasonRow[],
  years: readonly SeasonRow[],
): string {
  const { rainTotalMm, method } = comparison;
  const rain =
    rainTotalMm === null
      ? "with the rain as it came"
      : `at ${shown.total(rainTotalMm)} ${shown.length} of rain in the ${method.rainTotalOver}`;
  const isGenerated = resolved.value?.weather.source === "normals";
  const count =
    years.length < all.length ? `${years.length} years in ${all.length} runs` : `${all.length} seasons`;
  const number = isGenerated
    ? " Their weather is generated: the number of a year stands for no real year."
    : "";
  const again =
    years.length < all.length
      ? " A year that comes again has other draws of soil and yield each time; once shown, it is the run in the middle of its runs."
      : "";
  return `${count}, ${rain}.${number}${again} Open one to see it on the pit wall.`;
}

function toldOf(
  { run, year, seasonRainMm, extraWaterMm, extraYield, cases }: SeasonRow,
  { shown, yieldUnit, isGenerated }: SeasonWords,
): SeasonTold {
  const more = (value: string) => (Number(value) > 0 ? `+${value}` : value.replace("-", "−"));
  const { length } = shown;
  const numbers =
    extraWaterMm === null || extraYield === null
      ? [`${shown.water(cases[0]!.waterUseMm)} ${length} water`, `${fixed(cases[0]!.yield, 0)} ${yieldUnit}`]
      : [
          `${more(shown.fineWater(extraWaterMm))} ${length} water`,
          `${more(fineYield(extraYield, yieldUnit))} ${yieldUnit}`,
        ];
  return {
    run,
    title: yearSaid(year, isGenerated),
    lines: [...numbers, `rain ${shown.water(seasonRainMm)} ${length}`],
  };
}

function keyWords(key: SortKey, { names }: SeasonWords): string {
  const paired = names.length > 1;
  switch (key) {
    case "year":
      return "Year";
    case "rain":
      return "Rain in the season";
    case "annualRain":
      return "Rain in the year";
    case "water":
      return paired ? "Extra water" : "Water used";
    case "yield":
      return paired ? "Extra yield" : "Yield";
  }
}

/** No loss and no gain yet, mm or in the unit of the yields. */
const hardlyAny = 0.05;

/** A difference below 0 is a loss: there "most" would stand over the smallest. */
function wayWords(key: SortKey, rows: readonly SeasonRow[]): { ascending: string; descending: string } {
  if (key === "year") return { ascending: "earliest first", descending: "latest first" };
  const differences = rows.flatMap(({ extraWaterMm, extraYield }) => {
    const one = key === "water" ? extraWaterMm : key === "yield" ? extraYield : null;
    return one === null ? [] : [one];
  });
  if (differences.some((one) => one < -hardlyAny))
    return {
      ascending: "largest loss first",
      descending: differences.some((one) => one > hardlyAny) ? "largest gain first" : "smallest loss first",
    };
  return { ascending: "least first", descending: "most first" };
}
