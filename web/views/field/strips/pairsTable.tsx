import { useId } from "preact/hooks";
import { problemsWithin } from "../../../forms/place.tsx";
import { ProblemNote } from "../../../forms/notes.tsx";
import type { Json } from "../../../state/json.ts";
import { edit, editMany, scenario, valueAt } from "../../../state/scenarioStore.ts";
import { Cell } from "../counts/cell.tsx";
import { pastedPairs, removePair, stripsPath, stripValue } from "./edits.ts";

interface PairsProps {
  readonly pairs: readonly (readonly [Json, Json])[];
  /** What a bare number counts in. */
  readonly unit: string;
}

/** Yields of neighbouring strips, a pair a row; an empty cell is a strip that is missing. */
export function PairsTable({ pairs, unit }: PairsProps) {
  const id = useId();
  const names = [0, 1].map((side) => String(valueAt(`${stripsPath}.cases[${side}]`) ?? `case ${side + 1}`));
  return (
    <>
      <div class="scrolls" tabIndex={0} role="region" aria-label="Yields of strips">
        <table class="tally strips-table">
          <caption class="only-heard">Yields of strips, {unit}</caption>
          <thead>
            <tr>
              <th scope="col">Pair</th>
              {names.map((name, side) => (
                <th key={side} scope="col">
                  {name}, {unit}
                </th>
              ))}
              <th scope="col">
                <span class="only-heard">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {pairs.map((pair, p) => (
              <PairRow key={p} {...{ pairs, pair, p, names, unit, id }} />
            ))}
          </tbody>
        </table>
      </div>
      <p class="field-hint tally-how" id={`${id}-how`}>
        Strips side by side stand in one row. An empty cell is a strip that is missing: the pair is left out.
        Two columns copied from a spreadsheet may be pasted into the cell where they begin.
      </p>
    </>
  );
}

interface RowProps extends PairsProps {
  readonly pair: readonly [Json, Json];
  readonly p: number;
  readonly names: readonly string[];
  readonly id: string;
}

function PairRow({ pairs, pair, p, names, unit, id }: RowProps) {
  const here = `${stripsPath}.yields[${p}]`;
  const problems = problemsWithin(here);
  const noteId = `${id}-${p}`;
  return (
    <>
      <tr>
        <th scope="row">{p + 1}</th>
        {([0, 1] as const).map((side) => {
          const at = `${here}[${side}]`;
          return (
            <td key={side} class={pair[side] === null ? "is-missing" : undefined}>
              <Cell
                path={at}
                label={`${names[side]}, pair ${p + 1}`}
                placeholder="missing"
                wrong={problems.some(({ field }) => field === at)}
                describedBy={problems.length > 0 ? noteId : `${id}-how`}
                onType={(text) =>
                  edit(
                    at,
                    stripValue(text, unit),
                    "typed",
                    `type the yield of strip ${p + 1}, ${names[side]}`,
                  )
                }
                onPaste={(cells) =>
                  edit(
                    `${stripsPath}.yields`,
                    pastedPairs(pairs, cells, { pair: p, side }, unit),
                    "chosen",
                    "paste yields of strips",
                  )
                }
              />
            </td>
          );
        })}
        <td>
          <button
            type="button"
            class="small"
            onClick={() => editMany(removePair(scenario.value, p), "chosen", `remove pair ${p + 1}`)}
          >
            Remove<span class="only-heard"> pair {p + 1}</span>
          </button>
        </td>
      </tr>
      {problems.length > 0 && (
        <tr class="tally-note">
          <td colSpan={4}>
            <ProblemNote id={noteId} problems={problems} />
          </td>
        </tr>
      )}
    </>
  );
}
