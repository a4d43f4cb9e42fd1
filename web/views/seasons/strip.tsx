import { useMemo } from "preact/hooks";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import { yearBriefly, yearSaid } from "../../../src/report/tables/yearSaid.ts";
import { defaults, YearStrip } from "../../pictures/answer/yearStrip.tsx";
import { stripLayout } from "../../pictures/answer/yearStripLayout.ts";
import { busy } from "../../worker/client.ts";
import { useRoom } from "../answer/room.ts";
import { rainOf, rainThatTells, valueOf, type SeasonRow, type SortKey, type StripOf } from "./rows.ts";
import { seasonsTable, type SeasonWords } from "./table.ts";
import { barsSaid, linesOf, orderSaid, rainSaid } from "./words.ts";

interface StripProps {
  /** In their order. */
  readonly rows: readonly SeasonRow[];
  readonly of: StripOf;
  readonly sortedBy: SortKey;
  readonly words: SeasonWords;
  readonly chosen: number | null;
  readonly onChoose: (place: number) => void;
}

/** All years in one strip; a tap takes one, and so does the slider under it, which keys move year by year. */
export function Strip({ rows, of, sortedBy, words, chosen, onChoose }: StripProps) {
  const [room, width] = useRoom<HTMLDivElement>();
  const { shown, isGenerated } = words;
  const over = rainThatTells(rows);
  const years = useMemo(() => {
    const perUnit = shown.length === "in" ? mmPerInch : 1;
    return rows.map((row) => ({
      label: yearBriefly(row.year, isGenerated).replace("year ", ""),
      more: valueOf[of](row) / (of === "water" ? perUnit : 1),
      rain: rainOf(row, over) / perUnit,
    }));
  }, [rows, of, shown.length]);
  const layout = stripLayout(years, { width, sizePx: defaults.sizePx, byYear: sortedBy === "year" });
  const table = useMemo(() => seasonsTable(rows, words), [rows, shown.length]);
  const what = barsSaid(of, words);
  const at = chosen === null ? null : rows[chosen]!;
  return (
    <div ref={room} class="strip">
      <YearStrip
        name={`${what}, year by year, ${orderSaid[sortedBy]}; under it the rain of each year`}
        {...{ years, layout, width, table, chosen, onChoose }}
        moreSaid={`${what}${isGenerated && layout.names.labels.length > 0 ? " (by generated year)" : ""}`}
        rainSaid={rainSaid(rows, shown)}
        c={rows[0]?.cases.at(-1)?.c ?? 0}
        faint={busy.value}
      />
      <input
        class="strip-slider no-print"
        type="range"
        min="0"
        max={rows.length - 1}
        value={chosen ?? 0}
        aria-label="Year looked at"
        aria-valuetext={
          at === null ? "none yet" : [yearSaid(at.year, isGenerated), ...linesOf(at, words)].join(", ")
        }
        style={{ marginLeft: `${layout.left}px`, width: `${layout.right - layout.left}px` }}
        onInput={(event) => onChoose(event.currentTarget.valueAsNumber)}
      />
    </div>
  );
}
