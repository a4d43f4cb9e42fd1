import { kinds } from "../../../../src/quantity/kinds.ts";
import { Field } from "../../../forms/field.tsx";
import { fieldState, problemsWithin } from "../../../forms/place.tsx";
import { editMany, scenario } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { problemsByPath } from "../../../worker/client.ts";
import { Cell } from "../counts/cell.tsx";
import {
  addDug,
  closeUp,
  depthsOf,
  dugGroupsIn,
  dugPath,
  hasGaps,
  pastePlants,
  removeDug,
  removePlant,
  rowsOf,
  writeDepth,
} from "./plants.ts";

const wrongId = "field-dig-wrong";
const howId = "field-dig-how";

interface PlantsTableProps {
  readonly caseNames: readonly string[];
  /** For a column that is added. */
  readonly date: string;
}

/** A column for every case and day, a row for every plant: as neighbours stand beside each other. */
export function PlantsTable({ caseNames, date }: PlantsTableProps) {
  const groups = dugGroupsIn(scenario.value);
  const rows = rowsOf(groups);
  const { unit } = kinds.depth[units.value];
  return (
    <div class="plants" data-path={dugPath}>
      <p class="aside" id={howId}>
        Depth of the deepest root of each plant. A number alone counts as {unit === "in" ? "inches" : unit};
        another unit may be typed with it. Go on in the last row, or paste columns from a spreadsheet into the
        cell where they begin.
      </p>
      <div class="scrolls" tabIndex={0} role="region" aria-label="Plants dug">
        <table>
          <thead>
            <tr>
              <th scope="col">Plant</th>
              {groups.map((_, g) => (
                <th key={g} scope="col">
                  <ColumnHead g={g} caseNames={caseNames} />
                </th>
              ))}
              <th scope="col">
                <span class="only-heard">Take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: rows }, (_, plant) => (
              <tr key={plant}>
                <th scope="row">{plant + 1}</th>
                {groups.map((group, g) => (
                  <td key={g}>
                    {plant <= depthsOf(group).length && (
                      <Depth {...{ g, plant, unit }} name={nameOf(group, g)} />
                    )}
                  </td>
                ))}
                <td>
                  {plant < rows - 1 && (
                    <button
                      type="button"
                      class="small"
                      onClick={() =>
                        editMany(removePlant(scenario.value, plant), "chosen", `remove plant ${plant + 1}`)
                      }
                    >
                      Remove<span class="only-heard"> plant {plant + 1}</span>
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Wrong />
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() => editMany(addDug(scenario.value, caseNames, date), "chosen", "add plants dug")}
        >
          Add another case or day
        </button>
        {hasGaps(groups) && (
          <button
            type="button"
            class="small"
            onClick={() => editMany(closeUp(scenario.value), "chosen", "close up blank plants")}
          >
            Close up blanks
          </button>
        )}
      </p>
    </div>
  );
}

function ColumnHead({ g, caseNames }: { g: number; caseNames: readonly string[] }) {
  const path = `${dugPath}[${g}]`;
  const name = nameOf(dugGroupsIn(scenario.value)[g], g);
  return (
    <div class="plants-head">
      <Field path={`${path}.case`} label={`Case of column ${g + 1}`} quiet choices={caseNames} none={null} />
      <Field path={`${path}.date`} label="Dug on" />
      <Field path={`${path}.rowPosition`} label="Row" otherwise="not told" />
      <button
        type="button"
        class="small"
        onClick={() => editMany(removeDug(scenario.value, g), "chosen", `remove plants of ${name}`)}
      >
        Remove column<span class="only-heard"> of {name}</span>
      </button>
    </div>
  );
}

function Depth({ g, plant, unit, name }: { g: number; plant: number; unit: string; name: string }) {
  const path = `${dugPath}[${g}].depths[${plant}]`;
  const { text, problems } = fieldState(path);
  // A plant not measured yet is no mistake.
  const wrong = problems.length > 0 && text.trim() !== "";
  return (
    <Cell
      path={path}
      label={`Depth of plant ${plant + 1}, ${name}`}
      placeholder={unit}
      wrong={wrong}
      describedBy={wrong ? wrongId : howId}
      onType={(typed) =>
        editMany(
          writeDepth(scenario.value, g, plant, typed, unit),
          "typed",
          `type plant ${plant + 1} of ${name}`,
        )
      }
      onPaste={(cells) =>
        editMany(pastePlants(scenario.value, cells, { group: g, plant }, unit), "chosen", "paste plants dug")
      }
    />
  );
}

/** What is wrong in the table, plant by plant; blanks in a line of their own. */
function Wrong() {
  const groups = dugGroupsIn(scenario.value);
  const wrong = groups.flatMap((group, g) =>
    depthsOf(group).flatMap((text, plant) =>
      (problemsByPath.value.get(`${dugPath}[${g}].depths[${plant}]`) ?? []).map((problem) => ({
        who: `Plant ${plant + 1} of ${nameOf(group, g)}`,
        isBlank: text.trim() === "",
        problem,
      })),
    ),
  );
  const whole = groups.flatMap((group, g) =>
    (problemsByPath.value.get(`${dugPath}[${g}].depths`) ?? []).map((problem) => ({
      who: `Plants of ${nameOf(group, g)}`,
      isBlank: false,
      problem,
    })),
  );
  const blanks = wrong.filter(({ isBlank }) => isBlank);
  const mistakes = [...wrong.filter(({ isBlank }) => !isBlank), ...whole].slice(0, 6);
  return (
    <>
      {blanks.length > 0 && problemsWithin(dugPath).length > 0 && (
        <p class="plants-blank" role="status">
          Still without a depth:{" "}
          {blanks
            .slice(0, 6)
            .map(({ who }) => who)
            .join("; ")}
          {blanks.length > 6 ? " and more" : ""}.
        </p>
      )}
      {mistakes.length > 0 && (
        <p class="field-problem" id={wrongId} role="alert">
          {mistakes.map(({ who, problem: { expected, found, mend } }) => (
            <span key={who}>
              {who}: expected {expected}, found {found}; {mend}.{" "}
            </span>
          ))}
        </p>
      )}
    </>
  );
}

function nameOf(group: { readonly [key: string]: unknown } | undefined, g: number): string {
  const name = group?.["case"];
  return typeof name === "string" && name !== "" ? name : `column ${g + 1}`;
}
